import { chanceOf, FISHABLE_STATES, GOOD_STATES } from "../model/phase.ts";
import { factorsOfReadings } from "./after-ice/lake-clocks.ts";
import { statesOn } from "./after-ice/spring.ts";
import { statesAfterIceOff } from "./after-ice/states.ts";
import { dayKernels, middlesOf } from "./lake-distribution.ts";
import { at, wholeAt } from "./numbers.ts";
import type { LakeSeason, RegionSeason } from "./region-season.ts";

/** Chance that a lake is in a good state on a day: ice-off, or the best weeks. The states shown that day, added up. */
export const goodOn = ({ spring }: LakeSeason, day: number): number =>
  chanceOf(statesOn(spring, day), GOOD_STATES);

/** Chance that it can be fished that day: good, or in its later weeks. */
export const fishableOn = ({ spring }: LakeSeason, day: number): number =>
  chanceOf(statesOn(spring, day), FISHABLE_STATES);

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

/** Makes the chance that a lake is good on a day, at each point of its region's season that counts. */
function goodGivenSeason(
  { distribution, span, clocks, readings, ofIce }: LakeSeason,
  { posterior: { grid } }: RegionSeason,
  { points, rows }: Support,
): (day: number) => Float64Array {
  const after = statesAfterIceOff(clocks, factorsOfReadings(clocks, readings));
  const days = span.to - span.from;
  const evidence = new Float64Array(days + 1);
  // a row for each ice-off day: chance of the evidence and of being good, by the days since
  const goodAfter = Array.from(evidence, (_, i) => {
    const seen = ofIce === undefined ? 1 : at(ofIce.chance, i);
    const states = after(span.from + i);
    evidence[i] = seen * states.evidence;
    return states.onset.map(
      (onset, d) => seen * (states.evidence - onset + at(states.clear, d) - at(states.later, d)),
    );
  });
  const longest = Math.max(...goodAfter.map((row) => row.length));
  const kernels = dayKernels(distribution, grid.scatter, days);
  const steps = Math.floor((days * PER_DAY) / STEP) + 1;
  const sumAt = (values: Float64Array, row: number, step: number, from: number, to: number): number => {
    const kernel = kernels[row];
    let sum = 0;
    if (kernel !== undefined)
      for (let i = from; i <= to; i++) sum += at(kernel, (days + i) * PER_DAY - step * STEP) * at(values, i);
    return sum;
  };
  const ofEvidence = new Float64Array(kernels.length * steps).fill(Number.NaN);
  const evidenceAt = (row: number, step: number): number => {
    const place = row * steps + step;
    if (Number.isNaN(at(ofEvidence, place))) ofEvidence[place] = sumAt(evidence, row, step, 0, days);
    return at(ofEvidence, place);
  };
  const middles = middlesOf(distribution, grid);
  const places = Float64Array.from(points, (point) => ((at(middles, point) - span.from) * PER_DAY) / STEP);
  return (day) => {
    const since = day - span.from;
    const [from, to] = [Math.max(0, since - longest + 1), Math.min(days, since)];
    const good = new Float64Array(days + 1);
    for (let i = from; i <= to; i++) good[i] = goodAfter[i]?.[since - i] ?? 0;
    const known = new Float64Array(kernels.length * steps).fill(Number.NaN);
    const goodAt = (row: number, step: number): number => {
      const place = row * steps + step;
      if (Number.isNaN(at(known, place))) {
        const all = evidenceAt(row, step);
        known[place] = all > 0 ? sumAt(good, row, step, from, to) / all : 0;
      }
      return at(known, place);
    };
    return places.map((place, n) => {
      const step = Math.min(Math.max(Math.floor(place), 0), steps - 2);
      const part = place - step;
      const row = wholeAt(rows, n);
      return (1 - part) * goodAt(row, step) + part * goodAt(row, step + 1);
    });
  };
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
  const byDay = new Map<LakeSeason, (day: number) => Float64Array>();
  const supportIn = (region: RegionSeason): Support => {
    const support = supports.get(region) ?? supportOf(region);
    supports.set(region, support);
    return support;
  };
  const goodOf = ({ lake, region }: LakeInRegion, day: number): Float64Array => {
    const days = known.get(lake) ?? new Map<number, Float64Array>();
    const goodOnDay = byDay.get(lake) ?? goodGivenSeason(lake, region, supportIn(region));
    const good = days.get(day) ?? goodOnDay(day);
    known.set(lake, days.set(day, good));
    byDay.set(lake, goodOnDay);
    return good;
  };
  return (lakes, day) => {
    let none = 1;
    for (const region of new Set(lakes.map((entry) => entry.region))) {
      const goods = lakes.filter((entry) => entry.region === region).map((entry) => goodOf(entry, day));
      const noneAt = supportIn(region).weights.slice();
      for (const good of goods)
        for (let p = 0; p < noneAt.length; p++) noneAt[p] = at(noneAt, p) * (1 - at(good, p));
      let noneHere = 0;
      for (let p = 0; p < noneAt.length; p++) noneHere += at(noneAt, p);
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
