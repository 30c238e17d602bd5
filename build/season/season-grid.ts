import type { Fit } from "./fit/fit-past-seasons.ts";
import { addTo, at, normalised, total } from "./numbers.ts";
import { tLogKernel } from "./student-t.ts";

/**
 * Points over this season's effect `s` (days) and slope `k`, each with the log of its prior chance, and beside them the season's scatter
 * `u`: how uneven the lakes run, as a factor on their scales. Weights over the whole grid are flat, one run of points for each scatter.
 */
export interface SeasonGrid {
  readonly s: Float64Array;
  readonly k: Float64Array;
  readonly logPrior: Float64Array;
  readonly scatter: Float64Array;
  readonly logScatterPrior: Float64Array;
  /** Distance of neighbouring points in `s`, days. */
  readonly stepS: number;
  readonly stepK: number;
  /** Scale of the prior of `s`, days: how far an early or a late spring usually lies from a middling one. */
  readonly scale: number;
}

/** Standard deviation of the log of a season's scatter. Chosen on six sets of open records; 0.4 and 0.5 scored worse. */
const LOG_SCATTER_SD = 0.3;
/** Scatter is taken at so many standard deviations. */
const SCATTER_STEPS = [-2, -1, 0, 1, 2];

export interface GridSize {
  readonly s: number;
  readonly k: number;
  /** Standard deviations of the log scatter at which it is taken. */
  readonly scatter: readonly number[];
}
export const USUAL_GRID: GridSize = { s: 161, k: 15, scatter: SCATTER_STEPS };
const FINE_GRID = { s: 41, k: 21 };

/** Sums over a grid are exact to a few thousandths while a step is at most 1 / 0.6 standard deviations of a normal shape (Poisson summation). */
const FINE_ENOUGH = 0.6;

/** Half width of the grid: standard deviations of the season, and of the slope given the season. */
const REACH_S = 6;
const REACH_K = 3.5;

interface Range {
  readonly middle: number;
  readonly half: number;
}

const spaced = ({ middle, half }: Range, points: number): number[] =>
  Array.from({ length: points }, (_, i) => middle + half * ((2 * i) / (points - 1) - 1));

/** Prior of the season: `s` is t-shaped, as wide as past seasons and the doubt about the level together; `k` is normal given `s`. */
function priorOf(fit: Fit, region: number) {
  const { ss, sk, kk } = fit.omega;
  const scale = Math.sqrt(ss + at(fit.shared, region));
  const slope = sk / ss;
  const sdK = Math.sqrt(kk - slope * sk);
  const logPrior = (s: number, k: number): number =>
    tLogKernel(s / scale, fit.seasonDf) - ((k - slope * s) / sdK) ** 2 / 2;
  return { scale, slope, sdK, logPrior };
}

/** The grid over the whole prior: `s` within 6 scales, `k` within 3.5 conditional standard deviations. */
export function priorGrid(fit: Fit, region: number, size: GridSize = USUAL_GRID): SeasonGrid {
  const { scale, slope, sdK, logPrior } = priorOf(fit, region);
  const s: number[] = [];
  const k: number[] = [];
  for (const effect of spaced({ middle: 0, half: REACH_S * scale }, size.s))
    for (const z of spaced({ middle: 0, half: REACH_K * sdK }, size.k)) {
      s.push(effect);
      k.push(slope * effect + z);
    }
  return {
    s: Float64Array.from(s),
    k: Float64Array.from(k),
    logPrior: Float64Array.from(s, (effect, i) => logPrior(effect, k[i] ?? 0)),
    scatter: Float64Array.from(size.scatter, (z) => Math.exp(LOG_SCATTER_SD * z)),
    logScatterPrior: Float64Array.from(size.scatter, (z) => -(z * z) / 2),
    stepS: (2 * REACH_S * scale) / (size.s - 1),
    stepK: (2 * REACH_K * sdK) / (size.k - 1),
    scale,
  };
}

/** Log of each point's prior chance, over all scatters. */
export function logPriorOf({ logPrior, logScatterPrior }: SeasonGrid): Float64Array {
  const logs = new Float64Array(logPrior.length * logScatterPrior.length);
  logScatterPrior.forEach((log, j) => {
    for (let p = 0; p < logPrior.length; p++) logs[j * logPrior.length + p] = log + at(logPrior, p);
  });
  return logs;
}

/** Chance of each point of season and slope, whatever the scatter. */
export function overScatter({ s }: SeasonGrid, weights: Float64Array): Float64Array {
  const sums = new Float64Array(s.length);
  for (let start = 0; start < weights.length; start += s.length)
    for (let p = 0; p < s.length; p++) addTo(sums, p, at(weights, start + p));
  return sums;
}

/** Chance of each scatter. */
export const scatterChances = ({ s, scatter }: SeasonGrid, weights: Float64Array): Float64Array =>
  scatter.map((_, j) => total(weights.subarray(j * s.length, (j + 1) * s.length)));

/** Chances from their logs, summing to 1. */
export function weightsOf(logWeights: Float64Array): Float64Array {
  let best = Number.NEGATIVE_INFINITY;
  for (let p = 0; p < logWeights.length; p++) best = Math.max(best, at(logWeights, p));
  const weights = new Float64Array(logWeights.length);
  for (let p = 0; p < weights.length; p++) weights[p] = Math.exp(at(logWeights, p) - best);
  return normalised(weights);
}

/** Mean and standard deviation of values under chances that sum to 1. */
export function momentsOf(values: Float64Array, weights: Float64Array): { mean: number; sd: number } {
  let mean = 0;
  for (let i = 0; i < values.length; i++) mean += at(weights, i) * at(values, i);
  let variance = 0;
  for (let i = 0; i < values.length; i++) variance += at(weights, i) * (at(values, i) - mean) ** 2;
  return { mean, sd: Math.sqrt(variance) };
}

/**
 * A finer grid about what the evidence left over, or `undefined` where the given grid is already fine enough: with hundreds of lakes
 * reported the season is known to a fraction of a step.
 */
export function refinedGrid(
  grid: SeasonGrid,
  weights: Float64Array,
  fit: Fit,
  region: number,
): SeasonGrid | undefined {
  const margin = overScatter(grid, weights);
  const effect = momentsOf(grid.s, margin);
  const slope = momentsOf(grid.k, margin);
  if (effect.sd > FINE_ENOUGH * grid.stepS && slope.sd > FINE_ENOUGH * grid.stepK) return undefined;
  const { logPrior } = priorOf(fit, region);
  const rangeS = { middle: effect.mean, half: REACH_S * Math.max(effect.sd, grid.stepS / 2) };
  const rangeK = { middle: slope.mean, half: REACH_S * Math.max(slope.sd, grid.stepK / 2) };
  const points = spaced(rangeS, FINE_GRID.s).flatMap((s) =>
    spaced(rangeK, FINE_GRID.k).map((k) => ({ s, k })),
  );
  return {
    s: Float64Array.from(points, ({ s }) => s),
    k: Float64Array.from(points, ({ k }) => k),
    logPrior: Float64Array.from(points, ({ s, k }) => logPrior(s, k)),
    scatter: grid.scatter,
    logScatterPrior: grid.logScatterPrior,
    stepS: (2 * rangeS.half) / (FINE_GRID.s - 1),
    stepK: (2 * rangeK.half) / (FINE_GRID.k - 1),
    scale: grid.scale,
  };
}
