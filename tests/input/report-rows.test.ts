import { expect, test } from "vitest";
import { loadClub } from "../../build/input/load-club.ts";
import { clubFolder } from "./club-folder.ts";

const PATTERN = "imitates: scud\nsizes: [12]\nphases: [ice-off]\nways: [indicator still]\n";

test("catches and throat samples arrive in SI units, rows of one pattern and way summed", async () => {
  const { club, problems } = await loadClub(
    await clubFolder({
      "patterns/pale-scud.yaml": `name: Pale scud\n${PATTERN}`,
      "patterns/leech.yaml": `name: Leech\n${PATTERN}`,
      "reports/2026.yaml": `- lake: ember
  date: 2026-05-12
  rods: 2
  hours: 3 h
  caught:
    - { pattern: pale-scud, way: floating line, fish: 2, hours: 90 min }
    - { pattern: leech, fish: 0 }
    - { pattern: pale-scud, way: floating line, fish: 1, hours: 1 h }
    - { pattern: pale-scud, fish: 1, hours: 30 min }
    - { pattern: pale-scud, fish: 3 }
  samples:
    - { scud: 12, chironomid pupa: { count: 3, weight: 200 mg } }
    - {}
    - { leech: 0 }
`,
    }),
  );
  expect(problems.map(({ code }) => code)).toEqual(["pattern-caught-twice", "pattern-caught-twice"]);
  expect(club?.reports[0]?.catches).toEqual([
    // 90 min and 1 h
    { pattern: "pale-scud", way: "floating line", fish: 3, rodHours: 2.5 },
    { pattern: "leech", fish: 0 },
    // One of the two rows has no hours: the sum has its share of what is left of the visit.
    { pattern: "pale-scud", fish: 4 },
  ]);
  expect(club?.reports[0]?.samples).toEqual([
    [
      { food: "scud", count: 12 },
      { food: "chironomid pupa", count: 3, mass_g: 0.2 },
    ],
    [],
    [],
  ]);
});

test("a report without fish has none", async () => {
  const { club } = await loadClub(
    await clubFolder({ "reports/2026.yaml": "- { lake: ember, date: 2026-05-12 }\n" }),
  );
  expect(club?.reports[0]).toMatchObject({ catches: [], samples: [] });
});

test("a pattern whose own file is broken is no second problem", async () => {
  const { problems } = await loadClub(
    await clubFolder({
      "patterns/pale-scud.yaml": "name: Pale scud\n",
      "reports/2026.yaml":
        "- { lake: ember, date: 2026-05-12, rods: 1, hours: 2 h, caught: [{ pattern: pale-scud, fish: 1 }] }\n",
    }),
  );
  expect(new Set(problems.map(({ file }) => file))).toEqual(new Set(["patterns/pale-scud.yaml"]));
});
