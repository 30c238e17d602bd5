import { addTo, at } from "../numbers.ts";
import { addGuard, heatByDay, heatOverThresholds, heatTables } from "./heat.ts";
import { type GivenIceOff, givenIceOff, type LakeClocks, LEAST_BEST_DAYS } from "./lake-clocks.ts";
import { DAYS, LAST_DAY } from "./lake-traits.ts";
import type { ReadingFactors } from "./readings.ts";
import { sumsWithWords, type TurnoverSums, wordTables } from "./turnover-sums.ts";

/** Chance of each ice-off day from `from` on, before what was seen of the lake's own ice, and the chance of that; neither need sum to 1. */
export interface IceOffLaw {
  readonly from: number;
  readonly chances: Float64Array;
  readonly evidence?: Float64Array;
}

/** Ice-off days of no more chance than this are passed over, unless what was seen of the ice makes them likelier. */
export const NEGLIGIBLE = 1e-6;

/** What follows one ice-off day, by days after it. Every chance is multiplied by `evidence`. */
export interface StatesGivenIceOff {
  /** Chance of all readings and reports, given this ice-off. */
  readonly evidence: number;
  /** Turnover has begun, is over, and the best weeks are over. */
  readonly onset: Float64Array;
  readonly clear: Float64Array;
  readonly later: Float64Array;
  /** Surface water at 18 and at 20 degrees C or more. */
  readonly takeCare: Float64Array;
  readonly stop: Float64Array;
}

/** Makes the states that follow an ice-off day. @returns of an ice-off, day of season; its arrays are filled anew by the next call */
export function statesAfterIceOff(
  clocks: LakeClocks,
  factors: readonly ReadingFactors[],
): (iceOff: number) => StatesGivenIceOff {
  const points = heatTables(clocks);
  const overThresholds = heatOverThresholds(clocks);
  const begun = cumulated(clocks.onset);
  const days = (): Float64Array => new Float64Array(DAYS);
  const heat = { layered: days(), warm: days() };
  const byK = days();
  const sums: TurnoverSums = { over: days(), longOver: days(), begun: days() };
  const [onset, clear, later, takeCare, stop] = [days(), days(), days(), days(), days()];
  return (iceOff) => {
    const given = givenIceOff(clocks, factors, iceOff);
    const over = overThresholds(given);
    const tables = given.words === undefined ? undefined : wordTables(clocks.onset, given.words);
    for (const chances of [onset, clear, later, takeCare, stop]) chances.fill(0);
    const { pastHeight, warmth } = clocks;
    const height = LAST_DAY - given.warmestDay;
    let evidence = 0;
    for (let point = 0; point < warmth.length; point++) {
      heatByDay(clocks, given, over, points, point, heat);
      settledByDay(clocks, given, heat.layered, byK);
      const weight = (warmth[point]?.chance ?? 0) * given.factor * (given.warmthFactor[point] as number);
      const warmAll = heat.warm[LAST_DAY] as number;
      let begunAll = byK[LAST_DAY] as number;
      if (tables === undefined)
        addStatesWithoutWords(heat.warm, byK, begun, weight, pastHeight, height, { clear, later });
      else {
        sumsWithWords(tables, byK, sums);
        begunAll = sums.begun[LAST_DAY] as number;
        addStates(heat.warm, sums, weight, pastHeight, height, { onset, clear, later });
      }
      const whole = weight * warmAll * begunAll;
      evidence += whole;
      addGuard(over.guard, points.guard, point * DAYS, whole, { takeCare, stop });
    }
    if (tables === undefined) for (let d = 0; d < DAYS; d++) onset[d] = evidence * (begun[d] as number);
    return { evidence, onset, clear, later, takeCare, stop };
  };
}

/** Adds the states at one point of warmth. @param height place in `pastHeight` of day 0 */
function addStates(
  warm: Float64Array,
  sums: TurnoverSums,
  weight: number,
  pastHeight: Float64Array,
  height: number,
  into: Pick<StatesGivenIceOff, "onset" | "clear" | "later">,
): void {
  const { over, longOver, begun } = sums;
  const { onset, clear, later } = into;
  const warmAll = warm[LAST_DAY] as number;
  const whole = weight * warmAll;
  for (let d = 0; d < DAYS; d++) {
    const settled = over[d] as number;
    const best =
      (warmAll - (warm[d] as number)) *
      (settled - (pastHeight[height + d] as number) * (longOver[d] as number));
    onset[d] = (onset[d] as number) + whole * (begun[d] as number);
    clear[d] = (clear[d] as number) + whole * settled;
    later[d] = (later[d] as number) + whole * settled - weight * best;
  }
}

