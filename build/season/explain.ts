import type { CalendarDate } from "../model/calendar.ts";
import type { LakeForecast } from "./forecast.ts";
import { addTableOnGrid, type MiddleTable, middlesOf, momentTable } from "./lake-distribution.ts";
import { at, meanOf, roundTo } from "./numbers.ts";
import type { LakeSeason, RegionSeason } from "./region-season.ts";
import { momentsOf, overScatter, type SeasonGrid } from "./season-grid.ts";
import { SHARED_WEIGHT } from "./season-posterior.ts";

type Evidence = LakeForecast["evidence"];

/** Lakes named as movers of one lake. */
const NAMED_LAKES = 3;
/** A shift under this is not worth a sentence, days. */
const LEAST_SHIFT_DAYS = 0.05;

/** Reports tell an early spring from a late one when their chance in one is so many times that in the other. */
const TELLING = 1.05;

function tells(
  { statements, distribution }: LakeSeason,
  { grid }: RegionSeason["posterior"],
  table?: MiddleTable,
): boolean {
  if (statements.length === 0 || table === undefined) return false;
  const springs = { ...grid, s: Float64Array.of(-grid.scale, 0, grid.scale), k: new Float64Array(3) };
  const logs = new Float64Array(3 * grid.scatter.length);
  addTableOnGrid(logs, table, middlesOf(distribution, springs), 1);
  const usual = Math.floor(grid.scatter.length / 2);
  const three = logs.slice(3 * usual, 3 * usual + 3);
  return Math.max(...three) - Math.min(...three) > Math.log(TELLING);
}

/** How far this spring runs from a middling one, averaged over the lakes whose reports tell. */
function springOf({ lakes, posterior }: RegionSeason): Evidence["spring"] {
  const telling = lakes.filter((lake, place) => tells(lake, posterior, posterior.tables[place]));
  if (telling.length === 0) return null;
  const margin = overScatter(posterior.grid, posterior.weights);
  const s = momentsOf(posterior.grid.s, margin).mean;
  const k = momentsOf(posterior.grid.k, margin).mean;
  return {
    days: roundTo(meanOf(telling.map(({ distribution }) => s + distribution.x * k)), 2),
    lakes: telling.length,
  };
}

/** A lake's evidence over its region's season: the chance of it at each point, and that chance times the mean ice-off day. */
interface Integrals {
  readonly chance: Float64Array;
  readonly moment: Float64Array;
}

function integralsOf(
  { distribution, evidence }: LakeSeason,
  table: MiddleTable | undefined,
  grid: SeasonGrid,
): Integrals {
  const middles = middlesOf(distribution, grid);
  const size = middles.length * grid.scatter.length;
  if (evidence === undefined || table === undefined)
    return {
      chance: new Float64Array(size).fill(1),
      moment: Float64Array.from({ length: size }, (_, i) => at(middles, i % middles.length)),
    };
  const moment = new Float64Array(size);
  addTableOnGrid(moment, momentTable(evidence, distribution, grid), middles, 1);
  const chance = new Float64Array(size);
  addTableOnGrid(chance, table, middles, 1);
  for (let p = 0; p < size; p++) chance[p] = Math.exp(at(chance, p));
  return { chance, moment };
}

/** Mean ice-off day when the season's points weigh `weights`, times `factor`, before the lake's own evidence. */
function meanDay({ chance, moment }: Integrals, weights: Float64Array, factor?: Float64Array): number {
  let all = 0;
  let day = 0;
  for (let p = 0; p < weights.length; p++) {
    const weight = at(weights, p) * (factor === undefined ? 1 : at(factor, p));
    all += weight * at(chance, p);
    day += weight * at(moment, p);
  }
  return day / all;
}

/** How the season's mean effect and slope follow a lake's evidence, to first order: its log chance's covariance with them. */
interface Pull {
  readonly place: number;
  readonly s: number;
  readonly k: number;
}

function pullsOf({ posterior: { grid, weights, tables }, lakes }: RegionSeason): Pull[] {
  const margin = overScatter(grid, weights);
  const s = momentsOf(grid.s, margin).mean;
  const k = momentsOf(grid.k, margin).mean;
  return lakes.flatMap(({ distribution }, place) => {
    const table = tables[place];
    if (table === undefined) return [];
    const logs = new Float64Array(weights.length);
    addTableOnGrid(logs, table, middlesOf(distribution, grid), 1);
    for (let i = 0; i < logs.length; i++) logs[i] = at(logs, i) * at(weights, i);
    const products = overScatter(grid, logs);
    let [pullS, pullK] = [0, 0];
    for (let p = 0; p < products.length; p++) {
      pullS += at(products, p) * (at(grid.s, p) - s);
      pullK += at(products, p) * (at(grid.k, p) - k);
    }
    return [{ place, s: pullS, k: pullK }];
  });
}

