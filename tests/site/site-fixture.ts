import { boxPlan } from "../../build/flies/box-plan.ts";
import type { Guide, GuideLake, GuidePattern, GuideTrip } from "../../build/guide/guide-schema.ts";
import { caughtByPattern, lakeSeasons } from "../../build/guide/report-seasons.ts";
import { nextText, nowText, whyText } from "../../build/guide/status-words.ts";
import type { Outing, When } from "../../build/guide/when-schema.ts";
import { daysFromTo } from "../../build/model/calendar.ts";
import { GOOD_STATES, stateOfPhase } from "../../build/model/phase.ts";
import { rigTables } from "../../build/rigs/tables/rig-tables.ts";
import { composeWater } from "../../build/water/water.ts";
import { bareLake, day, evenRegion, fullLake, guideOf } from "../lake-fixture.ts";
import { box } from "../rigs/box-fixture.ts";
import { TRIP_PLAN } from "../trip-fixture.ts";
import { circle, LAKE, rectangle, shapeOf } from "../water/shapes.ts";

const AS_OF = day("2026-05-16");

/** A lake whose words and coming phase agree with its forecast. */
function worded(lake: GuideLake): GuideLake {
  const next = lake.phases.find(
    ({ phase, from }) => GOOD_STATES.includes(stateOfPhase(phase)) && from.p50 > AS_OF,
  );
  const bestDays = next === undefined && lake.now.state === "laterWeeks" ? null : lake.bestDays;
  const forecast = { ...lake, next: next ?? null, bestDays };
  return {
    ...forecast,
    status: {
      now: nowText(forecast),
      next: nextText(forecast),
      why: whyText(forecast, evenRegion, AS_OF, new Map(), "imperial"),
    },
  };
}

const REPORTS: GuideLake["reports"] = [
  {
    date: day("2026-05-12"),
    seen: ["ice off"],
    water_C: 4.5,
    clarity_m: 2.1,
    deep: null,
    looks: null,
    oxygen_mgL: 9.8,
    rodHours: 8,
    catches: [
      { pattern: "marl-scud", name: "Marl Scud", way: "indicator still", fish: 5, rodHours: 6 },
      { pattern: "ash-leech", name: "Ash Leech", way: null, fish: 0, rodHours: null },
    ],
    samples: [[{ food: "scud", count: 12, mass_g: null }], []],
    notes: "Open along the south shore.",
  },
  {
    date: day("2026-05-14"),
    seen: [],
    water_C: 6,
    clarity_m: null,
    deep: null,
    looks: null,
    oxygen_mgL: null,
    rodHours: null,
    catches: [],
    samples: [],
    notes: null,
  },
  {
    date: day("2025-05-23"),
    seen: ["ice off"],
    water_C: 5,
    clarity_m: 3,
    deep: null,
    looks: null,
    oxygen_mgL: null,
    rodHours: 4,
    catches: [{ pattern: "ash-leech", name: "Ash Leech", way: "floating line", fish: 0, rodHours: 4 }],
    samples: [],
    notes: null,
  },
];

const withReports = (lake: GuideLake): GuideLake => ({
  ...lake,
  reported: {
    seasons: lakeSeasons({ ...lake, reports: REPORTS }),
    caught: caughtByPattern(REPORTS),
    unrecorded: [
      { season: 2026, after: day("2026-05-06"), by: day("2026-05-12") },
      { season: 2025, after: day("2025-05-20"), by: day("2025-05-23") },
    ],
  },
  notes: "<p>Launch at the <em>south</em> bay.</p>",
  marks: lake.marks.map((mark, i) => ({ ...mark, doubted: i === 1 })),
  diet: [
    {
      phase: "ice-off",
      fish: 9,
      empty: 1,
      otherFish: 4,
      otherLakes: 2,
      weighedFish: 0,
      words: "9 samples here, 4 at 2 other lakes, 1 empty throat left out",
      foods: [
        { food: "scud", fish: 7, seen: 0.62, share: 0.55, low: 0.42, high: 0.68, importance: null },
        { food: "water boatman", fish: 0, seen: 0, share: 0.08, low: 0.02, high: 0.15, importance: null },
        { food: "leech", fish: 1, seen: 0.04, share: 0.06, low: 0.01, high: 0.12, importance: null },
      ],
    },
  ],
  catches: {
    season: { fish: 5, rodHours: 8, mean: 0.625, low: 0.203, high: 1.459 },
    all: { fish: 5, rodHours: 8, mean: 0.625, low: 0.203, high: 1.459 },
    phases: [{ phase: "ice-off", rate: { fish: 5, rodHours: 8, mean: 0.625, low: 0.203, high: 1.459 } }],
  },
  reports: REPORTS,
});

