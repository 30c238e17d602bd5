import { cp, mkdir, writeFile } from "node:fs/promises";
import path from "node:path";

const CLUB = `name: Small club
notice: Invented.
season: 2026
asOf: 2026-05-16
timezone: America/Denver
units: imperial
holidays:
  - { name: Basin Days, from: 2026-05-22, to: 2026-05-24 }
`;

const RIGS = `rod: 10 ft
reach: 1 ft
offBottom: { from: 6 in, to: 8 in }
margin: 4 in
lift: 6 in
dryShare: 0.5
castLimit: 1.2 g
leaders:
  - name: Nine-foot
    taper: { length: 9 ft, size: 3X }
    middle: { length: 1.5 ft, size: 4X }
    tippet: { length: 1.5 ft, size: 5X }
    tied: 3
  - name: Long
    taper: { length: 12 ft, size: 3X }
    middle: { length: 6 ft, size: 4X }
    tippet: { length: 3 ft, size: 5X }
    tied: 6
lines:
  - { name: Clear intermediate, kind: clear intermediate, sinkRate: 1.5 in/s }
  - { name: Floating, kind: floating }
shot:
  - { name: BB, mass: 0.4 g, material: tin, carried: 25 }
  - { name: No. 4, mass: 0.17 g, material: tin, carried: 30 }
indicators:
  - { name: One-inch, diameter: 1 in, density: 60 kg/m3, carried: 3 }
`;

const CHALKHEN = `name: Chalkhen Lake
position: { lat: 41.3541, lon: -106.2418 }
elevation: 7579 ft
area: 64 acre
depth: { max: 29 ft, mean: 12 ft }
water: marl
region: North basin
summary: Pale marl lake with wide flats.
access: { text: Two-track from the road., opens: 2026-05-08, travel: 50 min }
hazards: [Marl flats look firm and do not hold a wader.]
rules: { text: Two trout a day. Current rules apply., checked: 2026-04-21 }
depthBands:
  ice-off: { from: 2.5 ft, to: 6 ft }
  turnover: { from: 4 ft, to: 9 ft }
  post-turnover: { from: 9 ft, to: 16 ft }
iceOff:
  - { season: 2019, on: 2019-04-21 }
  - { season: 2020, after: 2020-04-20, by: 2020-04-23 }
  - { season: 2021, on: 2021-04-14 }
  - { season: 2022, on: 2022-04-28 }
turnover:
  - { season: 2022, from: 2022-05-09, to: 2022-05-20 }
notes: |
  The flats are two to five feet deep.
`;

const PEATKETTLE = `name: Peatkettle Lake
position: { lat: 41.3016, lon: -106.3322 }
elevation: 8268 ft
water: tea
iceOff:
  - { season: 2019, on: 2019-04-28 }
  - { season: 2021, on: 2021-04-15 }
  - { season: 2022, on: 2022-05-09 }
`;

const BLOODWORM = `name: Bloodworm
imitates: chironomid larva
sizes: [10, 12]
colours: [red]
phases: [ice-off, post-turnover]
ways: [indicator still]
waters: [marl]
stock:
  - { size: 10, colour: red, count: 2 }
dressing:
  - { part: hook, material: curved pupa hook }
  - { part: body, material: red ribbon }
mass: 0.1 g
notes: |
  Best on the day after a blow.
`;

const REPORTS = `- lake: chalkhen
  date: 2026-04-21
  ice: off
  phase: ice-off
  water: 42 degF
  clarity: 12 ft
  oxygen: 9.1 mg/L
  rods: 2
  hours: 4 h
  caught:
    - { pattern: bloodworm, way: indicator still, fish: 5, hours: 6 h }
  samples:
    - { scud: { count: 22, weight: 0.9 g } }
  notes: Wind from noon.
`;

const TRIP = `name: Late May weekend
from: 2026-05-22
to: 2026-05-24
rods: 2
lakes: [chalkhen, peatkettle]
people: [Odile, Bram]
boats:
  - { name: The green pram, seats: 2 }
flyLoss: 3
travel: { longest: 2 h }
unlisted: false
notes: |
  We decide at six each morning.
`;

/** Writes a club of two lakes with every kind of file; together they hold every key. */
export async function writeEveryKey(dir: string): Promise<void> {
  const files: Readonly<Record<string, string>> = {
    "club.yaml": CLUB,
    "rigs.yaml": RIGS,
    "lakes/chalkhen.yaml": CHALKHEN,
    "lakes/peatkettle.yaml": PEATKETTLE,
    "patterns/bloodworm.yaml": BLOODWORM,
    "reports/2026.yaml": REPORTS,
    "trips/weekend.yaml": TRIP,
  };
  for (const [file, text] of Object.entries(files)) {
    await mkdir(path.dirname(path.join(dir, file)), { recursive: true });
    await writeFile(path.join(dir, file), text);
  }
  for (const file of [
    "lakes/chalkhen.geojson",
    "lakes/peatkettle.geojson",
    "lakes/peatkettle.csv",
    "pages/etiquette.md",
    "patterns/booby.yaml",
  ]) {
    await mkdir(path.dirname(path.join(dir, file)), { recursive: true });
    await cp(`demo-data/${file}`, path.join(dir, file));
  }
}
