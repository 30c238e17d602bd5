/** Degrees of freedom of the day-to-day errors: heavy tails, so that one typing error moves a lake little. */
export const ERROR_DF = 4;

/**
 * Chance that a Student t with 4 degrees of freedom is at most z. Closed form with polynomial tails: no underflow.
 * @param z standardised, any finite number
 * @source integral of the t density for 4 degrees of freedom; checked against published quantiles
 */
export function t4Cdf(z: number): number {
  const u = (z * z) / (4 + z * z);
  const half = (Math.sqrt(u) * (1 + (1 - u) / 2)) / 2;
  return z < 0 ? 0.5 - half : 0.5 + half;
}

/**
 * The part of a Student t's mean (4 degrees of freedom) that lies below z: the integral of u f(u) up to z.
 * @source derivative of -(1 + u^2/4)^(-3/2) / 2 is u times the density
 */
export function t4PartialMean(z: number): number {
  const q = 1 + (z * z) / 4;
  return -1 / (2 * q * Math.sqrt(q));
}

/** Log density of a Student t, without its constant. */
export const tLogKernel = (z: number, df: number): number => -((df + 1) / 2) * Math.log1p((z * z) / df);
