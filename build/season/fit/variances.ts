import { addTo, at, total } from "../numbers.ts";
import { isExact } from "../records.ts";
import type { FitInput, PastRecord } from "./fit-input.ts";
import { type Layout, lakeRows, placeOfLake, seasonRows, seasonsByRegion, slopesHeld } from "./layout.ts";
import type { Solution, SparseRows } from "./normal-equations.ts";

/** Variances and covariance of a season's effect `s` (days) and its slope `k` over early-to-late lakes. */
export interface SeasonCovariance {
  readonly ss: number;
  readonly sk: number;
  readonly kk: number;
}

export interface Variances {
  readonly omega: SeasonCovariance;
  /** Between lakes, after their places have been allowed for. */
  readonly tau2: number;
  /** Squared scale of each lake's error. */
  readonly sigma2: Float64Array;
}

/** Priors as scaled inverse chi-squares: weight in pseudo-observations and standard deviation in days. */
const SEASON = { weight: 4, sd: 8 };
const SLOPE = { sd: 0.5 };
const LAKE = { weight: 4, sd: 4 };
const ERROR = { weight: 6, sd: 2.5 };
/** Weight of the error common to all lakes in each lake's own. */
const COMMON_ERROR_WEIGHT = 8;
const LEAST_LAKE_VARIANCE = 0.25;
const LEAST_OWN_VARIANCE = 0.01;

/** Degrees of freedom of the season prior: pseudo-observations and seasons. */
export const seasonDf = ({ seasons }: Layout): number => SEASON.weight + Math.max(seasons - 1, 1);

/** Variances before any record. */
export const priorVariances = ({ lakes }: Layout): Variances => ({
  omega: { ss: SEASON.sd ** 2, sk: 0, kk: SLOPE.sd ** 2 },
  tau2: LAKE.sd ** 2,
  sigma2: new Float64Array(lakes).fill(ERROR.sd ** 2),
});

/** Mean of each row's square. */
function squaresOf(solution: Solution, rows: SparseRows): Float64Array {
  const means = solution.meansOf(rows);
  return solution.variancesOf(rows).map((variance, t) => variance + at(means, t) ** 2);
}

/** Season variances from the second moments of every season's effect and slope. */
function newOmega(layout: Layout, solution: Solution): SeasonCovariance {
  const apart = squaresOf(solution, seasonRows(layout, 0));
  const summed = squaresOf(solution, seasonRows(layout, 1));
  let [ss, sk, kk] = [SEASON.weight * SEASON.sd ** 2, 0, SEASON.weight * SLOPE.sd ** 2];
  for (let t = 0; t < apart.length; t += 2) {
    const [s2, k2] = [at(apart, t), at(apart, t + 1)];
    ss += s2;
    kk += k2;
    sk += (at(summed, t + 1) - s2 - k2) / 2;
  }
  const weight = SEASON.weight + layout.seasons;
  return { ss: ss / weight, sk: sk / weight, kk: kk / weight };
}

/**
 * Each lake's error variance, drawn towards that of all lakes. Left out is what says little of it: a record known only to an interval, and
 * a lake's only record, which cannot tell an error from the lake's own place.
 */
function newErrors(
  lakes: number,
  records: readonly PastRecord[],
  weights: Float64Array,
  squares: Float64Array,
): Float64Array {
  const counts = new Float64Array(lakes);
  for (const record of records) if (isExact(record)) addTo(counts, record.lake, 1);
  const sums = new Float64Array(lakes);
  let [all, n] = [0, 0];
  records.forEach((record, place) => {
    if (!isExact(record) || at(counts, record.lake) < 2) return;
    const square = at(weights, place) * at(squares, place);
    addTo(sums, record.lake, square);
    all += square;
    n++;
  });
  const common = (ERROR.weight * ERROR.sd ** 2 + all) / (ERROR.weight + n);
  return sums.map((sum, lake) => {
    const own = at(counts, lake) < 2 ? 0 : at(counts, lake);
    return (COMMON_ERROR_WEIGHT * common + sum) / (COMMON_ERROR_WEIGHT + own);
  });
}

/** The variances that the current effects speak for. @param weights and squared errors of the records */
export function newVariances(
  layout: Layout,
  solution: Solution,
  offsets: SparseRows,
  records: readonly PastRecord[],
  weights: Float64Array,
  squares: Float64Array,
): Variances {
  return {
    omega: newOmega(layout, solution),
    tau2: Math.max(
      LEAST_LAKE_VARIANCE,
      (LAKE.weight * LAKE.sd ** 2 + total(squaresOf(solution, offsets))) / (LAKE.weight + layout.lakes),
    ),
    sigma2: newErrors(layout.lakes, records, weights, squares),
  };
}

/**
 * Splits the doubt about the lakes' middles: the part that all lakes of a region share (mean covariance between two of them; the whole
 * of it for a lone lake), and each lake's own rest.
 */
export function splitDoubt(
  layout: Layout,
  input: FitInput,
  solution: Solution,
  x: Float64Array,
  slopeVariance: number,
): { shared: Float64Array; own: Float64Array } {
  const { regions } = input;
  const seasons = seasonsByRegion(input);
  const variances = solution.variancesOf(lakeRows(layout));
  const shared = Float64Array.from(new Set(regions), (region) => {
    const lakes = regions.flatMap((other, lake) => (other === region ? [lake] : []));
    const n = lakes.length;
    const ofSum = solution.varianceOfSum(lakes.map((lake) => placeOfLake(layout, lake)));
    if (n === 1) return ofSum;
    const own = lakes.reduce((sum, lake) => sum + at(variances, lake), 0);
    return Math.max(0, (ofSum - own) / (n * (n - 1)));
  });
  const own = variances.map((variance, lake) => {
    const region = regions[lake] ?? 0;
    // what holding the slopes has hidden: the mean of so many of them is not known to be zero
    const hidden = slopesHeld(layout)
      ? (at(x, lake) ** 2 * slopeVariance) / Math.max(1, seasons[region] ?? 1)
      : 0;
    return Math.max(LEAST_OWN_VARIANCE, variance - at(shared, region) + hidden);
  });
  return { shared, own };
}
