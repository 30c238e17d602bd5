/**
 * Lower 10 % points of the chi-square distribution. NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4, lower-tail
 * table. A Poisson number of mean m stays within k with chance 0.9 exactly when 2 m is this point for 2 (k + 1) degrees of
 * freedom.
 */
export const CHI_SQUARE_LOWER_TENTH = [
  { freedom: 2, point: 0.211 },
  { freedom: 4, point: 1.064 },
  { freedom: 6, point: 2.204 },
  { freedom: 8, point: 3.49 },
  { freedom: 10, point: 4.865 },
  { freedom: 12, point: 6.304 },
  { freedom: 16, point: 9.312 },
  { freedom: 20, point: 12.443 },
  { freedom: 30, point: 20.599 },
  { freedom: 50, point: 37.689 },
  { freedom: 80, point: 64.278 },
  { freedom: 100, point: 82.358 },
];
/** Half its last digit. */
export const CHI_SQUARE_WITHIN = 0.0005;

/** Smallest counts with a Poisson chance of at least 0.9, for means too large for that table. scipy.stats.poisson.ppf, 1.17.1. */
export const POISSON_NINE_IN_TEN = [
  { mean: 12, count: 17 },
  { mean: 36, count: 44 },
  { mean: 120, count: 134 },
  { mean: 840, count: 877 },
  { mean: 9000, count: 9122 },
];
