import { gammaQuantile } from "./catch-rates-quantiles.ts";

/** Fish caught in some rod-hours. */
export interface Tally {
  readonly fish: number;
  readonly rodHours: number;
}

/** Catch per unit of effort with its exact 95 % interval, fish a rod-hour. */
export interface CatchRate extends Tally {
  readonly mean: number;
  readonly low: number;
  readonly high: number;
}

const NO_TALLY: Tally = { fish: 0, rodHours: 0 };

/** The sum of several tallies. */
export const pooled = (tallies: readonly Tally[]): Tally =>
  tallies.reduce(
    (sum, { fish, rodHours }) => ({ fish: sum.fish + fish, rodHours: sum.rodHours + rodHours }),
    NO_TALLY,
  );

/** What two-sided 95 % leaves on each side. */
const TAIL = 0.025;

/**
 * Exact interval for the mean of a Poisson count: chi-square quantiles, here as gamma ones. Nothing caught still has an upper bound.
 * @param count whole, 0 or more
 * @source Garwood (1936), Biometrika 28:437–442
 */
export const poissonInterval = (count: number): { readonly low: number; readonly high: number } => ({
  low: count === 0 ? 0 : gammaQuantile(TAIL, count, 1),
  high: gammaQuantile(1 - TAIL, count + 1, 1),
});

/** Finer than any of this is known, and coarser than the rounding that the order of adding leaves. */
const DIGITS = 6;
const kept = (value: number): number => Number(value.toFixed(DIGITS));

/**
 * Fish a rod-hour: the ratio of the totals, so that a long day counts for more than a short one (a mean of the days' ratios would
 * not). Fish are taken to come one by one; where they come in bursts the interval is too narrow.
 * @returns null when nobody fished for a known time
 */
export function catchRate({ fish, rodHours }: Tally): CatchRate | null {
  if (rodHours <= 0) return null;
  const { low, high } = poissonInterval(fish);
  return {
    fish,
    rodHours: kept(rodHours),
    mean: kept(fish / rodHours),
    low: kept(low / rodHours),
    high: kept(high / rodHours),
  };
}

/**
 * Mean of a rate after some fish in some rod-hours, when before them it was gamma distributed.
 * @param prior mean in fish a rod-hour, and its weight in rod-hours
 * @source conjugate closed form (shape + fish) / (rate + rod-hours); Gelman et al., Bayesian Data Analysis
 */
export const shrunkenRate = (
  prior: { readonly mean: number; readonly rodHours: number },
  { fish, rodHours }: Tally,
): number => (prior.mean * prior.rodHours + fish) / (prior.rodHours + rodHours);