/** A lake with a shape: everything that can be told of it as a place. */
const withShape = (lake: GuideLake): GuideLake => ({
  ...lake,
  place: composeWater(
    LAKE,
    shapeOf(rectangle(420, 260, 20), {
      islands: [circle(20, 24)],
      contours: [
        [2, rectangle(360, 200, 20)],
        [4, rectangle(240, 120, 20)],
      ],
      marks: [
        { mark: "launch", x: -180, y: 0 },
        { mark: "hazard", x: 60, y: -60 },
      ],
    }),
    {
      units: "imperial",
      timezone: "America/Denver",
      days: [AS_OF],
      bands: lake.plan.map(({ phase, band }) => ({ phase, band })),
      reports: [
        {
          lake: "ember",
          date: AS_OF,
          water_C: 10,
          oxygen_mgL: 4.415,
          catches: [],
          samples: [],
          where: { file: "reports/2026.yaml", line: 1, column: 1 },
        },
      ],
    },
  ).water,
});

const pattern = (slug: string, name: string, change: Partial<GuidePattern> = {}): GuidePattern => ({
  slug,
  name,
  mass_g: null,
  flyClass: "unweighted",
  imitates: "scud",
  sizes: [12, 14],
  colours: ["pale olive", "tan"],
  phases: ["ice-off", "post-turnover"],
  ways: ["indicator still", "indicator twitched"],
  waters: ["marl"],
  stock: [
    { size: 12, colour: "pale olive", count: 8 },
    { size: 14, colour: "tan", count: 6 },
  ],
  dressing: [
    { part: "hook", material: "curved, heavy wire, 12 to 14" },
    { part: "body", material: "olive and tan fur, mixed and picked out" },
  ],
  notes: "<p>Fish it dead still.</p>",
  lakes: [{ slug: "ember", name: "Ember Lake", phases: ["ice-off", "post-turnover"] }],
  ...change,
});

const PATTERNS: GuidePattern[] = [
  pattern("marl-scud", "Marl Scud"),
  pattern("cinder-pupa", "Cinder Pupa", { imitates: "chironomid pupa", waters: [], stock: [] }),
  pattern("ash-leech", "Ash Leech", { imitates: "leech", dressing: [], notes: null, lakes: [] }),
];

function trip(slug: string, name: string, unlisted: boolean, lakes: readonly GuideLake[]): GuideTrip {
  const [from, to] = [day("2026-06-05"), day("2026-06-08")];
  const [first, second] = lakes;
  if (first === undefined) throw new RangeError("a trip needs a lake");
  const days = daysFromTo(from, to).map((date) => {
    const chances = lakes.map((lake) => {
      const row = lake.daily.find((candidate) => candidate.date === date);
      const good = row === undefined ? 0 : row.iceOff + row.postTurnover;
      return { slug: lake.slug, name: lake.name, good: Math.min(1, good), open: true };
    });
    const most = Math.max(...chances.map(({ good }) => good));
    return { date, lakes: chances, anyGood: most, either: most };
  });
  return {
    slug,
    name,
    from,
    to,
    rods: 4,
    unlisted,
    notes: "<p>Meet at the gate at six.</p>",
    days,
    ...TRIP_PLAN,
    box: boxPlan({ days: days.map(({ date }) => date), rods: 4, lakes }, PATTERNS),
    gear: {
      lakes: lakes.map((lake) => ({ slug: lake.slug, name: lake.name, phases: lake.plan })),
      boards: {
        boards: RIGS.leaders.map((leader) => ({
          leader,
          why: "For Ember Lake.",
          needed: 6,
          how: "6: one on each of 4 rods, and 2 to spare.",
          tie: 6 - leader.tied,
        })),
        uncovered: ["No leader here serves a set of 1.5 ft."],
      },
      lines: ["Floater", "Clear slow"],
      flies: [{ pattern: "ash-leech", name: "Ash Leech" }],
    },
    pick: {
      slug: first.slug,
      name: first.name,
      fallback: second === undefined ? null : { slug: second.slug, name: second.name, good: 0.4 },
      good: 0.72,
      either: 0.91,
    },
  };
}

