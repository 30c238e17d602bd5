import { describe, expect, test } from "vitest";
import { loadClub } from "../../build/input/load-club.ts";
import { parseCalendarDate } from "../../build/model/calendar.ts";
import type { Club } from "../../build/model/club.ts";
import { CLUB_YAML, clubFolder, type Files, folderOf, LAKE_YAML } from "./club-folder.ts";

async function clubOf(files: Files): Promise<Club> {
  const { club, problems } = await loadClub(await clubFolder(files));
  if (club === undefined) throw new Error(JSON.stringify(problems));
  return club;
}

const asOf = (text: string) => {
  const date = parseCalendarDate(text);
  if (date === undefined) throw new Error(`${text} is no day`);
  return { asOf: date };
};

test("a lake arrives whole", async () => {
  const { lakes } = await clubOf({
    "lakes/ember.yaml": `${LAKE_YAML}elevation: 2580 m
region: Cinder Basin
area: 2 km2
depth: { max: 10 m, mean: 4 m }
water: marl
summary: Shallow.
access: { text: North ramp., opens: 2026-05-01, travel: 90 min }
hazards: [Mud., Wind.]
rules: { text: Two trout., checked: 2026-03-02 }
depthBands:
  ice-off: { from: 1 m, to: 2 m }
iceOff:
  - { season: 2023, on: 2023-05-09 }
  - { season: 2024, after: 2024-05-11, by: 2024-05-18 }
  - season: 2025
    by: 2025-05-01
turnover:
  - { season: 2023, from: 2023-05-19, to: 2023-05-30 }
turnoverRule:
  onset: { from: 1 weeks, to: 2 weeks }
  duration: { from: 8 days, to: 15 days }
places:
  - { name: Drop-off, at: off the point, depths: [4 m, 3 m] }
notes: |
  One.

  Two.
`,
  });
  const file = "lakes/ember.yaml";
  expect(lakes).toEqual([
    {
      slug: "ember",
      lastGood: [],
      name: "Ember Lake",
      position: { lat: 41.312, lon: -106.291 },
      elevation_m: 2580,
      region: "Cinder Basin",
      area_ha: 200,
      maxDepth_m: 10,
      meanDepth_m: 4,
      water: "marl",
      summary: "Shallow.",
      access: { text: "North ramp.", opens: "2026-05-01", travel_h: 1.5 },
      hazards: ["Mud.", "Wind."],
      places: [{ name: "Drop-off", at: "off the point", depths_m: [4, 3] }],
      rules: { text: "Two trout.", checked: "2026-03-02" },
      depthBands: { "ice-off": { from_m: 1, to_m: 2 } },
      iceOff: [
        { season: 2023, on: "2023-05-09", where: { file, line: 15, column: 5 } },
        { season: 2024, after: "2024-05-11", by: "2024-05-18", where: { file, line: 16, column: 5 } },
        { season: 2025, by: "2025-05-01", where: { file, line: 17, column: 5 } },
      ],
      turnover: [
        { season: 2023, from: "2023-05-19", to: "2023-05-30", where: { file, line: 20, column: 5 } },
      ],
      turnoverRule: { turnsOver: true, onset: { from: 7, to: 14 }, duration: { from: 8, to: 15 } },
      notes: "One.\n\nTwo.",
    },
  ]);
});

test("what a lake file leaves out is left out, and the usual turnover stands in", async () => {
  // 8 to 15 days after ice-off, for 8 to 15 days: common practice, no published source.
  expect((await clubOf({})).lakes).toEqual([
    {
      slug: "ember",
      name: "Ember Lake",
      position: { lat: 41.312, lon: -106.291 },
      hazards: [],
      places: [],
      lastGood: [],
      depthBands: {},
      iceOff: [],
      turnover: [],
      turnoverRule: { turnsOver: true, onset: { from: 8, to: 15 }, duration: { from: 8, to: 15 } },
    },
  ]);
});

test("holidays arrive as they are written, one day long or more; without the key there are none", async () => {
  const rows = "holidays:\n  - { name: Spring holiday, from: 2026-05-23, to: 2026-05-25 }\n";
  const club = await clubOf({ "club.yaml": `${CLUB_YAML}${rows}` });
  expect(club.holidays).toEqual([{ name: "Spring holiday", from: "2026-05-23", to: "2026-05-25" }]);
  expect((await clubOf({})).holidays).toEqual([]);
});

