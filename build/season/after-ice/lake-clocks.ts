import { power } from "../../model/power.ts";
import { at, total } from "../numbers.ts";
import { DAYS, LAST_DAY, type LakeTraits } from "./lake-traits.ts";
import { clamp, LOGISTIC_SCALE, logistic, normalDensity } from "./logistic.ts";
import {
  clearByDay,
  clearLaw,
  onsetChances,
  type PastSpring,
  type ThisSpring,
  warmLaw,
} from "./own-records.ts";
import { type Reading, type ReadingFactors, readingFactors } from "./readings.ts";
import { type Stratification, stratificationOf } from "./stratification.ts";
import { climateOf, shownByDay, surfaceTemperature, YEAR_SD_C } from "./surface-temperature.ts";

/** Points at which the warmth of place and year is laid out, in standard deviations. */
const WARMTH_POINTS = Array.from({ length: 11 }, (_, j) => -3 + 0.6 * j);

/** Height of summer: heat holds off no layers beyond it, and ends the best weeks no sooner than 14 days after they begin. */
const HEIGHT_OF_SUMMER_SD_D = 12;
export const LEAST_BEST_DAYS = 14;

/** A lake that does not turn over goes from ice-off to its best weeks on this day. Common practice, no source. */
const NO_TURNOVER_DAY = 15;

/** Spread of one surface reading about the curve, degrees C: 2.4 by the fit, widened for coverage; and how far one may pull, in standard deviations. */
const READING_SD_C = 3;
const MOST_PULL = 1.5;

/** A dated record of this season is taken at its word: one in ten thousand is wrong and may then name any of 60 days. No source. */
const WRONG_RECORDED_DAY = 1e-4 / 60;

export const GUARD_SCALE_C = 1.5 * LOGISTIC_SCALE;

/** One lake in one season, ready for any ice-off day. Arrays run over days 0 to 150 after ice-off unless said otherwise. */
export interface LakeClocks {
  readonly lake: LakeTraits;
  readonly stratification: Stratification;
  readonly offset_C: number;
  readonly surface: (iceOff: number) => Float64Array;
  readonly shown: Float64Array;
  /** Warmth of place and year over the expected, degrees C, and its chance, at eleven points. */
  readonly warmth: readonly { readonly over_C: number; readonly chance: number }[];
  /** Variance of the place's warmth. */
  readonly placeVariance: number;
  readonly onset: Float64Array;
  readonly clear: Float64Array;
  /** Chance that wind keeps it mixed all summer. */
  readonly polymictic: number;
  /** Where the lake does not turn over: the day on which it counts as settled. */
  readonly settledOn?: number;
  /** Chance that the height of summer is past, by days from the expected one, from -150 on. */
  readonly pastHeight: Float64Array;
  readonly ones: Float64Array;
  readonly thisSpring: ThisSpring;
}

export function lakeClocks(lake: LakeTraits, past: PastSpring, thisSpring: ThisSpring): LakeClocks {
  const climate = climateOf(lake);
  const { offset_C, placeVariance } = warmLaw(lake, climate, past.lastGood);
  const sd = Math.sqrt(placeVariance + YEAR_SD_C ** 2);
  const weights = Float64Array.from(WARMTH_POINTS, (z) => Math.exp(-(z * z) / 2));
  const all = total(weights);
  const stratification = stratificationOf(lake);
  const turnover = lake.turnsOver
    ? {
        onset: onsetChances(lake.onset, past.onset),
        clear: clearByDay(clearLaw(past.clear, lake.clearRule)),
        polymictic: stratification.never,
      }
    : {
        onset: Float64Array.from({ length: DAYS }, (_, d) => (d === NO_TURNOVER_DAY ? 1 : 0)),
        clear: new Float64Array(DAYS).fill(1),
        polymictic: 0,
        settledOn: NO_TURNOVER_DAY,
      };
  return {
    lake,
    stratification,
    ...turnover,
    offset_C,
    surface: surfaceTemperature(climate, lake.usualIceOff),
    shown: shownByDay(climate),
    warmth: WARMTH_POINTS.map((z, j) => ({ over_C: z * sd, chance: at(weights, j) / all })),
    placeVariance,
    pastHeight: Float64Array.from({ length: 2 * LAST_DAY + 1 }, (_, i) =>
      logistic((i - LAST_DAY + 0.5) / (HEIGHT_OF_SUMMER_SD_D * LOGISTIC_SCALE)),
    ),
    ones: new Float64Array(DAYS).fill(1),
    thisSpring,
  };
}

/** The readings of a lake as factors. */
export const factorsOfReadings = (
  { lake, stratification, offset_C }: LakeClocks,
  readings: readonly Reading[],
  beside: readonly Reading[] = [],
): readonly ReadingFactors[] => readingFactors(readings, { lake, stratification, offset_C }, beside);

