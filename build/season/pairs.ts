import { dayKernels, middlesOf } from "./lake-distribution.ts";
import { chanceOfStatements, springOf } from "./lake-evidence.ts";
import { addTo, at } from "./numbers.ts";
import { chanceBy, LAST_BEST_DAY } from "./phases.ts";
import type { LakeSeason, RegionSeason } from "./region-season.ts";

/** Chance that a lake is in a good phase on a day: ice-off, or the best weeks. */
export function goodOn({ spring }: LakeSeason, day: number): number {
  const by = (change: "iceOff" | "onset" | "clear" | "summer"): number => chanceBy(spring, change, day);
  return Math.min(1, Math.max(0, by("iceOff") - by("onset") + by("clear") - by("summer")));
}

/** For each day of ice-off, the chance of the lake's evidence, and of the lake being good on `day` besides. */
function evidenceAndGood({ span, cases, statements, silent }: LakeSeason, day: number) {
  const length = span.to - span.from + 1;
  const evidence = new Float64Array(length);
  const good = new Float64Array(length);
  for (let i = 0; i < length; i++)
    for (const turnover of cases) {
      const spring = springOf(span.from + i, turnover);
      const chance =
        (silent === undefined ? 1 : at(silent.chance, i)) *
        turnover.chance *
        chanceOfStatements(statements, spring);
      const isGood =
        (spring.iceOff <= day && day < spring.onset) ||
        (spring.clear <= day && day <= spring.iceOff + LAST_BEST_DAY);
      addTo(evidence, i, chance);
      if (isGood) addTo(good, i, chance);
    }
  return { evidence, good };
}

/** Points of a season with less chance than this are left out. */
const NEGLIGIBLE = 1e-9;

/** The points of a region's season that count: place among the points of season and slope, row of scatter, and chance. */
interface Support {
  readonly points: Int32Array;
  readonly rows: Int32Array;
  readonly weights: Float64Array;
}

function supportOf({ posterior: { grid, weights } }: RegionSeason): Support {
  const places = Int32Array.from(weights.keys()).filter((place) => at(weights, place) > NEGLIGIBLE);
  return {
    points: places.map((place) => place % grid.s.length),
    rows: places.map((place) => Math.floor(place / grid.s.length)),
    weights: Float64Array.from(places, (place) => at(weights, place)),
  };
}

/** Quarter days to a step of the table of chances over the middle of a lake's ice-off. */
const STEP = 2;
const PER_DAY = 4;

/** Chance that the lake is good on `day`, at each point of its region's season that counts. */
function goodGivenSeason(
  lake: LakeSeason,
  { posterior: { grid } }: RegionSeason,
  { points, rows }: Support,
  day: number,
): Float64Array {
  const { distribution, span } = lake;
  const { evidence, good } = evidenceAndGood(lake, day);
  const days = span.to - span.from;
  const kernels = dayKernels(distribution, grid.scatter, days);
  const steps = Math.floor((days * PER_DAY) / STEP) + 1;
  const known = kernels.map(() => new Float64Array(steps).fill(Number.NaN));
  const goodAt = (row: number, step: number): number => {
    const [table, kernel] = [known[row], kernels[row]];
    if (table === undefined || kernel === undefined) return Number.NaN;
    const made = at(table, step);
    if (!Number.isNaN(made)) return made;
    let [all, part] = [0, 0];
    for (let i = 0; i < good.length; i++) {
      const chance = at(kernel, (days + i) * PER_DAY - step * STEP);
      all += chance * at(evidence, i);
      part += chance * at(good, i);
    }
    const chance = all > 0 ? part / all : 0;
    table[step] = chance;
    return chance;
  };
  const middles = middlesOf(distribution, grid);
  return Float64Array.from(points, (point, n) => {
    const place = ((at(middles, point) - span.from) * PER_DAY) / STEP;
    const step = Math.min(Math.max(Math.floor(place), 0), steps - 2);
    const part = place - step;
    const row = rows[n] ?? 0;
    return (1 - part) * goodAt(row, step) + part * goodAt(row, step + 1);
  });
}

export interface LakeInRegion {
  readonly lake: LakeSeason;
  readonly region: RegionSeason;
}

/**
 * Makes the chance that at least one of several lakes is good on a day. Lakes of one region share the season and are independent given
 * it; regions are independent. The result is kept within what the single chances allow, for each lake's own evidence counts whole
 * in its own chance but tempered in the shared season. What a lake adds on a day is computed once.
 */
export function anyGoodOn(): (lakes: readonly LakeInRegion[], day: number) => number {
  const known = new Map<LakeSeason, Map<number, Float64Array>>();
  const supports = new Map<RegionSeason, Support>();
  const supportIn = (region: RegionSeason): Support => {
    const support = supports.get(region) ?? supportOf(region);
    supports.set(region, support);
    return support;
  };
  const goodOf = ({ lake, region }: LakeInRegion, day: number): Float64Array => {
    const days = known.get(lake) ?? new Map<number, Float64Array>();
    known.set(lake, days);
    const good = days.get(day) ?? goodGivenSeason(lake, region, supportIn(region), day);
    days.set(day, good);
    return good;
  };
  return (lakes, day) => {
    let none = 1;
    for (const region of new Set(lakes.map((entry) => entry.region))) {
      const goods = lakes.filter((entry) => entry.region === region).map((entry) => goodOf(entry, day));
      let noneHere = 0;
      supportIn(region).weights.forEach((weight, p) => {
        noneHere += goods.reduce((chance, good) => chance * (1 - at(good, p)), weight);
      });
      none *= noneHere;
    }
    const single = lakes.map(({ lake }) => goodOn(lake, day));
    const most = Math.min(
      1,
      single.reduce((sum, chance) => sum + chance, 0),
    );
    return Math.min(most, Math.max(0, ...single, 1 - none));
  };
}
