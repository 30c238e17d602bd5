/** Exact 95 % Poisson intervals, Garwood (1936): chi-square closed form. */
export const GARWOOD = [
  { count: 0, low: 0, high: 3.6889 },
  { count: 1, low: 0.0253, high: 5.5716 },
  { count: 10, low: 4.7954, high: 18.3904 },
];

/** Gamma quantiles 0.05 and 0.95, scipy 1.x `gamma.ppf`. */
export const GAMMA_QUANTILES = [
  { shape: 0.8, rate: 4.1, low: 0.00534, high: 0.63296 },
  { shape: 1.5, rate: 3, low: 0.05864, high: 1.30245 },
  { shape: 13, rate: 6, low: 1.2816, high: 3.24043 },
];

/** Beta quantiles, scipy 1.17.1 `beta.ppf`. */
export const BETA_QUANTILES = [
  { chance: 0.9, alpha: 0.05, beta: 5, value: 0.016688464471655326 },
  { chance: 0.1, alpha: 20, beta: 3, value: 0.7757760609265911 },
  { chance: 0.1, alpha: 19.045, beta: 5.455, value: 0.6664151056363032 },
  { chance: 0.1, alpha: 0.545, beta: 23.9, value: 0.0005010684834925939 },
  { chance: 0.9, alpha: 0.545, beta: 23.9, value: 0.05932271679650751 },
  { chance: 0.9, alpha: 300, beta: 20, value: 0.954139716792564 },
];

/** Posterior means of a catch rate, conjugate closed form (Gelman et al., Bayesian Data Analysis): shape a, rate b rod-hours. */
export const POSTERIOR_RATES = [
  { shape: 2, rate: 4, fish: 3, rodHours: 5, mean: 0.555556 },
  { shape: 0.8, rate: 1.6, fish: 0, rodHours: 2.5, mean: 0.195122 },
  { shape: 0.8, rate: 1.6, fish: 7, rodHours: 12, mean: 0.573529 },
];

/**
 * Car insurance claims in a year, expected after x claims: the gamma model of Efron & Hastie, Computer Age Statistical Inference, table
 * 6.1, with nu = 0.7015 and sigma = 0.3056 (fitted by maximum likelihood with scipy). Printed row as remembered; good to 0.002.
 */
export const AUTO_CLAIMS = {
  nu: 0.7015,
  sigma: 0.3056,
  expected: [
    { claims: 1, mean: 0.398 },
    { claims: 2, mean: 0.632 },
    { claims: 3, mean: 0.866 },
    { claims: 4, mean: 1.1 },
    { claims: 6, mean: 1.568 },
  ],
};

/** Eight sites; the pooled rate by arithmetic. The mean of the eight ratios is another estimator: 0.444792. */
export const EIGHT_SITES = {
  fish: [0, 2, 5, 1, 9, 3, 0, 4],
  rodHours: [3, 4, 6, 5, 8, 6, 2, 10],
  pooled: 0.545455,
};

/**
 * Twenty fish with food, constructed. The percentages, IRI and its share by exact arithmetic on the definition of Pinkas, Oliphant &
 * Iverson (1971), with volume; share after Cortés (1997).
 */
export const CONSTRUCTED_DIET = {
  fishWithFood: 20,
  foods: [
    { food: "chironomid pupae", count: 420, amount: 6.3, fish: 16 },
    { food: "chironomid larvae", count: 150, amount: 3, fish: 11 },
    { food: "damselfly nymphs", count: 36, amount: 5.4, fish: 9 },
    { food: "scuds", count: 88, amount: 4.4, fish: 8 },
    { food: "leeches", count: 5, amount: 3.5, fish: 4 },
    { food: "daphnia", count: 900, amount: 1.8, fish: 3 },
    { food: "caddis", count: 9, amount: 1.6, fish: 5 },
  ],
  expected: [
    { food: "chironomid larvae", N: 9.3284, V: 11.5385, F: 55, iri: 1147.675, iriPct: 13.512 },
    { food: "damselfly nymphs", N: 2.2388, V: 20.7692, F: 45, iri: 1035.362, iriPct: 12.19 },
    { food: "daphnia", N: 55.9701, V: 6.9231, F: 15, iri: 943.398, iriPct: 11.107 },
    { food: "caddis", N: 0.5597, V: 6.1538, F: 25, iri: 167.839, iriPct: 1.976 },
  ],
  sum: 8493.566,
  byImportance: [
    "chironomid pupae",
    "chironomid larvae",
    "damselfly nymphs",
    "daphnia",
    "scuds",
    "leeches",
    "caddis",
  ],
  /** Pupae and larvae as one food, in 18 fish: not the sum of the two, 5175.689. */
  lumped: { count: 570, amount: 9.3, fish: 18, iri: 6409.529 },
};
