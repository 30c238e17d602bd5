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

/** Student t with 4 degrees of freedom, upper 2.5 %. scipy. */
export const T4_QUANTILE = { p: 0.975, z: 2.776445 };
