import jstat from "jstat";
import type { Catch, Report } from "../model/club.ts";
import { PHASES, type Phase } from "../model/phase.ts";
import type { LakeCatches } from "./flies-schema.ts";

/**
 * The value below which a gamma distribution lies with this chance; right to seven digits.
 * @param shape above 0
 * @param rate above 0, in the inverse of the value's unit
 */
export const gammaQuantile = (chance: number, shape: number, rate: number): number =>
  jstat.gamma.inv(chance, shape, 1 / rate);

/** The same of a beta distribution, both parameters above 0. */
export const betaQuantile = (chance: number, alpha: number, beta: number): number =>
  jstat.beta.inv(chance, alpha, beta);

/** Fish caught in some rod-hours. */
export interface Tally {
  readonly fish: number;
  readonly rodHours: number;
}

/** Catch per unit of effort with its exact 95 % interval, fish a rod-hour. */
interface CatchRate extends Tally {
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

/** A report and the phase it belongs to: null when nobody can tell. */
export interface PhasedReport {
  readonly report: Report;
  readonly phase: Phase | null;
}

/** One pattern fished on one lake on one day for a known time. */
export interface Outing extends Tally {
  readonly lake: string;
  readonly phase: Phase | null;
  readonly pattern: string;
}

/** Rod-hours of a whole visit; undefined when rods or hours are not told. */
const visitHours = ({ rods, hours }: Report): number | undefined =>
  rods === undefined || hours === undefined ? undefined : rods * hours;

/**
 * Each row of a report's catches with its rod-hours: those written, else an equal share of what the visit leaves to the rows
 * without; undefined when that is not known or nothing is left.
 */
export function catchesWithHours(
  report: Report,
): (Omit<Catch, "rodHours"> & { readonly rodHours: number | undefined })[] {
  const written = report.catches.reduce((sum, { rodHours }) => sum + (rodHours ?? 0), 0);
  const without = report.catches.filter(({ rodHours }) => rodHours === undefined).length;
  const visit = visitHours(report);
  const left = visit === undefined ? 0 : Math.max(0, visit - written);
  const share = without === 0 || left === 0 ? undefined : left / without;
  return report.catches.map((row) => ({ ...row, rodHours: row.rodHours ?? share }));
}

/** Every row of catches whose rod-hours are known, fish or none. */
export function outingsOf(reports: readonly PhasedReport[]): Outing[] {
  return reports.flatMap(({ report, phase }) =>
    catchesWithHours(report).flatMap(({ pattern, fish, rodHours }) =>
      rodHours === undefined || rodHours <= 0 ? [] : [{ lake: report.lake, phase, pattern, fish, rodHours }],
    ),
  );
}

/**
 * Fish and rod-hours of a whole visit. A report without a row of catches does not say that nothing was caught, and gives null; so does
 * one whose hours nobody knows. A visit that caught nothing says so with a row of 0 fish.
 */
export function visitTally(report: Report): Tally | null {
  if (report.catches.length === 0) return null;
  const fish = report.catches.reduce((sum, row) => sum + row.fish, 0);
  const rows = catchesWithHours(report);
  const written = pooled(rows.map((row) => ({ fish: row.fish, rodHours: row.rodHours ?? 0 })));
  const rodHours = Math.max(visitHours(report) ?? 0, written.rodHours);
  const allTimed = visitHours(report) !== undefined || rows.every((row) => row.rodHours !== undefined);
  return allTimed && rodHours > 0 ? { fish, rodHours } : null;
}

/**
 * Catch per rod-hour of one lake, in all and phase by phase.
 * @param reports of the lake
 * @param isThisSeason whether a report is of the season in progress
 */
export function lakeCatches(
  reports: readonly PhasedReport[],
  isThisSeason: (report: PhasedReport["report"]) => boolean,
): LakeCatches {
  const visits = reports.flatMap(({ report, phase }) => {
    const tally = visitTally(report);
    return tally === null ? [] : [{ ...tally, phase, isThisSeason: isThisSeason(report) }];
  });
  return {
    season: catchRate(pooled(visits.filter((visit) => visit.isThisSeason))),
    all: catchRate(pooled(visits)),
    phases: PHASES.flatMap((phase) => {
      const rate = catchRate(pooled(visits.filter((visit) => visit.phase === phase)));
      return rate === null ? [] : [{ phase, rate }];
    }),
  };
}