test("a lake that never turns over", async () => {
  const { lakes } = await clubOf({ "lakes/ember.yaml": `${LAKE_YAML}turnoverRule: none\n` });
  expect(lakes[0]?.turnoverRule).toEqual({ turnsOver: false });
});

test("a pattern, a trip, a page and a report arrive whole", async () => {
  const club = await clubOf({
    "patterns/scud.yaml":
      "name: Pale scud\nimitates: scud\nsizes: [14, 12, 14]\ncolours: [tan]\nphases: [ice-off]\nways: [floating line]\nwaters: [marl]\nstock: [{ size: 12, colour: tan, count: 3 }]\ndressing: [{ part: hook, material: heavy wire }]\nmass: 100 mg\n",
    "trips/may.yaml":
      "name: May\nfrom: 2026-05-20\nto: 2026-05-21\nrods: 2\nlakes: [ember]\nunlisted: true\npeople: [Ines, Tobin]\nboats: [{ name: Pram, seats: 2 }]\nflyLoss: 2.5\ntravel: { longest: 150 min }\n",
    "trips/any.yaml": "name: Any lake\nfrom: 2026-05-22\nto: 2026-05-22\nrods: 1\n",
    "pages/manners.md": "Intro\n\n# Manners\n\nRoom.\n",
    "reports/2026.yaml":
      "- lake: ember\n  date: 2026-05-12\n  ice: part\n  phase: ice-off\n  water: 50 degF\n  clarity: 10 ft\n  oxygen: 9.8 mg/L\n  rods: 2\n  hours: 90 min\n  notes: Windy.\n",
  });
  expect(club.patterns).toEqual([
    {
      slug: "scud",
      name: "Pale scud",
      imitates: "scud",
      sizes: [12, 14],
      colours: ["tan"],
      phases: ["ice-off"],
      ways: ["floating line"],
      waters: ["marl"],
      stock: [{ size: 12, colour: "tan", count: 3 }],
      dressing: [{ part: "hook", material: "heavy wire" }],
      mass_g: 0.1,
    },
  ]);
  expect(club.trips).toEqual([
    {
      slug: "any",
      name: "Any lake",
      from: "2026-05-22",
      to: "2026-05-22",
      rods: 1,
      people: [],
      boats: [],
      lakes: [],
      unlisted: false,
    },
    {
      slug: "may",
      name: "May",
      from: "2026-05-20",
      to: "2026-05-21",
      rods: 2,
      people: ["Ines", "Tobin"],
      boats: [{ name: "Pram", kind: "pram", seats: 2 }],
      flyLoss_rodDay: 2.5,
      longestTravel_h: 2.5,
      lakes: ["ember"],
      unlisted: true,
    },
  ]);
  expect(club.pages).toEqual([
    { slug: "manners", title: "Manners", markdown: "Intro\n\n# Manners\n\nRoom.\n" },
  ]);
  expect(club.reports).toEqual([
    {
      lake: "ember",
      date: "2026-05-12",
      ice: "part",
      phase: "ice-off",
      water_C: 10,
      clarity_m: 3.048,
      oxygen_mgL: 9.8,
      rods: 2,
      hours: 1.5,
      catches: [],
      samples: [],
      notes: "Windy.",
      where: { file: "reports/2026.yaml", line: 1, column: 3 },
    },
  ]);
});

test("lakes come in file-name order", async () => {
  const club = await clubOf({ "lakes/zander.yaml": LAKE_YAML, "lakes/aspen.yaml": LAKE_YAML });
  expect(club.lakes.map(({ slug }) => slug)).toEqual(["aspen", "ember", "zander"]);
});

