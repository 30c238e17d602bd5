import type { Fit } from "./fit.ts";
import { at, normalised } from "./numbers.ts";
import { tLogKernel } from "./student-t.ts";

/** Points over this season's effect `s` (days) and slope `k`, each with the log of its prior chance. */
export interface SeasonGrid {
  readonly s: Float64Array;
  readonly k: Float64Array;
  readonly logPrior: Float64Array;
  /** Distance of neighbouring points in `s`, days. */
  readonly stepS: number;
  readonly stepK: number;
  /** Scale of the prior of `s`, days: how far an early or a late spring usually lies from a middling one. */
  readonly scale: number;
}

export interface GridSize {
  readonly s: number;
  readonly k: number;
}
export const USUAL_GRID: GridSize = { s: 161, k: 15 };
const FINE_GRID: GridSize = { s: 81, k: 31 };

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
    stepS: (2 * REACH_S * scale) / (size.s - 1),
    stepK: (2 * REACH_K * sdK) / (size.k - 1),
    scale,
  };
}

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
  const effect = momentsOf(grid.s, weights);
  const slope = momentsOf(grid.k, weights);
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
    stepS: (2 * rangeS.half) / (FINE_GRID.s - 1),
    stepK: (2 * rangeK.half) / (FINE_GRID.k - 1),
    scale: grid.scale,
  };
}
