import { FOODS } from "../../build/model/choices.ts";

const FOUND = FOODS.filter((food) => food !== "nothing in particular");

/** A file's data, as YAML reads it. */
type Data = Readonly<Record<string, unknown>> | readonly unknown[];

const band = (from: string, to: string) => ({ from, to });

/** An invented club that writes every key there is; a key added to a schema later is filled in by its example. */
export const FULL_CLUB: Readonly<Record<string, Data>> = {
  "club.yaml": {
    name: "Tarn Club",
    notice: "Everything here is invented.",
    season: 2026,
    asOf: "2026-05-16",
    timezone: "America/Denver",
    units: "imperial",
    holidays: [{ name: "Long weekend", from: "2026-05-22", to: "2026-05-25" }],
    reportForm: {
      dates: "month/day/year",
      columns: {
        lake: "Lake",
        date: "Day",
        ice: "Ice",
        phase: "Phase",
        water: { column: "Water", unit: "degF" },
        clarity: { column: "Disc", unit: "ft" },
        oxygen: { column: "Oxygen", unit: "mg/L" },
        rods: "Rods",
        hours: { column: "Hours", unit: "h" },
        caught: "Caught",
        samples: "Throats",
        notes: "Notes",
      },
    },
  },
  "lakes/ember.yaml": {
    name: "Ember Lake",
    position: { lat: 41.312, lon: -106.291 },
    elevation: "2580 m",
    region: "Cinder Basin",
    area: "40 acre",
    depth: { max: "29 ft", mean: "12 ft" },
    water: "marl",
    summary: "Shallow marl lake.",
    access: { text: "Gravel to the ramp.", opens: "2026-05-18", travel: "1.5 h" },
    hazards: ["Deep marl."],
    rules: { text: "Two trout.", checked: "2026-03-02" },
    depthBands: {
      "ice-off": band("2 ft", "6 ft"),
      turnover: band("3 ft", "8 ft"),
      "post-turnover": band("8 ft", "18 ft"),
    },
    iceOff: [
      { season: 2022, on: "2022-05-14" },
      { season: 2024, on: "2024-05-09" },
      { season: 2025, after: "2025-05-06", by: "2025-05-12" },
    ],
    turnover: [
      { season: 2022, from: "2022-05-24", to: "2022-06-02" },
      { season: 2025, from: "2025-05-21", to: "2025-05-30" },
    ],
    turnoverRule: { onset: band("9 days", "14 days"), duration: band("8 days", "15 days") },
    notes: "Quiet on weekdays.",
  },
  "lakes/willow.yaml": {
    name: "Willow Pond",
    position: { lat: 41.1, lon: -106.1 },
    elevation: "2300 m",
    region: "Cinder Basin",
    access: { text: "By the road.", travel: "1 h" },
    iceOff: [{ season: 2022, on: "2022-05-01" }],
  },
  "patterns/pale-scud.yaml": {
    name: "Pale Scud",
    imitates: "scud",
    rank: 2,
    sizes: [12, 14],
    colours: ["pale olive"],
    phases: ["ice-off", "turnover", "post-turnover"],
    ways: ["indicator still"],
    waters: ["marl"],
    stock: [{ size: 12, colour: "pale olive", count: 6 }],
    dressing: [{ part: "hook", material: "bent wire" }],
    mass: "0.1 g",
    notes: "Slowly.",
  },
  "patterns/bloodworm.yaml": {
    name: "Bloodworm",
    imitates: "chironomid larva",
    rank: 3,
    sizes: [10],
    phases: ["ice-off", "turnover"],
    ways: ["indicator still"],
  },
  "reports/2026.yaml": [
    {
      lake: "ember",
      date: "2026-05-12",
      ice: "off",
      phase: "ice-off",
      water: "44 degF",
      clarity: "8 ft",
      oxygen: "9.8 mg/L",
      rods: 2,
      hours: "6 h",
      caught: [
        { pattern: "pale-scud", way: "indicator still", fish: 3, hours: "4 h" },
        { pattern: "bloodworm", fish: 1 },
      ],
      samples: [Object.fromEntries(FOUND.map((food, i) => [food, { count: 12 + i, weight: `${3 + i} g` }]))],
      notes: "Calm.",
    },
    { lake: "willow", date: "2026-05-12", ice: "off" },
  ],
  "trips/opener.yaml": {
    name: "Opener",
    from: "2026-05-23",
    to: "2026-05-24",
    rods: 2,
    lakes: ["ember", "willow"],
    people: ["Ines", "Tobin"],
    boats: [{ name: "Skiff", seats: 3 }],
    flyLoss: 3,
    travel: { longest: "1.25 h" },
    notes: "Meet at the ramp.",
    unlisted: false,
  },
  "rigs.yaml": {
    rod: "9 ft",
    reach: "1 ft",
    offBottom: band("6 in", "8 in"),
    margin: "6 in",
    lift: "6 in",
    dryShare: 0.5,
    castLimit: "1.2 g",
    leaders: [
      {
        name: "Shallow",
        taper: { length: "9 ft", size: "3X" },
        middle: { length: "6 in", size: "4X" },
        tippet: { length: "18 in", size: "5X" },
        tied: 1,
      },
      {
        name: "Long",
        taper: { length: "12 ft", size: "3X" },
        middle: { length: "6 ft", size: "4X" },
        tippet: { length: "3 ft", size: "5X" },
      },
    ],
    lines: [
      { name: "Clear", kind: "clear intermediate", sinkRate: "1.5 in/s" },
      { name: "Floater", kind: "floating" },
    ],
    shot: [
      { name: "BB", mass: "0.4 g", material: "tin", carried: 5 },
      { name: "No. 4", mass: "0.17 g", material: "tin", carried: 5 },
    ],
    indicators: [{ name: "Small", diameter: "16 mm", density: "100 kg/m3", carried: 4 }],
  },
};
