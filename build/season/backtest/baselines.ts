import { mean, sampleStandardDeviation } from "simple-statistics";
import { type DayForecast, forecastOfChances } from "./scoring.ts";

/** Standard deviations on either side of the mean that are looked at. */
const REACH = 8;
const LEAST_SD_DAYS = 0.5;

/**
 * A normal cut off at the last day without an opening. The density at each whole day, in ratio to the largest, so that a cut far in the
 * tail still works.
 */
function cutNormal(middle: number, sd: number, icedOn: number | undefined): DayForecast {
  const lowest = Math.floor(middle - REACH * sd);
  const firstDay = icedOn === undefined ? lowest : Math.max(lowest, icedOn + 1);
  const lastDay = Math.max(Math.ceil(middle + REACH * sd), firstDay + 1);
  const top = Math.max(firstDay, Math.min(middle, lastDay));
  const chances = Float64Array.from({ length: lastDay - firstDay + 1 }, (_, i) =>
    Math.exp(((top - middle) ** 2 - (firstDay + i - middle) ** 2) / (2 * sd * sd)),
  );
  return forecastOfChances(chances, firstDay);
}

/** What a lake's own records alone say: a normal of their mean and standard deviation, cut off at `icedOn`. */
export const usualForecast = (pastDays: readonly number[], icedOn: number | undefined): DayForecast =>
  cutNormal(mean([...pastDays]), Math.max(LEAST_SD_DAYS, sampleStandardDeviation([...pastDays])), icedOn);

/** Spread of the shifted usual date, days. */
const SHIFTED_SD_DAYS = 4;

/** The usual date moved by how early or late the lakes already open were on average, cut off at `icedOn`. */
export const shiftedForecast = (
  pastDays: readonly number[],
  anomalies_d: readonly number[],
  icedOn: number | undefined,
): DayForecast =>
  cutNormal(
    mean([...pastDays]) + (anomalies_d.length === 0 ? 0 : mean([...anomalies_d])),
    SHIFTED_SD_DAYS,
    icedOn,
  );
