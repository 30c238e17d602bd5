/** The logistic curve, 0 to 1. */
export const logistic = (z: number): number => 1 / (1 + Math.exp(-z));

/** Scale of a logistic law with standard deviation 1. */
export const LOGISTIC_SCALE = Math.sqrt(3) / Math.PI;

/** A value kept within two limits. */
export const clamp = (value: number, from: number, to: number): number => Math.min(to, Math.max(from, value));

/** Density of the normal law. */
export const normalDensity = (y: number, mean: number, sd: number): number =>
  Math.exp(-(((y - mean) / sd) ** 2) / 2) / (sd * Math.sqrt(2 * Math.PI));
