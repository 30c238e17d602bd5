import type { CalendarDate } from "../model/calendar.ts";
import type { LakeForecast } from "./forecast.ts";
import { evidenceOf } from "./lake-evidence.ts";
import { chanceOnGrid, momentOnGrid } from "./lake-law.ts";
import { at, meanOf, roundTo } from "./numbers.ts";
import type { LakeSeason, RegionSeason } from "./region-season.ts";
import { momentsOf } from "./season-grid.ts";
import { SHARED_WEIGHT } from "./season-posterior.ts";
import { sharpenersOf } from "./sharpen.ts";
import type { Statement } from "./statements.ts";

type Evidence = LakeForecast["evidence"];

/** Reports named for one lake. */
const NAMED_REPORTS = 3;
/** Lakes whose reports are tried for one lake, beside its own: those that move the season most where this lake stands. */
const TRIED_LAKES = 3;
/** A shift under this is not worth a sentence, days. */
const LEAST_SHIFT_DAYS = 0.05;

/** Evidence tells an early spring from a late one when its chance in one is so many times that in the other. */
const TELLING = 1.05;

function tells({ evidence, law }: LakeSeason, { posterior: { grid } }: RegionSeason): boolean {
  if (evidence === undefined) return false;
  const springs = { ...grid, s: Float64Array.of(-grid.scale, 0, grid.scale), k: new Float64Array(3) };
  const chances = chanceOnGrid(evidence, law, springs);
  return Math.max(...chances) > TELLING * Math.min(...chances);
}

/** How far this spring runs from a middling one, averaged over the lakes whose reports tell. */
function springOf(region: RegionSeason): Evidence["spring"] {
  const telling = region.lakes.filter((lake) => tells(lake, region));
  if (telling.length === 0) return null;
  const { grid, weights } = region.posterior;
  const s = momentsOf(grid.s, weights).mean;
  const k = momentsOf(grid.k, weights).mean;
  return {
    days: roundTo(meanOf(telling.map(({ law }) => s + law.x * k)), 2),
    lakes: telling.length,
  };
}

/** A lake's evidence over its region's season: the chance of it at each point, and that chance times the mean ice-off day. */
interface Integrals {
  readonly chance: Float64Array | undefined;
  readonly moment: Float64Array;
}

function integralsOf(
  lake: LakeSeason,
  statements: readonly Statement[],
  { posterior: { grid } }: RegionSeason,
): Integrals {
  const evidence = statements.length === 0 ? undefined : evidenceOf(statements, lake.cases, lake.span);
  return {
    chance: evidence === undefined ? undefined : chanceOnGrid(evidence, lake.law, grid),
    moment: momentOnGrid(evidence, lake.law, grid),
  };
}

/** Mean ice-off day when the season's points weigh `weights` before the lake's own evidence. */
function meanDay({ chance, moment }: Integrals, weights: Float64Array): number {
  let all = 0;
  let day = 0;
  for (let p = 0; p < weights.length; p++) {
    all += at(weights, p) * (chance === undefined ? 1 : at(chance, p));
    day += at(weights, p) * at(moment, p);
  }
  return day / all;
}

const without = (lake: LakeSeason, statement: Statement): Statement[] =>
  lake.statements.filter((other) => other !== statement);

/** How the season's mean effect and slope move when a lake's evidence comes in. */
interface Pull {
  readonly place: number;
  readonly s: number;
  readonly k: number;
}

function pullsOf({ posterior, lakes }: RegionSeason): Pull[] {
  const { grid, weights } = posterior;
  const s = momentsOf(grid.s, weights).mean;
  const k = momentsOf(grid.k, weights).mean;
  return lakes.flatMap(({ statements }, place) => {
    if (statements.length === 0) return [];
    const without = posterior.without(place);
    return [{ place, s: s - momentsOf(grid.s, without).mean, k: k - momentsOf(grid.k, without).mean }];
  });
}

/** Ratio by which the season's points change when one statement of a lake is taken out. Each is worked out once. */
function ratiosOf(region: RegionSeason): (place: number, statement: Statement) => Float64Array {
  const known = new Map<Statement, Float64Array>();
  return (place, statement) => {
    const lake = region.lakes[place];
    const whole = region.posterior.onGrid[place];
    const ratio = known.get(statement);
    if (ratio !== undefined || lake === undefined || whole === undefined) return ratio ?? new Float64Array();
    const rest = integralsOf(lake, without(lake, statement), region).chance;
    const made = whole.map((chance, p) => ((rest === undefined ? 1 : at(rest, p)) / chance) ** SHARED_WEIGHT);
    known.set(statement, made);
    return made;
  };
}

/** The reports that moved a lake's mean ice-off most: each is taken out in turn and the mean taken anew. */
function movedByOf(
  region: RegionSeason,
  place: number,
  pulls: readonly Pull[],
  ratioOf: (place: number, statement: Statement) => Float64Array,
): Evidence["movedBy"] {
  const lake = region.lakes[place];
  if (lake === undefined) return [];
  const season = region.posterior.without(place);
  const own = integralsOf(lake, lake.statements, region);
  const mean = meanDay(own, season);
  const others = pulls
    .filter((pull) => pull.place !== place)
    .map((pull) => ({ place: pull.place, size: Math.abs(pull.s + lake.law.x * pull.k) }))
    .sort((a, b) => b.size - a.size)
    .slice(0, TRIED_LAKES);
  const shifts = [
    ...lake.statements.map((statement) => ({
      statement,
      days: mean - meanDay(integralsOf(lake, without(lake, statement), region), season),
    })),
    ...others.flatMap((other) =>
      (region.lakes[other.place]?.statements ?? []).map((statement) => {
        const ratio = ratioOf(other.place, statement);
        const changed = season.map((weight, p) => weight * at(ratio, p));
        return { statement, days: mean - meanDay(own, changed) };
      }),
    ),
  ];
  return shifts
    .filter(({ days }) => Math.abs(days) >= LEAST_SHIFT_DAYS)
    .sort((a, b) => Math.abs(b.days) - Math.abs(a.days))
    .slice(0, NAMED_REPORTS)
    .map(({ statement: { lake: slug, date, seen }, days }) => ({
      lake: slug,
      date,
      seen,
      days: roundTo(days, 2),
    }));
}

/** Why each lake of a region is forecast as it is, by slug. */
export function explainRegion(
  region: RegionSeason,
  isObserved: (lake: LakeSeason) => boolean,
  today: number,
  dateOf: (day: number) => CalendarDate,
): ReadonlyMap<string, Evidence> {
  const spring = springOf(region);
  const pulls = pullsOf(region);
  const ratioOf = ratiosOf(region);
  const sharpeners = sharpenersOf(region, isObserved, today);
  return new Map(
    region.lakes.map((lake, place) => {
      const seasons = [...lake.past.keys()].sort((a, b) => a - b);
      return [
        lake.lake.slug,
        {
          seasons: seasons.length,
          firstSeason: seasons.at(0) ?? null,
          lastSeason: seasons.at(-1) ?? null,
          usualIceOff: dateOf(Math.round(lake.law.m)),
          spring,
          movedBy: movedByOf(region, place, pulls, ratioOf),
          wouldSharpen: sharpeners[place] ?? null,
        },
      ];
    }),
  );
}
