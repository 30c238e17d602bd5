import type { Fit } from "./fit/fit-past-seasons.ts";
import { type DaySpan, type LakeEvidence, type Steps, stepsOf } from "./lake-evidence.ts";
import { addTo, at, wholeAt } from "./numbers.ts";
import type { SeasonGrid } from "./season-grid.ts";
import { t4Cdf, t4PartialMean } from "./student-t.ts";

/** Ice-off of one lake: Student t with 4 degrees of freedom about `m + s + x k`, its scale `sqrt((u sigma)^2 + variance)`. */
export interface LakeDistribution {
  readonly m: number;
  readonly x: number;
  /** Scale of the lake's own error, days. */
  readonly sigma: number;
  /** Variance of `m`, days squared. */
  readonly variance: number;
}

export const lakeDistribution = (fit: Fit, lake: number): LakeDistribution => ({
  m: at(fit.m, lake),
  x: at(fit.x, lake),
  sigma: at(fit.sigma, lake),
  variance: at(fit.v, lake),
});

/** Scale of the lake's ice-off in a season of scatter `u`, days. */
export const scaleOf = ({ sigma, variance }: LakeDistribution, u: number): number =>
  Math.sqrt((u * sigma) ** 2 + variance);

/** Middle of the lake's ice-off at each point of the grid. */
export function middlesOf({ m, x }: LakeDistribution, grid: SeasonGrid): Float64Array {
  const middles = new Float64Array(grid.s.length);
  for (let p = 0; p < middles.length; p++) middles[p] = m + at(grid.s, p) + x * at(grid.k, p);
  return middles;
}

/** Tails are followed for so many scales, and never for more than so many days. */
const TAIL_SCALES = 20;
const LONGEST_TAIL_DAYS = 60;

const tailOf = (scale: number): number => Math.ceil(Math.min(TAIL_SCALES * scale, LONGEST_TAIL_DAYS));

/** Every day on which a lake may open, given the season's grid. */
export function spanOf(distribution: LakeDistribution, grid: SeasonGrid): DaySpan {
  const middles = middlesOf(distribution, grid);
  let [earliest, latest] = [distribution.m, distribution.m];
  for (let p = 0; p < middles.length; p++) {
    earliest = Math.min(earliest, at(middles, p));
    latest = Math.max(latest, at(middles, p));
  }
  const tail = tailOf(scaleOf(distribution, Math.max(...grid.scatter)));
  return { from: Math.floor(earliest) - tail, to: Math.ceil(latest) + tail };
}

/** Middles are tabulated in quarter days, and read off linearly between. */
const PER_DAY = 4;
const HALF_DAY = 0.5;

/** A function of the middle of a lake's ice-off, at quarter days from `from` on: one row for each scatter of the grid. */
export interface MiddleTable {
  readonly from: number;
  readonly rows: readonly Float64Array[];
}

/** Whole days about the middles of a grid. */
function rangeOf(distribution: LakeDistribution, grid: SeasonGrid): DaySpan {
  const middles = middlesOf(distribution, grid);
  let [from, to] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let p = 0; p < middles.length; p++) {
    from = Math.min(from, at(middles, p));
    to = Math.max(to, at(middles, p));
  }
  return { from: Math.floor(from), to: Math.ceil(to) + 1 };
}

/** Smallest chance whose log is still taken. */
const TINY = 1e-300;

/** Sums evidence's falls times a function of the distance `z`, in scales, from the middle to each edge, for every middle in a range. */
function overMiddles(
  { edges, falls }: Steps,
  { from, to }: DaySpan,
  scale: number,
  value: (z: number) => number,
): Float64Array {
  const sums = new Float64Array((to - from) * PER_DAY + 1);
  if (edges.length === 0) return sums;
  // every distance is a whole number of quarter days: one run of values serves all
  const nearest = (at(edges, 0) - to) * PER_DAY;
  const values = new Float64Array((at(edges, edges.length - 1) - from) * PER_DAY - nearest + 1);
  for (let i = 0; i < values.length; i++) values[i] = value((nearest + i) / PER_DAY / scale);
  const places = Int32Array.from(edges, (edge) => (edge - from) * PER_DAY - nearest);
  for (let i = 0; i < sums.length; i++) {
    let sum = 0;
    for (let e = 0; e < places.length; e++) sum += at(falls, e) * at(values, wholeAt(places, e) - i);
    sums[i] = sum;
  }
  return sums;
}

/** Chance of a lake's evidence by the middle of its ice-off, over the middles of a grid. */
function chanceTable(evidence: LakeEvidence, distribution: LakeDistribution, grid: SeasonGrid): MiddleTable {
  const range = rangeOf(distribution, grid);
  const steps = stepsOf(evidence);
  const rows = Array.from(grid.scatter, (u) => {
    const chances = overMiddles(steps, range, scaleOf(distribution, u), t4Cdf);
    for (let i = 0; i < chances.length; i++) chances[i] = at(chances, i) + steps.last;
    return chances;
  });
  return { from: range.from, rows };
}