/** The places of the other lakes that pull most where this lake stands. */
function strongestPulls(pulls: readonly Pull[], own: number, x: number): number[] {
  const best: { place: number; size: number }[] = [];
  for (const { place, s, k } of pulls) {
    const size = Math.abs(s + x * k);
    if (place === own || (best.length === NAMED_LAKES && size <= (best.at(-1)?.size ?? 0))) continue;
    best.push({ place, size });
    best.sort((a, b) => b.size - a.size);
    best.length = Math.min(best.length, NAMED_LAKES);
  }
  return best.map(({ place }) => place);
}

/** The report that decides for a lake: the first of open water, or else the latest; its silence where there is none. */
function decidingReport(
  { lake: { slug }, statements, silence }: LakeSeason,
  dateOf: (day: number) => CalendarDate,
): Omit<Evidence["movedBy"][number], "days"> {
  const statement = statements.find(({ open }) => open) ?? statements.at(-1);
  if (statement === undefined)
    return { lake: slug, date: dateOf(silence?.until ?? 0), seen: "no report", reports: 0 };
  return { lake: slug, date: statement.date, seen: statement.seen, reports: statements.length };
}

/** Factor on each point's chance when a lake's tempered evidence is left out; each is computed once. */
function leavingOut({
  lakes,
  posterior: { grid, tables, weights },
}: RegionSeason): (place: number) => Float64Array {
  const known = new Map<number, Float64Array>();
  return (place) => {
    const made = known.get(place) ?? new Float64Array(weights.length);
    const [lake, table] = [lakes[place], tables[place]];
    if (known.has(place) || lake === undefined || table === undefined) return made;
    addTableOnGrid(made, table, middlesOf(lake.distribution, grid), -SHARED_WEIGHT);
    for (let p = 0; p < made.length; p++) made[p] = Math.exp(at(made, p));
    known.set(place, made);
    return made;
  };
}

/** The lakes whose evidence moved a lake's mean ice-off most: each one's is left out in turn. */
function movedByOf(
  { lakes, posterior }: RegionSeason,
  place: number,
  pulls: readonly Pull[],
  factorOf: (place: number) => Float64Array,
  dateOf: (day: number) => CalendarDate,
): Evidence["movedBy"] {
  const lake = lakes[place];
  if (lake === undefined) return [];
  const table = posterior.tables[place];
  const own = integralsOf(lake, table, posterior.grid);
  const season = posterior.without(place);
  const mean = meanDay(own, season);
  const shifts = strongestPulls(pulls, place, lake.distribution.x).flatMap((other) => {
    const moving = lakes[other];
    return moving === undefined ? [] : [{ moving, days: mean - meanDay(own, season, factorOf(other)) }];
  });
  if (table !== undefined) {
    const bare = integralsOf({ ...lake, evidence: undefined }, undefined, posterior.grid);
    shifts.push({ moving: lake, days: mean - meanDay(bare, season) });
  }
  return shifts
    .filter(({ days }) => Math.abs(days) >= LEAST_SHIFT_DAYS)
    .sort((a, b) => Math.abs(b.days) - Math.abs(a.days))
    .slice(0, NAMED_LAKES)
    .map(({ moving, days }) => ({ ...decidingReport(moving, dateOf), days: roundTo(days, 2) }));
}

/**
 * Why each lake of a region is forecast as it is, by slug.
 * @param wouldSharpen for each lake, by its place
 */
export function explainRegion(
  region: RegionSeason,
  wouldSharpen: readonly Evidence["wouldSharpen"][],
  dateOf: (day: number) => CalendarDate,
): ReadonlyMap<string, Evidence> {
  const spring = springOf(region);
  const pulls = pullsOf(region);
  const factorOf = leavingOut(region);
  return new Map(
    region.lakes.map((lake, place) => {
      const seasons = [...lake.past.keys()].sort((a, b) => a - b);
      return [
        lake.lake.slug,
        {
          seasons: seasons.length,
          firstSeason: seasons.at(0) ?? null,
          lastSeason: seasons.at(-1) ?? null,
          usualIceOff: dateOf(Math.round(lake.distribution.m)),
          spring,
          movedBy: movedByOf(region, place, pulls, factorOf, dateOf),
          wouldSharpen: wouldSharpen[place] ?? null,
        },
      ];
    }),
  );
}
