import { mkdir, writeFile } from "node:fs/promises";
import path from "node:path";
import { planeAbout } from "../../build/water/plane.ts";
import { seeded } from "../seeded-random.ts";
import { lakeLike } from "./invented-lake.ts";
import { contoursOf, geojsonOf, type Mark } from "./lake-geojson.ts";
import type { LakeLook } from "./lake-look.ts";

/** A made-up lake that can be laid anywhere. */
interface SyntheticShape {
  readonly area_ha: number;
  readonly maxDepth_m: number;
  geojsonAt(position: { readonly lat: number; readonly lon: number }): string;
}

/** Drawing a bottom takes long; so many are drawn, and each is laid in many places. No two lakes have the same coordinates. */
const SHAPES = 24;
const NOTICE = "Made up to measure the program.";
const HECTARE_M2 = 10_000;
const MARKS: readonly Mark[] = [
  { mark: "launch", name: "Ramp", bearing_deg: 200, out: 1 },
  { mark: "inflow", bearing_deg: 20, out: 1 },
  { mark: "shoal", name: "Shoal", bearing_deg: 120, out: 0.5 },
];

function drawShape(seed: number): SyntheticShape {
  const random = seeded(seed);
  const look: LakeLook = {
    seed,
    axis_deg: random() * 180,
    stretch: 1.1 + random() * 2,
    bend: (random() - 0.5) / 2,
    rough: 0.5 + random() / 2,
    bays: [{ bearing_deg: random() * 360, reach: 0.3 * (random() - 0.3), width_deg: 12 }],
  };
  const area_ha = 4 + Math.round(random() * 60);
  const maxDepth_m = 4 + Math.round(random() * 14);
  const figures = { position: { lat: 41.5, lon: -106.5 }, area_m2: area_ha * HECTARE_M2, maxDepth_m };
  const like = lakeLike(look, figures, random);
  const contours = contoursOf(like, maxDepth_m);
  return {
    area_ha,
    maxDepth_m,
    geojsonAt: ({ lat, lon }) =>
      geojsonOf({ ...like, plane: planeAbout([lon, lat]) }, contours, MARKS, NOTICE),
  };
}

const drawn = new Map<number, SyntheticShape>();

/** The shape of the nth lake; the same for the same seed. */
function shapeOfLake(n: number, seed: number): SyntheticShape {
  const key = seed * SHAPES + (n % SHAPES);
  const shape = drawn.get(key) ?? drawShape(key);
  drawn.set(key, shape);
  return shape;
}

const SEASON = 2026;
const SEASONS_OF_RECORDS = 12;
const AS_OF_DAY = 136;

const PATTERNS = [
  { slug: "scud", imitates: "scud", way: "indicator still", phase: "ice-off" },
  { slug: "leech", imitates: "leech", way: "clear intermediate", phase: "turnover" },
  { slug: "pupa", imitates: "chironomid pupa", way: "indicator still", phase: "best-weeks" },
];

const dateOf = (season: number, day: number): string =>
  new Date(Date.UTC(season, 0, Math.round(day))).toISOString().slice(0, 10);

const clubYaml = `name: Synthetic club
season: ${SEASON}
asOf: ${dateOf(SEASON, AS_OF_DAY)}
timezone: America/Denver
units: imperial
`;

const patternYaml = ({ slug, imitates, way, phase }: (typeof PATTERNS)[number]): string =>
  `name: Plain ${slug}\nimitates: ${imitates}\nsizes: [12, 14]\nphases: [${phase}]\nways: [${way}]\n`;

const slugOf = (n: number): string => `lake-${String(n).padStart(4, "0")}`;

/** Chance with a memory: what is drawn for one lake after another. */
interface Dice {
  random(): number;
  /** About normal, with this standard deviation. */
  noise(sd: number): number;
}

