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
export function total(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i] ?? Number.NaN;
  return sum;
}

/** The same values divided by their sum. */
export function normalised(values: Float64Array): Float64Array {
  const sum = total(values);
  return values.map((value) => value / sum);
}

/** Arithmetic mean; NaN of nothing. */
export const meanOf = (values: ArrayLike<number>): number => total(values) / values.length;