/** One lake given its ice-off day: everything that does not depend on the year's warmth. */
export interface GivenIceOff {
  /** Expected surface temperature, degrees C. */
  readonly surface_C: Float64Array;
  /** Day on which it is highest. */
  readonly warmestDay: number;
  /** Factors of the readings on the day of each change. */
  readonly layeredGate: Float64Array;
  readonly warmGate: Float64Array;
  readonly never: number;
  /** Chance that the lake has cleared, readings included. */
  readonly clear: Float64Array;
  /** Factor of the readings that cannot be told apart by any change, and on each point of warmth. */
  readonly factor: number;
  readonly warmthFactor: Float64Array;
  /** What reports and records say of the states themselves; undefined where they say nothing. */
  readonly words: StateWords | undefined;
}

/** Factor on onset `a` and first clear, settled day `k`, both days after ice-off; only `max(a, k)` counts of `k`. */
export type StateWords = (a: number, k: number) => number;

const dayAfter = (day: number, iceOff: number): number => Math.min(day - iceOff, LAST_DAY);

function applyGate(days: Float64Array, d: number, by: number, after: number): void {
  for (let i = 0; i <= d; i++) days[i] = at(days, i) * by;
  for (let i = d + 1; i < days.length; i++) days[i] = at(days, i) * after;
}

/** What a surface temperature says of the year's warmth, at each point of it. @param expected_C on that day */
export function applyWarmth(
  factors: Float64Array,
  { shown, placeVariance, warmth }: LakeClocks,
  { water_C, weight }: NonNullable<ReadingFactors["surface"]>,
  d: number,
  expected_C: number,
): void {
  const share = at(shown, d);
  const most = MOST_PULL * Math.sqrt(share ** 2 * (placeVariance + YEAR_SD_C ** 2) + READING_SD_C ** 2);
  const over_C = clamp(water_C - expected_C, -most, most);
  warmth.forEach((point, j) => {
    factors[j] = at(factors, j) * power(normalDensity(over_C, point.over_C * share, READING_SD_C), weight);
  });
}

/** Chance of change by each day, each day's own chance multiplied by its factor. */
function gated(by: Float64Array, gate: Float64Array): Float64Array {
  const chances = new Float64Array(by.length);
  let [sum, before] = [0, 0];
  for (let d = 0; d < by.length; d++) {
    sum += (at(by, d) - before) * at(gate, d);
    before = at(by, d);
    chances[d] = sum;
  }
  return chances;
}

/** Chance of one recorded day against any other. */
const recorded = (is: boolean): number => (is ? 1 : WRONG_RECORDED_DAY);

function placeOfHighest(values: Float64Array): number {
  let best = 0;
  for (let i = 1; i < values.length; i++) if (at(values, i) > at(values, best)) best = i;
  return best;
}

/** @param iceOff day of season */
export function givenIceOff(
  clocks: LakeClocks,
  factors: readonly ReadingFactors[],
  iceOff: number,
): GivenIceOff {
  const { warmth, lake, thisSpring } = clocks;
  const surface_C = clocks.surface(iceOff);
  const { onset, lastTurnover, lastGood } = thisSpring;
  const noGates = factors.length === 0 && lastGood === undefined;
  const ones = (): Float64Array => (noGates ? clocks.ones : new Float64Array(DAYS).fill(1));
  const [layeredGate, warmGate, clearGate] = [ones(), ones(), ones()];
  const warmthFactor = new Float64Array(warmth.length).fill(1);
  let [never, factor] = [1, 1];
  const reports: { d: number; states: readonly number[] }[] = [];
  for (const { day, layered, warm, clear, surface, states, iced } of factors) {
    const d = dayAfter(day, iceOff);
    if (d < 0) {
      factor *= iced;
      continue;
    }
    if (lake.turnsOver && layered !== undefined) {
      applyGate(layeredGate, d, layered.by, layered.after);
      never *= layered.never;
    }
    if (lake.turnsOver && clear !== undefined) applyGate(clearGate, d, clear.by, clear.after);
    if (warm !== undefined) applyGate(warmGate, d, warm.by, warm.after);
    if (states !== undefined) reports.push({ d, states });
    if (surface !== undefined) applyWarmth(warmthFactor, clocks, surface, d, at(surface_C, d));
  }
  if (lastGood !== undefined)
    for (let d = 0; d < DAYS; d++) warmGate[d] = at(warmGate, d) * recorded(d === lastGood + 1 - iceOff);
  const saysWords = reports.length > 0 || onset !== undefined || lastTurnover !== undefined;
  const words: StateWords = (a, k) => {
    const settled = Math.max(a, k);
    let chance = 1;
    for (const { d, states } of reports)
      chance *= (d < a ? states[0] : d < settled ? states[1] : states[2]) ?? 1;
    if (onset !== undefined) chance *= recorded(a === onset - iceOff);
    if (lastTurnover !== undefined) chance *= recorded(settled === lastTurnover + 1 - iceOff);
    return chance;
  };
  return {
    surface_C,
    warmestDay: placeOfHighest(surface_C),
    layeredGate,
    warmGate,
    never,
    clear: noGates ? clocks.clear : gated(clocks.clear, clearGate),
    factor,
    warmthFactor,
    words: saysWords ? words : undefined,
  };
}
