import type { Fit } from "./fit/fit-past-seasons.ts";
import {
  addTableOnGrid,
  type LakeDistribution,
  logChanceTable,
  type MiddleTable,
  middlesOf,
} from "./lake-distribution.ts";
import type { LakeEvidence } from "./lake-evidence.ts";
import {
  type GridSize,
  logPriorOf,
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

/** The season after all evidence of one region. */
export interface SeasonPosterior {
  readonly grid: SeasonGrid;
  /** Chance of each point of the grid, one run of points for each scatter. */
  readonly weights: Float64Array;
  /** Log chance of each lake's evidence by its middle, by the lake's place in the list given; `undefined` without evidence. */
  readonly tables: readonly (MiddleTable | undefined)[];
  /** Chance of each point when one lake's evidence is left out. */
  without(lake: number): Float64Array;
}

export interface UpdateSettings {
  readonly grid: GridSize;
  readonly sharedWeight: number;
}
const USUAL_UPDATE: UpdateSettings = { grid: USUAL_GRID, sharedWeight: SHARED_WEIGHT };

export interface LakeAndEvidence {
  readonly distribution: LakeDistribution;
  readonly evidence: LakeEvidence | undefined;
}

/** Log chance, without its constant, of what is known of a season from outside the list, by the season's effect `s`. */
export type OutsideEvidence = (s: number) => number;

function onOneGrid(
  grid: SeasonGrid,
  lakes: readonly LakeAndEvidence[],
  tables: SeasonPosterior["tables"],
  sharedWeight: number,
  outside: OutsideEvidence | undefined,
): SeasonPosterior {
  const add = (logs: Float64Array, place: number, weight: number): void => {
    const [lake, table] = [lakes[place], tables[place]];
    if (lake !== undefined && table !== undefined)
      addTableOnGrid(logs, table, middlesOf(lake.distribution, grid), weight);
  };
  const logWeights = logPriorOf(
    outside === undefined
      ? grid
      : { ...grid, logPrior: grid.logPrior.map((log, p) => log + outside(grid.s[p] ?? 0)) },
  );
  lakes.forEach((_, place) => {
    add(logWeights, place, sharedWeight);
  });
  const weights = weightsOf(logWeights);
  return {
    grid,
    weights,
    tables,
    without: (place) => {
      if (tables[place] === undefined) return weights;
      const rest = Float64Array.from(logWeights);
      add(rest, place, -sharedWeight);
      return weightsOf(rest);
    },
  };
}

/** Updates the season of one region by the evidence of all its lakes, on a finer grid where the evidence is strong. */
export function updateSeason(
  fit: Fit,
  region: number,
  lakes: readonly LakeAndEvidence[],
  settings: UpdateSettings = USUAL_UPDATE,
  outside?: OutsideEvidence,
): SeasonPosterior {
  const grid = priorGrid(fit, region, settings.grid);
  const tables = lakes.map(({ distribution, evidence }) =>
    evidence === undefined ? undefined : logChanceTable(evidence, distribution, grid),
  );
  const posterior = onOneGrid(grid, lakes, tables, settings.sharedWeight, outside);
  const fine = refinedGrid(grid, posterior.weights, fit, region);
  return fine === undefined ? posterior : onOneGrid(fine, lakes, tables, settings.sharedWeight, outside);
}
