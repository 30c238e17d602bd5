import { chanceOf, FISHABLE_STATES, GOOD_STATES } from "../model/phase.ts";
import { factorsOfReadings } from "./after-ice/lake-clocks.ts";
import { statesOn } from "./after-ice/spring.ts";
import { statesAfterIceOff } from "./after-ice/states.ts";
import { dayKernels, middlesOf } from "./lake-distribution.ts";
import { at } from "./numbers.ts";
import type { LakeSeason, RegionSeason } from "./region-season.ts";

/** Chance that a lake is in a good state on a day: ice-off, or the best weeks. The states shown that day, added up. */
export const goodOn = ({ spring }: LakeSeason, day: number): number =>
  chanceOf(statesOn(spring, day), GOOD_STATES);

/** Chance that it can be fished that day: good, or in its later weeks. */
export const fishableOn = ({ spring }: LakeSeason, day: number): number =>
  chanceOf(statesOn(spring, day), FISHABLE_STATES);

/** Chance of a lake's evidence by its ice-off day, and of the lake being good on each of the days after besides. */
interface GoodByIceOff {
  readonly evidence: Float64Array;
  readonly good: readonly Float64Array[];
}

function goodByIceOff({ span, clocks, readings, ofIce }: LakeSeason): GoodByIceOff {
  const after = statesAfterIceOff(clocks, factorsOfReadings(clocks, readings));
  const evidence = new Float64Array(span.to - span.from + 1);
  const good = Array.from(evidence, (_, i) => {
    const seen = ofIce === undefined ? 1 : at(ofIce.chance, i);
    const states = after(span.from + i);
    evidence[i] = seen * states.evidence;
    return states.onset.map(
      (onset, d) => seen * (states.evidence - onset + at(states.clear, d) - at(states.later, d)),
    );
  });
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
  { evidence, good: goodAfter }: GoodByIceOff,
  { posterior: { grid } }: RegionSeason,
  { points, rows }: Support,
  day: number,
): Float64Array {
  const { distribution, span } = lake;
  const good = evidence.map((_, i) => {
    const d = day - span.from - i;
    const after = goodAfter[i];
    return after === undefined || d < 0 || d >= after.length ? 0 : at(after, d);
  });
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
  const byIceOff = new Map<LakeSeason, GoodByIceOff>();
  const goodAfterIceOff = (lake: LakeSeason): GoodByIceOff => {
    const good = byIceOff.get(lake) ?? goodByIceOff(lake);
    byIceOff.set(lake, good);
    return good;
  };
  const goodOf = ({ lake, region }: LakeInRegion, day: number): Float64Array => {
    const days = known.get(lake) ?? new Map<number, Float64Array>();
    known.set(lake, days);
    const good =
      days.get(day) ?? goodGivenSeason(lake, goodAfterIceOff(lake), region, supportIn(region), day);
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