const two = (first: string, second: string | null): Outing => ({
  slug: first,
  name: first,
  good: 0.7,
  fallback: second === null ? null : { slug: second, name: second, good: 0.4 },
  either: 0.8,
});

/** A weekend with a pair, a holiday with one lake, and a weekend when no road is open. */
const WHEN: When = {
  occasions: [
    {
      name: null,
      from: day("2026-05-16"),
      to: day("2026-05-17"),
      best: two("ember", "kettle"),
      isLikely: true,
      next: two("ember", "cinder"),
      fishable: [{ slug: "ember", name: "Ember Lake", chance: 0.9 }],
      out: [{ slug: "high", name: "High Lake", why: "its road opens on Sat 20 Jun" }],
    },
    {
      name: "Spring holiday",
      from: day("2026-05-25"),
      to: day("2026-05-25"),
      best: two("ember", null),
      isLikely: false,
      next: null,
      fishable: [],
      out: [],
    },
    {
      name: null,
      from: day("2026-05-30"),
      to: day("2026-05-31"),
      best: null,
      isLikely: false,
      next: null,
      fishable: [],
      out: [],
    },
  ],
  pool: 20,
  weeks: [{ from: day("2026-05-16"), to: day("2026-05-17") }],
  lakes: [
    { slug: "ember", name: "Ember Lake", good: [0.7] },
    { slug: "high", name: "High Lake", good: [null] },
  ],
};

const RIGS: Guide["rigs"] = {
  ...rigTables(box, "imperial"),
  rod_m: 3.05,
  offBottom: { from_m: 0.15, to_m: 0.2 },
  tippet: [
    { size: "3X", diameter_mm: 0.2032 },
    { size: "4X", diameter_mm: 0.1778 },
    { size: "5X", diameter_mm: 0.1524 },
  ],
  leaders: [
    {
      name: "Long board",
      sections: [
        { part: "taper", length_m: 3.6576, size: "3X", diameter_mm: 0.2032 },
        { part: "middle", length_m: 1.8288, size: "4X", diameter_mm: 0.1778 },
        { part: "tippet", length_m: 0.9144, size: "5X", diameter_mm: 0.1524 },
      ],
      total_m: 6.4008,
      knotted_m: 2.7432,
      serves: { from_m: 2.9, to_m: 6.25 },
      tied: 4,
      warnings: [],
      label: ["Long board 21 ft", "12 ft 3X, 6 ft 4X, 3 ft 5X", "set 9.5 to 20.5 ft"],
    },
    {
      name: "Odd one",
      sections: [
        { part: "taper", length_m: 2.7432, size: "1X", diameter_mm: 0.254 },
        { part: "middle", length_m: 2.7432, size: "4X", diameter_mm: 0.1778 },
        { part: "tippet", length_m: 0.6, size: "5X", diameter_mm: 0.1524 },
      ],
      total_m: 6.0864,
      knotted_m: 3.3432,
      serves: null,
      tied: 0,
      warnings: ["1X to 4X is too big a step: put a piece of 2X or 3X between."],
      label: ["Odd one 20 ft"],
    },
  ],
  lines: [
    { name: "Floater", kind: "floating", sinkRate_mps: null, tip_m: null, counts: [] },
    {
      name: "Clear slow",
      kind: "clear intermediate",
      sinkRate_mps: 0.0381,
      tip_m: null,
      counts: [1, 2, 3].map((depth_m) => ({
        depth_m,
        seconds: Math.round(depth_m / 0.0381),
        long: depth_m > 2,
        hold_mps: null,
      })),
    },
  ],
};

const SCORED = [
  { reporting: "perfect", moment: "before" },
  { reporting: "perfect", moment: "25%" },
  { reporting: "perfect", moment: "50%" },
  { reporting: "delay4", moment: "first" },
  { reporting: "delay4", moment: "50%" },
] as const;

