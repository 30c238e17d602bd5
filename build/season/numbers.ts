import { power } from "../model/power.ts";

/**
 * The number at a place that is known to exist; NaN where it does not, so that a slip shows. For one kind of array only: that keeps
 * it fast in inner loops.
 */
export const at = (values: Float64Array, index: number): number => values[index] ?? Number.NaN;

/** The same for whole numbers. */
export const wholeAt = (values: Int32Array, index: number): number => values[index] ?? Number.NaN;

/** Adds to one place of an array of sums. */
export function addTo(sums: Float64Array, index: number, amount: number): void {
  sums[index] = at(sums, index) + amount;
}

/** Sum of all values. */
export function total(values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += at(values, i);
  return sum;
}

/** The same values divided by their sum. */
export function normalised(values: Float64Array): Float64Array {
  const sum = total(values);
  const shares = new Float64Array(values.length);
  for (let i = 0; i < shares.length; i++) shares[i] = at(values, i) / sum;
  return shares;
}

/** Arithmetic mean; NaN of nothing. */
export const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** The value to so many decimals. */
export const roundTo = (value: number, digits: number): number =>
  Math.round(value * power(10, digits)) / power(10, digits);