/** Log chance of a lake's evidence by the middle of its ice-off, over the middles of a grid. */
export function logChanceTable(
  evidence: LakeEvidence,
  distribution: LakeDistribution,
  grid: SeasonGrid,
): MiddleTable {
  const table = chanceTable(evidence, distribution, grid);
  for (const row of table.rows)
    for (let i = 0; i < row.length; i++) row[i] = Math.log(Math.max(at(row, i), TINY));
  return table;
}

/** Chance of a lake's evidence times the mean ice-off day it leaves, by the middle of its ice-off. */
export function momentTable(
  evidence: LakeEvidence,
  distribution: LakeDistribution,
  grid: SeasonGrid,
): MiddleTable {
  const { from, rows } = chanceTable(evidence, distribution, grid);
  const range = rangeOf(distribution, grid);
  const steps = stepsOf(evidence);
  return {
    from,
    rows: rows.map((chances, j) => {
      const scale = scaleOf(distribution, at(grid.scatter, j));
      const moments = overMiddles(steps, range, scale, t4PartialMean);
      return moments.map((moment, i) => (from + i / PER_DAY) * at(chances, i) + scale * moment);
    }),
  };
}

/** Adds `weight` times a table's value at every point of the grid, scatter by scatter. */
export function addTableOnGrid(
  sums: Float64Array,
  table: MiddleTable,
  middles: Float64Array,
  weight: number,
): void {
  const points = middles.length;
  table.rows.forEach((row, j) => {
    for (let p = 0; p < points; p++) {
      const place = (at(middles, p) - table.from) * PER_DAY;
      const i = Math.min(Math.max(Math.floor(place), 0), row.length - 2);
      const part = place - i;
      addTo(sums, j * points + p, weight * (at(row, i) * (1 - part) + at(row, i + 1) * part));
    }
  });
}

/** Bins to a day when the season's points are gathered along one lake's day scale. */
const BINS_PER_DAY = 3;
/** Bins with less of the season than this are passed over. */
const NEGLIGIBLE = 1e-9;

/** Spreads a weight over the four bins about a place so that any cubic of the place is summed exactly (Lagrange). */
function addToBins(bins: Float64Array, place: number, weight: number): void {
  const bin = Math.floor(place);
  const t = place - bin;
  addTo(bins, bin - 1, (-weight * t * (1 - t) * (2 - t)) / 6);
  addTo(bins, bin, (weight * (1 - t * t) * (2 - t)) / 2);
  addTo(bins, bin + 1, (weight * t * (1 + t) * (2 - t)) / 2);
  addTo(bins, bin + 2, (-weight * t * (1 - t * t)) / 6);
}

/** A lake's day-by-day chance of opening under weighted seasons, before its own evidence. */
export function dayChances(
  distribution: LakeDistribution,
  grid: SeasonGrid,
  weights: Float64Array,
  span: DaySpan,
): Float64Array {
  const middles = middlesOf(distribution, grid);
  const days = span.to - span.from + 1;
  const chances = new Float64Array(days);
  grid.scatter.forEach((u, j) => {
    const bins = new Float64Array(days * BINS_PER_DAY + 3);
    for (let p = 0; p < middles.length; p++)
      addToBins(bins, (at(middles, p) - span.from) * BINS_PER_DAY, at(weights, j * middles.length + p));
    addSmoothed(chances, bins, scaleOf(distribution, u));
  });
  return chances;
}

/** Spreads each bin's weight over the days about it by the t law. A day's share depends on its distance from the bin alone: one table serves all. */
function addSmoothed(chances: Float64Array, bins: Float64Array, scale: number): void {
  const tail = tailOf(scale);
  const reach = tail * BINS_PER_DAY;
  const table = new Float64Array(2 * reach + 1);
  for (let i = 0; i <= reach; i++) {
    const distance = tail - i / BINS_PER_DAY;
    table[i] = t4Cdf((HALF_DAY - distance) / scale) - t4Cdf((-HALF_DAY - distance) / scale);
    table[2 * reach - i] = at(table, i);
  }
  let [first, last] = [0, bins.length - 1];
  while (first < last && Math.abs(at(bins, first)) < NEGLIGIBLE) first++;
  while (last > first && Math.abs(at(bins, last)) < NEGLIGIBLE) last--;
  for (let d = 0; d < chances.length; d++) {
    const place = d * BINS_PER_DAY;
    const to = Math.min(last, place + reach);
    let sum = 0;
    for (let bin = Math.max(first, place - reach); bin <= to; bin++)
      sum += at(bins, bin) * at(table, bin - place + reach);
    // between the bins of a far tail the cubic may swing a hair below zero
    addTo(chances, d, Math.max(0, sum));
  }
}

/** For each scatter, the chance that ice-off falls on a day so far from the middle, at quarter days up to `days` on either side. */
export const dayKernels = (
  distribution: LakeDistribution,
  scatter: Float64Array,
  days: number,
): MiddleTable["rows"] =>
  Array.from(scatter, (u) => {
    const scale = scaleOf(distribution, u);
    return Float64Array.from({ length: 2 * days * PER_DAY + 1 }, (_, i) => {
      const distance = i / PER_DAY - days;
      return t4Cdf((distance + HALF_DAY) / scale) - t4Cdf((distance - HALF_DAY) / scale);
    });
  });