const BACKTEST: NonNullable<Guide["backtest"]> = SCORED.map(({ reporting, moment }, place) => ({
  moment,
  reporting,
  i: place % 3,
})).map(({ i, ...row }) => ({
  ...row,
  n: 180 - 40 * i,
  seasons: 12,
  baseline: { mae: 5.2, crps: 3.7 },
  shifted: { mae: 4.9 - 0.8 * i, crps: 3.5 - 0.4 * i },
  opening: null,
  model: { mae: 5.1 - 1.6 * i, crps: 3.6 - 1.1 * i, cover50: 0.52, cover80: 0.81 },
  calibration: [0.1, 0.25, 0.5, 0.75, 0.9].map((said) => ({ said, came: said + 0.04 * (i - 1) })),
}));

const chapter = (slug: string, title: string) => ({
  slug,
  title,
  html: [
    `<p>What ${title.toLowerCase()} says, with a long address: <em>docs/${"very-".repeat(20)}long</em>.</p>`,
    "<h2>More</h2>",
    `<pre><code>ice-off day = lake + season + k x (lateness of the lake / 5 days) + what is left over\n</code></pre>`,
    "<table><thead><tr><th>report</th><th>says</th><th>rests on</th></tr></thead>",
    "<tbody><tr><td>ice part</td><td>opens within seven days</td><td>common practice, unpublished</td></tr></tbody></table>",
    "<ul><li>One.</li><li>Two.</li></ul>",
  ].join("\n"),
});

/** An invented guide with everything a page can show; `change` replaces whole parts of it. */
export function siteGuide(change: Partial<Guide> = {}): Guide {
  const lakes = [
    bareLake("cinder", "Cinder Tarn", day("2026-04-04"), AS_OF),
    fullLake("willow", "Willow Pond", day("2026-04-18"), AS_OF),
    fullLake("kettle", "Kettle Lake", day("2026-04-29"), AS_OF),
    withShape(withReports(fullLake("ember", "Ember Lake", day("2026-05-12"), AS_OF))),
    fullLake("larch", "Larch Reservoir", day("2026-05-22"), AS_OF),
    bareLake("high", "High Lake", day("2026-06-01"), AS_OF),
  ].map(worded);
  const tripLakes = lakes.filter(({ slug }) => slug === "ember" || slug === "larch");
  return guideOf(lakes, AS_OF, {
    baseUrl: null,
    patterns: PATTERNS,
    when: WHEN,
    trips: [
      trip("june-weekend", "June weekend", false, tripLakes),
      trip("quiet-trip", "Quiet trip", true, tripLakes),
    ],
    rigs: RIGS,
    regions: [evenRegion],
    reporting: {
      delay: { shape: 5, theta_d: 14, reports: 4, mean_d: 2.5, seasons: [2023, 2025] },
      visits: {
        seasons: [2024, 2025],
        reports: 9,
        watched: lakes.map(({ slug }, i) => ({ lake: slug, visited: i % 3, chance: (1.2 + (i % 3)) / 4 })),
      },
    },
    backtest: BACKTEST,
    clearDays: { n: 14, seasons: 6, mae: 5.4, cover50: 0.5, cover80: 0.79 },
    chapters: [
      chapter("cautions", "Cautions"),
      chapter("reading", "How to read this guide"),
      chapter("methods", "Methods and sources"),
      chapter("printing", "Printing the cards"),
      chapter("about", "About"),
    ],
    pages: [chapter("club-days", "Club days")],
    ...change,
  });
}

/** A guide made from a folder with nothing but places and dates. */
export function bareGuide(): Guide {
  const bare = siteGuide();
  return siteGuide({
    club: { ...bare.club, notice: null },
    lakes: bare.lakes.filter(({ plan }) => plan.length === 0),
    patterns: [],
    when: { occasions: [], pool: null, weeks: [], lakes: [] },
    trips: [],
    rigs: { ...bare.rigs, tippet: [], leaders: [], lines: [] },
    backtest: null,
    clearDays: null,
    cautions: [],
    chapters: [],
    pages: [],
  });
}
