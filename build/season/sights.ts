import { isExact, middleOf, type PastRecord } from "./fit-input.ts";
import { type Sight, sightOfInterval } from "./interval.ts";
import { at } from "./numbers.ts";

/** The records as the equations see them: days from `centre`, and how sure. */
export interface Sights {
  readonly value: Float64Array;
  /** Zero for a day that is known. */
  readonly variance: Float64Array;
}

/** Before anything is fitted an interval is taken for its middle, with a wide variance. */
export function firstSights(records: readonly PastRecord[], centre: number, variance: number): Sights {
  return {
    value: Float64Array.from(records, (record) => middleOf(record) - centre),
    variance: Float64Array.from(records, (record) => (isExact(record) ? 0 : variance)),
  };
}

/** Looks at every interval anew from what all the other records say; days that are known stay as they are. */
export function newSights(
  records: readonly PastRecord[],
  centre: number,
  sights: Sights,
  errors: Float64Array,
  fitted: Float64Array,
  fittedVariance: Float64Array,
): Sights {
  const looks = records.map((record, n): Sight => {
    const [value, variance] = [at(sights.value, n), at(sights.variance, n)];
    if (isExact(record)) return { value, variance };
    const precision = 1 / (at(errors, n) + variance);
    // what the rest says: this record's own share taken out again
    const rest = Math.max(1 / at(fittedVariance, n) - precision, 1e-3 / at(fittedVariance, n));
    const mean = (at(fitted, n) / at(fittedVariance, n) - precision * value) / rest;
    return sightOfInterval(mean, 1 / rest + at(errors, n), record.from - centre, record.to - centre);
  });
  return {
    value: Float64Array.from(looks, ({ value }) => value),
    variance: Float64Array.from(looks, ({ variance }) => variance),
  };
}