/** A visit while there is ice, and one with catches and a throat sample once it is gone. */
function visits(slug: string, season: number, opens: number, until: number, { random }: Dice): string[] {
  const iced = Math.min(until, opens - 1 - Math.round(random() * 8));
  const fished = opens + 2 + Math.round(random() * 12);
  const { slug: pattern } = PATTERNS[Math.floor(random() * PATTERNS.length)] ?? { slug: "scud" };
  const open = `- { lake: ${slug}, date: ${dateOf(season, fished)}, ice: off, water: ${(40 + random() * 14).toFixed(0)} degF, clarity: ${(3 + random() * 9).toFixed(0)} ft, rods: 2, hours: 5 h, caught: [{ pattern: ${pattern}, fish: ${Math.floor(random() * 5)}, hours: 4 h }], samples: [{ scud: ${1 + Math.floor(random() * 12)} }] }`;
  return [`- { lake: ${slug}, date: ${dateOf(season, iced)}, ice: on }`, ...(fished <= until ? [open] : [])];
}

/** Writes one lake with its shape; what members wrote about it, by season. */
async function writeLake(
  dir: string,
  n: number,
  spring: readonly number[],
  dice: Dice,
  seed: number,
): Promise<Map<number, string[]>> {
  const { random, noise } = dice;
  const slug = slugOf(n);
  const elevation = 2200 + Math.round(random() * 900);
  const middle = 105 + (3.3 * (elevation - 2200)) / 100 + noise(3);
  const openings = spring.map((late) => Math.round(middle + late + noise(2.5)));
  const rows = openings.flatMap((day, k) => {
    const season = SEASON - SEASONS_OF_RECORDS + k;
    return season < SEASON && random() < 0.8 ? [`  - { season: ${season}, on: ${dateOf(season, day)} }`] : [];
  });
  const shape = shapeOfLake(n, seed);
  const position = {
    lat: Number((41 + random()).toFixed(4)),
    lon: Number((-106 - random()).toFixed(4)),
  };
  const yaml = `name: Lake ${n}
position: { lat: ${position.lat}, lon: ${position.lon} }
elevation: ${elevation} m
area: ${shape.area_ha} ha
depth: { max: ${shape.maxDepth_m} m }
summary: A lake made up to measure the program.
hazards: [Soft mud at the inflow]
depthBands: { ice-off: { from: 2 ft, to: 6 ft } }
iceOff:${rows.length === 0 ? " []" : `\n${rows.join("\n")}`}
`;
  await writeFile(path.join(dir, "lakes", `${slug}.yaml`), yaml);
  await writeFile(path.join(dir, "lakes", `${slug}.geojson`), shape.geojsonAt(position));
  const openingIn = (season: number): number => openings[season - SEASON + SEASONS_OF_RECORDS] ?? middle;
  return new Map([
    [SEASON - 1, visits(slug, SEASON - 1, openingIn(SEASON - 1), 365, dice)],
    [SEASON, random() < 0.6 ? visits(slug, SEASON, openingIn(SEASON), AS_OF_DAY, dice) : []],
  ]);
}

/**
 * Writes a club folder of made-up lakes: shapes with contours, twelve seasons of records, two of reports with catches and
 * throat samples, three patterns and a trip; the same for the same seed.
 */
export async function writeSyntheticClub(dir: string, lakes: number, seed = 1): Promise<void> {
  const random = seeded(seed);
  const noise = (sd: number): number => sd * (random() + random() + random() + random() - 2) * Math.sqrt(3);
  const spring = Array.from({ length: SEASONS_OF_RECORDS + 1 }, () => noise(7));
  for (const folder of ["lakes", "reports", "patterns", "trips"])
    await mkdir(path.join(dir, folder), { recursive: true });
  await writeFile(path.join(dir, "club.yaml"), clubYaml);
  for (const pattern of PATTERNS)
    await writeFile(path.join(dir, "patterns", `${pattern.slug}.yaml`), patternYaml(pattern));
  await writeFile(
    path.join(dir, "trips", "weekend.yaml"),
    `name: Weekend\nfrom: ${dateOf(SEASON, 143)}\nto: ${dateOf(SEASON, 145)}\nrods: 4\nlakes: [${[0, 1].slice(0, lakes).map(slugOf).join(", ")}]\n`,
  );
  const reports = new Map<number, string[]>();
  for (let n = 0; n < lakes; n++)
    for (const [season, rows] of await writeLake(dir, n, spring, { random, noise }, seed))
      reports.set(season, [...(reports.get(season) ?? []), ...rows]);
  for (const [season, rows] of reports)
    if (rows.length > 0) await writeFile(path.join(dir, "reports", `${season}.yaml`), `${rows.join("\n")}\n`);
}
