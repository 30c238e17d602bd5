import { at } from "../numbers.ts";

/** A forecast of a day: the chance that it has come by each day of a run, from `firstDay` on. Zero before the run, 1 after it. */
export interface DayForecast {
  readonly firstDay: number;
  readonly by: Float64Array;
}

/** Makes a forecast of day-by-day chances, which need not sum to 1. */
export function forecastOfChances(chances: Float64Array, firstDay: number): DayForecast {
  const by = new Float64Array(chances.length);
  let sum = 0;
  for (let i = 0; i < chances.length; i++) {
    sum += at(chances, i);
    by[i] = sum;
  }
  return { firstDay, by: by.map((chance) => chance / sum) };
}

/** Chance that the day has come by `day`. */
export function chanceOf({ firstDay, by }: DayForecast, day: number): number {
  const place = day - firstDay;
  if (place < 0) return 0;
  return place < by.length ? at(by, place) : 1;
}

/** First day that has come with this chance. */
export function quantile({ firstDay, by }: DayForecast, chance: number): number {
  const place = by.findIndex((value) => value >= chance);
  return firstDay + (place < 0 ? by.length - 1 : place);
}

/**
 * Continuous ranked probability score of a forecast in whole days: the squared distance of its cdf from the observed step, summed over
 * days. In days; the absolute error when the forecast is a single day.
 * @source J. E. Matheson, R. L. Winkler (1976), Management Science 22:1087-1096; T. Gneiting, A. E. Raftery (2007), JASA 102:359-378
 */
export function crps(forecast: DayForecast, observed: number): number {
  const first = Math.min(forecast.firstDay, Math.floor(observed));
  const last = Math.max(forecast.firstDay + forecast.by.length - 1, Math.ceil(observed));
  let score = 0;
  for (let day = first; day < last; day++)
    score += (chanceOf(forecast, day) - (day >= observed ? 1 : 0)) ** 2;
  return score;
}

/**
 * How much of the observed day falls below a chance that was named: 0 or 1 when it is clear, between them when the named chance is
 * reached within that day. Averaged over many forecasts it is the share of dates that came by then.
 * @source C. Czado, T. Gneiting, L. Held (2009), Predictive model assessment for count data, Biometrics 65:1254-1261
 */
export function shareBelow(forecast: DayForecast, observed: number, chance: number): number {
  const before = chanceOf(forecast, observed - 1);
  const after = chanceOf(forecast, observed);
  if (chance <= before) return 0;
  return chance >= after ? 1 : (chance - before) / (after - before);
}
