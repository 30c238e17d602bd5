/** Coordinates are written to a tenth of a unit: finer than any printer, and short. */
export const tenth = (value: number): number => Math.round(value * 10) / 10;

export const clamp = (value: number, low: number, high: number): number =>
  Math.max(low, Math.min(high, value));
