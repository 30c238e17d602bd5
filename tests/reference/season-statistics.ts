/** Published or independently computed values for scores, sums of distributions and quantiles. */

/** CRPS of a normal forecast. Gneiting et al. (2005) closed form; quadrature of the definition agrees. */
export const CRPS_OF_NORMAL = [
  { mean: 0, sd: 1, observed: 0, crps: 0.23369498 },
  { mean: 0, sd: 1, observed: 1, crps: 0.60244136 },
  { mean: 0, sd: 1, observed: 2, crps: 1.45279182 },
  { mean: 110, sd: 6, observed: 125, crps: 11.63891214 },
];

/** CRPS of five equally likely days, in its fair form mean|x - y| - sum|xi - xj| / (2 n (n - 1)). By definition. */
export const FAIR_CRPS_OF_ENSEMBLE = { members: [100, 104, 107, 111, 118], observed: 105, fair: 1.1 };

/** cdf of N(110, 6^2) + U(-5, 9). Closed form s / (b - a) (G(z1) - G(z2)), G(z) = z Phi + phi; quadrature agrees. */
export const CDF_OF_NORMAL_PLUS_UNIFORM = [
  { x: 100, cdf: 0.0484694431 },
  { x: 105, cdf: 0.1695526392 },
  { x: 110, cdf: 0.3931420418 },
  { x: 120, cdf: 0.8632287638 },
  { x: 125, cdf: 0.9643414031 },
  { x: 130, cdf: 0.9943782016 },
];

/** cdf of N(110, 6^2) + U(-5, 9) + U(0, 4). Closed form, second difference of ((z^2 + 1) Phi + z phi) / 2; nested quadrature agrees. */
export const CDF_OF_NORMAL_PLUS_TWO_UNIFORMS = [
  { x: 105, cdf: 0.1113388061 },
  { x: 110, cdf: 0.295617559 },
];

/** Quantiles of the same sum. Roots of the closed form. */
export const QUANTILES_OF_NORMAL_PLUS_TWO_UNIFORMS = [
  { p: 0.1, x: 104.551594 },
  { p: 0.5, x: 114 },
  { p: 0.9, x: 123.448406 },
];

/** Student t with 4 degrees of freedom, upper 2.5 %. scipy. */
export const T4_QUANTILE = { p: 0.975, z: 2.776445 };
