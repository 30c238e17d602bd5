import type { Fit } from "./fit.ts";
import { type DaySpan, type LakeEvidence, stepsOf } from "./lake-evidence.ts";
import { addTo, at } from "./numbers.ts";
import {
  type GridSize,
  priorGrid,
  refinedGrid,
  type SeasonGrid,
  USUAL_GRID,
  weightsOf,
} from "./season-grid.ts";
import { t4Cdf } from "./student-t.ts";

/**
 * Weight of one lake's evidence in the shared season: neighbouring lakes err together, so that each counts for less than one.
 * Measured on open ice-off records by leaving seasons out.
 */
export const SHARED_WEIGHT = 0.6;

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
export const middlesOf = ({ m, x }: LakeLaw, grid: SeasonGrid): Float64Array =>
  grid.s.map((s, i) => m + s + x * at(grid.k, i));

/** Farthest an ice-off is looked for beyond the grid: so many scales, and never more than so many days. */
const TAIL_SCALES = 20;
const LONGEST_TAIL_DAYS = 60;

/** Every day on which a lake may open, given the season's grid. */
export function spanOf(law: LakeLaw, grid: SeasonGrid): DaySpan {
  const middles = middlesOf(law, grid);
  const tail = Math.min(TAIL_SCALES * law.scale, LONGEST_TAIL_DAYS);
  return {
    from: Math.floor(middles.reduce((a, b) => Math.min(a, b)) - tail),
    to: Math.ceil(middles.reduce((a, b) => Math.max(a, b)) + tail),
  };
}

/** Chance of a lake's evidence at each point of the grid, and that chance times the mean ice-off day given it. */
export interface OnGrid {
  readonly chance: Float64Array;
  readonly chanceTimesDay: Float64Array;
}

/** Smallest chance whose log is still taken. */
const TINY = 1e-300;

/** Integrates the evidence over the lake's t law in closed form, at every point of the grid. */
export function evidenceOnGrid(evidence: LakeEvidence, law: LakeLaw, grid: SeasonGrid): OnGrid {
  const { edges, falls, last } = stepsOf(evidence);
  const middles = middlesOf(law, grid);
  const chance = new Float64Array(middles.length);
  const chanceTimesDay = new Float64Array(middles.length);
  for (let p = 0; p < middles.length; p++) {
    const middle = at(middles, p);
    let sum = last;
    let moment = last * middle;
    for (let e = 0; e < edges.length; e++) {
      const z = (at(edges, e) - middle) / law.scale;
      const before = t4Cdf(z);
      const fall = at(falls, e);
      sum += fall * before;
      // the integral of z times the t density with 4 degrees of freedom is -(1 + z^2/4)^(-3/2) / 2
      moment += fall * (middle * before - (law.scale / 2) * (1 + (z * z) / 4) ** -1.5);
    }
    chance[p] = Math.max(sum, TINY);
    chanceTimesDay[p] = moment;
  }
  return { chance, chanceTimesDay };
}

/** Bins to a day when the season's points are gathered along one lake's day scale. */
const BINS_PER_DAY = 8;

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
    const part = place - bin;
    addTo(bins, bin, at(weights, p) * (1 - part));
    addTo(bins, bin + 1, at(weights, p) * part);
  }
  const reach = days * BINS_PER_DAY;
  const cdf = Float64Array.from({ length: 2 * reach + 1 }, (_, i) =>
    t4Cdf((i - reach) / BINS_PER_DAY / law.scale),
  );
  const below = new Float64Array(days + 1);
  for (let bin = 0; bin < bins.length; bin++) {
    const weight = at(bins, bin);
    if (weight < 1e-12) continue;
    // the beginning of day d lies d - 0.5 days after the span's first day
    const first = reach - bin - BINS_PER_DAY / 2;
    for (let d = 0; d <= days; d++) {
      const place = first + d * BINS_PER_DAY;
      addTo(below, d, weight * (place < 0 ? 0 : place > 2 * reach ? 1 : at(cdf, place)));
    }
  }
  return Float64Array.from({ length: days }, (_, d) => Math.max(0, at(below, d + 1) - at(below, d)));
}

/** The season after all evidence of one region, and what each lake added to it. */
export interface SeasonPosterior {
  readonly grid: SeasonGrid;
  /** Chance of each point of the grid. */
  readonly weights: Float64Array;
  /** By the lake's place in the list given; `undefined` for a lake without evidence. */
  readonly onGrid: readonly (OnGrid | undefined)[];
  /** Chance of each point when one lake's evidence is left out. */
  without(lake: number): Float64Array;
}

export interface UpdateSettings {
  readonly grid: GridSize;
  readonly sharedWeight: number;
}
export const USUAL_UPDATE: UpdateSettings = { grid: USUAL_GRID, sharedWeight: SHARED_WEIGHT };

export interface EvidenceOfLake {
  readonly law: LakeLaw;
  readonly evidence: LakeEvidence | undefined;
}

function onOneGrid(
  grid: SeasonGrid,
  lakes: readonly EvidenceOfLake[],
  sharedWeight: number,
): SeasonPosterior {
  const onGrid = lakes.map(({ law, evidence }) =>
    evidence === undefined ? undefined : evidenceOnGrid(evidence, law, grid),
  );
  const logWeights = Float64Array.from(grid.logPrior);
  for (const lake of onGrid)
    if (lake !== undefined)
      for (let p = 0; p < logWeights.length; p++)
        addTo(logWeights, p, sharedWeight * Math.log(at(lake.chance, p)));
  const weights = weightsOf(logWeights);
  return {
    grid,
    weights,
    onGrid,
    without: (lake) => {
      const own = onGrid[lake];
      if (own === undefined) return weights;
      return weightsOf(logWeights.map((log, p) => log - sharedWeight * Math.log(at(own.chance, p))));
    },
  };
}

/** Updates the season of one region by the evidence of all its lakes, on a finer grid where the evidence is strong. */
export function updateSeason(
  fit: Fit,
  region: number,
  lakes: readonly EvidenceOfLake[],
  settings: UpdateSettings = USUAL_UPDATE,
): SeasonPosterior {
  const grid = priorGrid(fit, region, settings.grid);
  const posterior = onOneGrid(grid, lakes, settings.sharedWeight);
  const fine = refinedGrid(grid, posterior.weights, fit, region);
  return fine === undefined ? posterior : onOneGrid(fine, lakes, settings.sharedWeight);
}
