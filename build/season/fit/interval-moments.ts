import { at } from "../numbers.ts";
import { isExact } from "../records.ts";
import { middleOf, type PastRecord } from "./fit-input.ts";

/** A record as a Gaussian observation; its variance is infinite when it says nothing. */
export interface GaussianMoment {
  readonly value: number;
  readonly variance: number;
}

const POINTS = 240;
/** Standard deviations beyond which a normal density counts for nothing; in a tail `z` from the mean it is gone after 40 / z. */
const REACH = 8;
const TAIL_REACH = 40;

/** Mean and variance of a normal kept between two moments (either may be infinite). By quadrature: safe in the far tails. */
export function truncatedNormal(
  mean: number,
  variance: number,
  from: number,
  to: number,
): { mean: number; variance: number } {
  const sd = Math.sqrt(variance);
  const nearest = Math.min(Math.max(mean, from), to);
  const reach = sd * Math.min(REACH, (TAIL_REACH * sd) / Math.abs(nearest - mean));
  const low = Math.max(from, nearest - reach);
  const high = Math.min(to, nearest + reach);
  const best = -((nearest - mean) ** 2) / (2 * variance);
  const step = (high - low) / POINTS;
  let weight = 0;
  let first = 0;
  let second = 0;
  for (let i = 0; i < POINTS; i++) {
    const offset = low + (i + 0.5) * step - nearest;
    const w = Math.exp(-((nearest + offset - mean) ** 2) / (2 * variance) - best);
    weight += w;
    first += w * offset;
    second += w * offset * offset;
  }
  const shift = first / weight;
  return { mean: nearest + shift, variance: second / weight - shift * shift };
}

/**
 * What "between these two moments" says about a day expected elsewhere: the Gaussian observation that, joined to the expectation, gives the
 * truncated expectation's mean and variance (moment matching, as in expectation propagation).
 * @source T. Minka (2001), Expectation propagation for approximate Bayesian inference
 */
export function intervalMoment(mean: number, variance: number, from: number, to: number): GaussianMoment {
  const kept = truncatedNormal(mean, variance, from, to);
  const precision = 1 / kept.variance - 1 / variance;
  if (precision < 1e-6 / variance) return { value: mean, variance: Number.POSITIVE_INFINITY };
  return {
    value: (kept.mean / kept.variance - mean / variance) / precision,
    variance: 1 / precision,
  };
}

/** The records as Gaussian observations: days from `centre`, each with its variance. */
export interface GaussianMoments {
  readonly value: Float64Array;
  /** Zero for a day that is known. */
  readonly variance: Float64Array;
}

/** Before the first fit an interval enters as its middle, with a wide variance. */
export function initialMoments(
  records: readonly PastRecord[],
  centre: number,
  variance: number,
): GaussianMoments {
  return {
    value: Float64Array.from(records, (record) => middleOf(record) - centre),
    variance: Float64Array.from(records, (record) => (isExact(record) ? 0 : variance)),
  };
}

/** Each interval matched anew to what all other records say; exact days stay as they are. */
export function updatedMoments(
  records: readonly PastRecord[],
  centre: number,
  moments: GaussianMoments,
  errors: Float64Array,
  fitted: Float64Array,
  fittedVariance: Float64Array,
): GaussianMoments {
  const updated = records.map((record, n): GaussianMoment => {
    const [value, variance] = [at(moments.value, n), at(moments.variance, n)];
    if (isExact(record)) return { value, variance };
    const precision = 1 / (at(errors, n) + variance);
    // what the rest says: this record's own share taken out again
    const rest = Math.max(1 / at(fittedVariance, n) - precision, 1e-3 / at(fittedVariance, n));
    const mean = (at(fitted, n) / at(fittedVariance, n) - precision * value) / rest;
    return intervalMoment(mean, 1 / rest + at(errors, n), record.from - centre, record.to - centre);
  });
  return {
    value: Float64Array.from(updated, ({ value }) => value),
    variance: Float64Array.from(updated, ({ variance }) => variance),
  };
}
