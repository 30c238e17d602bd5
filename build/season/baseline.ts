import { mean, sampleStandardDeviation } from "simple-statistics";
import { type DayForecast, forecastOfChances } from "./scoring.ts";

/** Standard deviations on either side of the mean that are looked at. */
const REACH = 8;
const LEAST_SD_DAYS = 0.5;

/**
 * What a lake's own records alone would say: a normal of their mean and standard deviation, cut off at the last day it was seen iced.
 * The density at each whole day, in ratio to the largest, so that a cut far in the tail still works.
 */
export function baselineForecast(pastDays: readonly number[], icedOn: number | undefined): DayForecast {
  const middle = mean([...pastDays]);
  const sd = Math.max(LEAST_SD_DAYS, sampleStandardDeviation([...pastDays]));
  const lowest = Math.floor(middle - REACH * sd);
  const firstDay = icedOn === undefined ? lowest : Math.max(lowest, icedOn + 1);
  const lastDay = Math.max(Math.ceil(middle + REACH * sd), firstDay + 1);
  const top = Math.max(firstDay, Math.min(middle, lastDay));
  const chances = Float64Array.from({ length: lastDay - firstDay + 1 }, (_, i) =>
    Math.exp(((top - middle) ** 2 - (firstDay + i - middle) ** 2) / (2 * sd * sd)),
  );
  return forecastOfChances(chances, firstDay);
}