describe("the day the guide speaks from", () => {
  const reports =
    "- { lake: ember, date: 2026-05-12, ice: on }\n- { lake: ember, date: 2026-05-18, ice: off }\n";
  const noAsOf = CLUB_YAML.replace(/^asOf.*\n/m, "");

  test("club.yaml's, and later reports are left out", async () => {
    const club = await clubOf({ "reports/2026.yaml": reports });
    expect(club.asOf).toBe("2026-05-16");
    expect(club.reports.map(({ date }) => date)).toEqual(["2026-05-12"]);
  });

  test("the one asked for goes before it", async () => {
    const dir = await clubFolder({ "reports/2026.yaml": reports });
    const { club } = await loadClub(dir, asOf("2026-05-18"));
    expect(club?.asOf).toBe("2026-05-18");
    expect(club?.reports).toHaveLength(2);
  });

  test("one asked for in another season is an error", async () => {
    const { club, problems } = await loadClub(await clubFolder(), asOf("2025-05-18"));
    expect(club).toBeUndefined();
    expect(problems).toMatchObject([{ file: "club.yaml", line: 2, column: 9, code: "as-of-outside-season" }]);
  });

  test("else the season's latest report", async () => {
    const club = await clubOf({
      "club.yaml": noAsOf,
      "reports/2026.yaml": reports,
      "reports/2027.yaml": "- { lake: ember, date: 2027-05-18, ice: off }\n",
    });
    expect(club.asOf).toBe("2026-05-18");
  });

  test("south of the equator the season begins on 1 July", async () => {
    const club = await clubOf({
      "club.yaml": CLUB_YAML.replace("2026-05-16", "2026-10-16"),
      "lakes/ember.yaml":
        "name: Tarn\nposition: { lat: -44, lon: 170 }\niceOff: [{ season: 2025, on: 2025-10-01 }, { season: 2024, on: 2025-01-05 }]\n",
    });
    expect(club.lakes[0]?.iceOff).toHaveLength(2);
  });
});

describe("the rig box", () => {
  test("is the program's own where the club has none", async () => {
    const { rigs } = await clubOf({});
    for (const list of [rigs.leaders, rigs.lines, rigs.shot, rigs.indicators])
      expect(list.length).toBeGreaterThan(0);
    expect(rigs.leaders[0]?.where.file).toBe("content/rig-defaults.yaml");
  });

  test("takes each key the club writes, a list as a whole, and keeps the others", async () => {
    const usual = (await clubOf({})).rigs;
    const { rigs } = await clubOf({
      "rigs.yaml": `rod: 10 ft
offBottom: { from: 10 cm, to: 20 cm }
lines:
  - { name: Tip, kind: sink tip, sinkRate: 3 in/s }
shot:
  - { name: BB, mass: 0.4 g, material: lead, carried: 5 }
`,
    });
    const file = "rigs.yaml";
    expect(rigs).toEqual({
      ...usual,
      rod_m: 3.048,
      offBottom: { from_m: 0.1, to_m: 0.2 },
      lines: [{ name: "Tip", kind: "sink tip", sinkRate_mps: 0.0762, where: { file, line: 4, column: 5 } }],
      // With one size of shot the steps are none, one and two of it.
      steps: [[], [{ shot: "BB", count: 1 }], [{ shot: "BB", count: 2 }]],
      // Lead 11 350 kg/m3: NIST.
      shot: [
        { name: "BB", mass_g: 0.4, density_kgm3: 11350, carried: 5, where: { file, line: 6, column: 5 } },
      ],
    });
  });
});

test("two hundred years of records are read", async () => {
  const rows = Array.from({ length: 200 }, (_, i) => `  - { season: ${1826 + i}, on: ${1826 + i}-05-09 }\n`);
  const { club, problems } = await loadClub(
    await clubFolder({ "lakes/ember.yaml": `${LAKE_YAML}iceOff:\n${rows.join("")}` }),
  );
  expect(problems).toEqual([]);
  expect(club?.lakes[0]?.iceOff).toHaveLength(200);
});

test("a club needs no more than club.yaml, lakes and reports", async () => {
  const dir = await folderOf({
    "club.yaml": CLUB_YAML,
    "lakes/ember.yaml": LAKE_YAML,
    "reports/2026.yaml": "- { lake: ember, date: 2026-05-12, ice: on }\n",
  });
  const { club, problems } = await loadClub(dir);
  expect(problems).toEqual([]);
  expect(club).toMatchObject({ patterns: [], trips: [], pages: [] });
});
