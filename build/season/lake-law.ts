import type { Fit } from "./fit.ts";
import { type DaySpan, type LakeEvidence, stepsOf } from "./lake-evidence.ts";
import { addTo, at } from "./numbers.ts";
import type { SeasonGrid } from "./season-grid.ts";
import { t4Cdf, t4PartialMean } from "./student-t.ts";

/** What the fit says of one lake: ice-off about `m + s + x k`, with t errors of this scale. */
export interface LakeLaw {
  readonly m: number;
  readonly x: number;
  readonly scale: number;
}

export const lawOf = (fit: Fit, lake: number): LakeLaw => ({
  m: at(fit.m, lake),
  x: at(fit.x, lake),
  scale: Math.hypot(at(fit.sigma, lake), Math.sqrt(at(fit.v, lake))),
});

/** Middle of the lake's ice-off at each point of the grid. */
export function middlesOf({ m, x }: LakeLaw, grid: SeasonGrid): Float64Array {
  const middles = new Float64Array(grid.s.length);
  for (let p = 0; p < middles.length; p++) middles[p] = m + at(grid.s, p) + x * at(grid.k, p);
  return middles;
}

/** Farthest an ice-off is looked for beyond the grid: so many scales, and never more than so many days. */
const TAIL_SCALES = 20;
const LONGEST_TAIL_DAYS = 60;

const tailOf = ({ scale }: LakeLaw): number => Math.ceil(Math.min(TAIL_SCALES * scale, LONGEST_TAIL_DAYS));

/** Every day on which a lake may open, given the season's grid. */
export function spanOf(law: LakeLaw, grid: SeasonGrid): DaySpan {
  const middles = middlesOf(law, grid);
  let [earliest, latest] = [law.m, law.m];
  for (let p = 0; p < middles.length; p++) {
    earliest = Math.min(earliest, at(middles, p));
    latest = Math.max(latest, at(middles, p));
  }
  return { from: Math.floor(earliest) - tailOf(law), to: Math.ceil(latest) + tailOf(law) };
}

/** Smallest chance whose log is still taken. */
const TINY = 1e-300;

/** Chance of a lake's evidence at each point of the grid: its integral over the lake's t law, in closed form. */
export function chanceOnGrid(evidence: LakeEvidence, law: LakeLaw, grid: SeasonGrid): Float64Array {
  const { edges, falls, last } = stepsOf(evidence);
  const chances = middlesOf(law, grid);
  for (let p = 0; p < chances.length; p++) {
    const middle = at(chances, p);
    let chance = last;
    for (let e = 0; e < edges.length; e++)
      chance += at(falls, e) * t4Cdf((at(edges, e) - middle) / law.scale);
    chances[p] = Math.max(chance, TINY);
  }
  return chances;
}

/** The same chance times the mean ice-off day given the evidence. Without evidence: the middle of the lake's ice-off. */
export function momentOnGrid(
  evidence: LakeEvidence | undefined,
  law: LakeLaw,
  grid: SeasonGrid,
): Float64Array {
  const middles = middlesOf(law, grid);
  if (evidence === undefined) return middles;
  const { edges, falls, last } = stepsOf(evidence);
  return middles.map((middle) => {
    let moment = last * middle;
    for (let e = 0; e < edges.length; e++) {
      const z = (at(edges, e) - middle) / law.scale;
      moment += at(falls, e) * (middle * t4Cdf(z) + law.scale * t4PartialMean(z));
    }
    return moment;
  });
}

/** Bins to a day when the season's points are gathered along one lake's day scale. */
const BINS_PER_DAY = 8;
/** Bins with less of the season than this are passed over. */
const NEGLIGIBLE = 1e-9;

/** A lake's day-by-day chance of opening under weighted seasons, before its own evidence. */
export function dayChances(
  law: LakeLaw,
  grid: SeasonGrid,
  weights: Float64Array,
  span: DaySpan,
): Float64Array {
  const middles = middlesOf(law, grid);
  const days = span.to - span.from + 1;
  const bins = new Float64Array(days * BINS_PER_DAY + 2);
  for (let p = 0; p < middles.length; p++) {
    const place = (at(middles, p) - span.from) * BINS_PER_DAY;
    const bin = Math.floor(place);
    addTo(bins, bin, at(weights, p) * (1 - (place - bin)));
    addTo(bins, bin + 1, at(weights, p) * (place - bin));
  }
  // the chance of a day depends on its distance from the bin alone: one table serves them all
  const tail = tailOf(law);
  const table = new Float64Array((2 * tail + 1) * BINS_PER_DAY + 1);
  for (let i = 0; i < table.length; i++) {
    const distance = i / BINS_PER_DAY - tail;
    table[i] = t4Cdf((distance + 0.5) / law.scale) - t4Cdf((distance - 0.5) / law.scale);
  }
  const chances = new Float64Array(days);
  for (let bin = 0; bin < bins.length; bin++) {
    const weight = at(bins, bin);
    if (weight < NEGLIGIBLE) continue;
    const first = Math.max(0, Math.ceil(bin / BINS_PER_DAY) - tail);
    const last = Math.min(days - 1, Math.floor(bin / BINS_PER_DAY) + tail);
    const place = tail * BINS_PER_DAY - bin;
    for (let d = first; d <= last; d++) addTo(chances, d, weight * at(table, place + d * BINS_PER_DAY));
  }
  return chances;
}
