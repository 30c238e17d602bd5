import type { Fit } from "./fit.ts";
import type { LakeEvidence } from "./lake-evidence.ts";
import { chanceOnGrid, type LakeLaw } from "./lake-law.ts";
import { addTo, at } from "./numbers.ts";
import {
  type GridSize,
  priorGrid,
  refinedGrid,
  type SeasonGrid,
  USUAL_GRID,
  weightsOf,
} from "./season-grid.ts";

/**
 * Weight of one lake's evidence in the shared season: neighbouring lakes err together, so that each counts for less than one.
 * Measured on open ice-off records by leaving seasons out.
 */
export const SHARED_WEIGHT = 0.6;

/** The season after all evidence of one region, and what each lake added to it. */
export interface SeasonPosterior {
  readonly grid: SeasonGrid;
  /** Chance of each point of the grid. */
  readonly weights: Float64Array;
  /** Chance of each lake's evidence at each point, by the lake's place in the list given; `undefined` without evidence. */
  readonly onGrid: readonly (Float64Array | undefined)[];
  /** Chance of each point when one lake's evidence is left out. */
  without(lake: number): Float64Array;
}

export interface UpdateSettings {
  readonly grid: GridSize;
  readonly sharedWeight: number;
}
const USUAL_UPDATE: UpdateSettings = { grid: USUAL_GRID, sharedWeight: SHARED_WEIGHT };

export interface LakeAndEvidence {
  readonly law: LakeLaw;
  readonly evidence: LakeEvidence | undefined;
}

function temperedLog(chance: Float64Array, weight: number): Float64Array {
  const logs = new Float64Array(chance.length);
  for (let p = 0; p < logs.length; p++) logs[p] = weight * Math.log(at(chance, p));
  return logs;
}

function difference(a: Float64Array, b: Float64Array): Float64Array {
  const result = new Float64Array(a.length);
  for (let p = 0; p < result.length; p++) result[p] = at(a, p) - at(b, p);
  return result;
}

function onOneGrid(
  grid: SeasonGrid,
  lakes: readonly LakeAndEvidence[],
  sharedWeight: number,
): SeasonPosterior {
  const onGrid = lakes.map(({ law, evidence }) =>
    evidence === undefined ? undefined : chanceOnGrid(evidence, law, grid),
  );
  const logs = onGrid.map((chance) => (chance === undefined ? undefined : temperedLog(chance, sharedWeight)));
  const logWeights = Float64Array.from(grid.logPrior);
  for (const log of logs)
    if (log !== undefined) for (let p = 0; p < log.length; p++) addTo(logWeights, p, at(log, p));
  const weights = weightsOf(logWeights);
  return {
    grid,
    weights,
    onGrid,
    without: (lake) => {
      const own = logs[lake];
      return own === undefined ? weights : weightsOf(difference(logWeights, own));
    },
  };
}

/** Updates the season of one region by the evidence of all its lakes, on a finer grid where the evidence is strong. */
export function updateSeason(
  fit: Fit,
  region: number,
  lakes: readonly LakeAndEvidence[],
  settings: UpdateSettings = USUAL_UPDATE,
): SeasonPosterior {
  const grid = priorGrid(fit, region, settings.grid);
  const posterior = onOneGrid(grid, lakes, settings.sharedWeight);
  const fine = refinedGrid(grid, posterior.weights, fit, region);
  return fine === undefined ? posterior : onOneGrid(fine, lakes, settings.sharedWeight);
}