/** The same without reports, where onset and the first settled day are independent; onset is the same at every point. */
function addStatesWithoutWords(
  warm: Float64Array,
  byK: Float64Array,
  begun: Float64Array,
  weight: number,
  pastHeight: Float64Array,
  height: number,
  { clear, later }: Pick<StatesGivenIceOff, "clear" | "later">,
): void {
  const warmAll = warm[LAST_DAY] as number;
  const whole = weight * warmAll;
  for (let d = 0; d < DAYS; d++) {
    const onset = begun[d] as number;
    const settled = onset * (byK[d] as number);
    const longOver = d < LEAST_BEST_DAYS ? 0 : onset * (byK[d - LEAST_BEST_DAYS] as number);
    const best = (warmAll - (warm[d] as number)) * (settled - (pastHeight[height + d] as number) * longOver);
    clear[d] = (clear[d] as number) + whole * settled;
    later[d] = (later[d] as number) + whole * settled - weight * best;
  }
}

export const cumulated = (chances: Float64Array): Float64Array => {
  let sum = 0;
  return chances.map((chance) => {
    sum += chance;
    return sum;
  });
};

/** Chance by each day that the lake is clear and, unless wind keeps it mixed, stratified. */
function settledByDay(
  { polymictic }: LakeClocks,
  { clear, never }: GivenIceOff,
  layered: Float64Array,
  into: Float64Array,
): void {
  for (let d = 0; d < DAYS; d++)
    into[d] = ((1 - polymictic) * (layered[d] as number) + polymictic * never) * (clear[d] as number);
}

/** The four days on which a lake changes its state, in the order they come. */
export const CHANGES = ["iceOff", "onset", "clear", "later"] as const;
export type Change = (typeof CHANGES)[number];

/** A lake's states over the season, readings included. */
export interface SeasonStates {
  /** Day of season of the first place of every array. */
  readonly firstDay: number;
  /** Chance that each change has come by a day. */
  readonly by: Readonly<Record<Change, Float64Array>>;
  /** Chance of each ice-off day. */
  readonly iceOff: Float64Array;
  readonly takeCare: Float64Array;
  readonly stop: Float64Array;
  /** Log of the chance of all readings; the law's own sum is part of it. */
  readonly logEvidence: number;
}

/** Mixes the states over the law of the ice-off day. */
export function seasonStates(
  { from, chances, evidence: ofIce }: IceOffLaw,
  after: (iceOff: number) => StatesGivenIceOff,
): SeasonStates {
  const length = chances.length + DAYS;
  const season = (): Float64Array => new Float64Array(length);
  const by = { iceOff: season(), onset: season(), clear: season(), later: season() };
  const [iceOff, takeCare, stop] = [season(), season(), season()];
  const seen = ofIce === undefined ? chances : chances.map((prior, i) => prior * (ofIce[i] as number));
  const least = NEGLIGIBLE * seen.reduce((sum, chance) => sum + chance, 0);
  let evidence = 0;
  seen.forEach((chance, i) => {
    if ((chances[i] as number) <= NEGLIGIBLE && chance <= least) return;
    const states = after(from + i);
    const weight = chance * states.evidence;
    evidence += weight;
    iceOff[i] = weight;
    for (let d = 0; d < DAYS; d++) {
      by.onset[i + d] = (by.onset[i + d] as number) + chance * (states.onset[d] as number);
      by.clear[i + d] = (by.clear[i + d] as number) + chance * (states.clear[d] as number);
      by.later[i + d] = (by.later[i + d] as number) + chance * (states.later[d] as number);
      takeCare[i + d] = (takeCare[i + d] as number) + chance * (states.takeCare[d] as number);
      stop[i + d] = (stop[i + d] as number) + chance * (states.stop[d] as number);
    }
    // after the last day followed all is over
    for (const change of ["onset", "clear", "later"] as const)
      for (let t = i + DAYS; t < length; t++) addTo(by[change], t, weight);
  });
  const share = (weights: Float64Array): Float64Array => weights.map((weight) => weight / evidence);
  return {
    firstDay: from,
    by: {
      iceOff: cumulated(share(iceOff)),
      onset: share(by.onset),
      clear: share(by.clear),
      later: share(by.later),
    },
    iceOff: share(iceOff).slice(0, chances.length),
    takeCare: share(takeCare),
    stop: share(stop),
    logEvidence: Math.log(evidence),
  };
}

/** Chance that a change has come by a day. */
export function chanceBy(
  { by, firstDay }: Pick<SeasonStates, "by" | "firstDay">,
  change: Change,
  day: number,
): number {
  const place = day - firstDay;
  return place < 0 ? 0 : at(by[change], Math.min(place, by[change].length - 1));
}

/** Chances are compared to four decimals: finer than any of this is known, and the same on every machine. */
const PARTS = 1e4;
export const rounded = (chance: number): number =>
  Math.min(1, Math.max(0, Math.round(chance * PARTS) / PARTS));

/** First day of season by which a change has come with at least this chance. */
export function dayBy(states: Pick<SeasonStates, "by" | "firstDay">, change: Change, chance: number): number {
  const place = states.by[change].findIndex((by) => rounded(by) >= chance);
  return states.firstDay + (place < 0 ? states.by[change].length - 1 : place);
}
