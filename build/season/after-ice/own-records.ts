import type { DayRange } from "../../model/club.ts";
import { addTo } from "../numbers.ts";
import { DAYS, LAST_DAY, type LakeTraits } from "./lake-traits.ts";
import { clamp, LOGISTIC_SCALE, logistic } from "./logistic.ts";
import { type Climate, surfaceTemperature, YEAR_SD_C } from "./surface-temperature.ts";

/** What a club recorded of past seasons on one lake, in days after that season's ice-off unless said otherwise. */
export interface PastSpring {
  /** First day of turnover. */
  readonly onset: readonly number[];
  /** First clear day: the last day of turnover and one. */
  readonly clear: readonly number[];
  /** Ice-off and last good day of a season, days of season. */
  readonly lastGood: readonly { readonly iceOff: number; readonly last: number }[];
}

/** The same of the season in progress, days of season. */
export interface ThisSpring {
  readonly onset?: number;
  readonly lastTurnover?: number;
  readonly lastGood?: number;
}

/** Days of the records that count; others are taken for slips. */
const ONSET_RANGE = { from: 1, to: 60 };
const CLEAR_RANGE = { from: 1, to: 120 };

const within = ({ from, to }: DayRange, day: number): boolean => from <= day && day <= to;

/** Weight of the onset rule, in observed onsets. */
const ONSET_WEIGHT = 8;

/** Chance of each day of onset, 0 to 150 days after ice-off: the rule, and one more for each onset on record. */
export function onsetChances(rule: DayRange, seen: readonly number[]): Float64Array {
  const counted = seen.filter((day) => within(ONSET_RANGE, day));
  const chances = new Float64Array(DAYS);
  for (let day = rule.from; day <= rule.to; day++)
    addTo(chances, Math.min(day, LAST_DAY), ONSET_WEIGHT / (rule.to - rule.from + 1));
  for (const day of counted) addTo(chances, day, 1);
  return chances.map((weight) => weight / (ONSET_WEIGHT + counted.length));
}

/**
 * First clear day after ice-off: mean, and standard deviation between lakes and between years of one lake.
 * @source Secchi depths of 266 lake-years (day 27) pooled with common practice among trout anglers (day 23); Niwot Ridge lakes: 26
 */
const CLEAR = { mean_d: 26, sd_d: 7 };
/** Weight in seasons of the general day, and of a rule that the club wrote itself. */
const CLEAR_WEIGHT = { general: 1, club: 4 };

/** Mean and standard deviation, days after ice-off. */
export interface ClearLaw {
  readonly mean_d: number;
  readonly sd_d: number;
}

/** When a lake clears after ice-off. @param rule the club's own day, where it wrote one */
export function clearLaw(seen: readonly number[], rule: number | undefined): ClearLaw {
  const counted = seen.filter((day) => within(CLEAR_RANGE, day));
  const weight = rule === undefined ? CLEAR_WEIGHT.general : CLEAR_WEIGHT.club;
  const seasons = weight + counted.length;
  const sum = counted.reduce((days, day) => days + day, weight * (rule ?? CLEAR.mean_d));
  return { mean_d: sum / seasons, sd_d: CLEAR.sd_d * Math.sqrt(1 + 1 / seasons) };
}

/** Chance that the lake has cleared by each day after ice-off; 1 on the last. */
export const clearByDay = ({ mean_d, sd_d }: ClearLaw): Float64Array =>
  Float64Array.from({ length: DAYS }, (_, d) =>
    d === LAST_DAY ? 1 : logistic((d + 0.5 - mean_d) / (sd_d * LOGISTIC_SCALE)),
  );

/** Surface temperature that ends the best weeks, degrees C. Our judgement; 14 and 18 were tried too. */
export const WARM_C = 16;
/** Standard deviations of a lake's own threshold and of a last good day as a sign of it, degrees C. Our judgement. */
const THRESHOLD_VARIANCE = 1;
const LAST_GOOD_VARIANCE = YEAR_SD_C ** 2 + 1.5 ** 2;
/** One season says no more than this about the threshold, degrees C. */
const MOST_OFFSET_C = 6;

/** How a lake's own threshold of warmth differs from the general one. */
export interface WarmLaw {
  readonly offset_C: number;
  /** What remains unknown of the lake's place once its own seasons are counted. */
  readonly placeVariance: number;
}

/** What the last good days of past seasons say of the temperature at which this lake's best weeks end. */
export function warmLaw(lake: LakeTraits, climate: Climate, past: PastSpring["lastGood"]): WarmLaw {
  const surface = surfaceTemperature(climate, lake.usualIceOff);
  const offsets = past.flatMap(({ iceOff, last }) => {
    const end = last + 1 - iceOff;
    if (!within({ from: 1, to: LAST_DAY }, end)) return [];
    const warmest = Math.max(...surface(iceOff).subarray(0, end + 1));
    return [clamp(warmest - WARM_C, -MOST_OFFSET_C, MOST_OFFSET_C)];
  });
  if (offsets.length === 0) return { offset_C: 0, placeVariance: climate.variance };
  const variance = 1 / (1 / (THRESHOLD_VARIANCE + climate.variance) + offsets.length / LAST_GOOD_VARIANCE);
  const sum = offsets.reduce((all, offset) => all + offset, 0);
  return {
    offset_C: (variance * sum) / LAST_GOOD_VARIANCE,
    placeVariance: Math.max(0, variance - THRESHOLD_VARIANCE),
  };
}
