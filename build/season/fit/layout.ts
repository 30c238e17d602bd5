import { at, meanOf } from "../numbers.ts";
import type { FitInput, PastRecord } from "./fit-input.ts";
import type { Blocks } from "./normal-equations.ts";
import { rowsOf, type SparseRows } from "./normal-equations.ts";

/** Places of the fit's unknowns: first `beta`, then `m` lake by lake, then `s` and `k` season by season. */
export interface Layout {
  readonly betas: number;
  readonly lakes: number;
  readonly seasons: number;
  readonly size: number;
  /** The larger side, lakes or seasons, is eliminated: only the smaller one needs a dense solve. */
  readonly blocks: Blocks;
}

export function layoutOf({ covariates, regions, seasons }: FitInput): Layout {
  const betas = 1 + covariates.length;
  const lakes = regions.length;
  return {
    betas,
    lakes,
    seasons,
    size: betas + lakes + 2 * seasons,
    blocks:
      lakes > 2 * seasons // only then may a row touch all seasons
        ? { first: betas, count: lakes, width: 1 }
        : { first: betas + lakes, count: seasons, width: 2 },
  };
}

export const placeOfLake = ({ betas }: Layout, lake: number): number => betas + lake;
const placeOfSeason = ({ betas, lakes }: Layout, season: number): number => betas + lakes + 2 * season;

/** Every season's `s`. */
export const seasonEffects = (layout: Layout, mean: Float64Array): Float64Array =>
  Float64Array.from({ length: layout.seasons }, (_, season) => at(mean, placeOfSeason(layout, season)));

/** Each coefficient by itself. */
export const betaRows = ({ betas }: Layout): SparseRows =>
  rowsOf(Array.from({ length: betas }, (_, j) => [[j, 1]]));

/** Each lake by itself. */
export const lakeRows = (layout: Layout): SparseRows =>
  rowsOf(Array.from({ length: layout.lakes }, (_, lake) => [[placeOfLake(layout, lake), 1]]));

/** `m - z beta`, lake by lake, with covariates counted from their mean. */
export function offsetRows(layout: Layout, { covariates, regions }: FitInput): SparseRows {
  const centred = covariates.map(({ values }) => {
    const middle = meanOf(values);
    return Float64Array.from(values, (value) => value - middle);
  });
  return rowsOf(
    regions.map((_, lake) => [
      [placeOfLake(layout, lake), 1],
      [0, -1],
      ...centred.map((values, j) => [1 + j, -at(values, lake)] as const),
    ]),
  );
}

/** `s` and `k + slope s`, season by season. */
export function seasonRows(layout: Layout, slope: number): SparseRows {
  return rowsOf(
    Array.from({ length: layout.seasons }, (_, season) => placeOfSeason(layout, season)).flatMap((s) => [
      [[s, 1]],
      [
        [s, slope],
        [s + 1, 1],
      ],
    ]),
  );
}

/** `m + s + x k`, record by record, for whatever `x` the lakes have at the time. */
export function recordRows(layout: Layout, records: readonly PastRecord[]): (x: Float64Array) => SparseRows {
  const starts = Int32Array.from({ length: records.length + 1 }, (_, n) => 3 * n);
  const unknowns = new Int32Array(3 * records.length);
  records.forEach(({ lake, season }, n) => {
    const s = placeOfSeason(layout, season);
    unknowns.set([placeOfLake(layout, lake), s, s + 1], 3 * n);
  });
  return (x) => {
    const weights = new Float64Array(3 * records.length).fill(1);
    records.forEach(({ lake }, n) => {
      weights[3 * n + 2] = at(x, lake);
    });
    return { starts, unknowns, weights };
  };
}

/** Number of seasons on record in each region, from region 0 on. */
export function seasonsByRegion({ regions, records }: FitInput): number[] {
  const seasons = regions.reduce<Set<number>[]>((all, region) => {
    all[region] ??= new Set();
    return all;
  }, []);
  for (const { lake, season } of records) seasons[regions[lake] ?? 0]?.add(season);
  return seasons.map(({ size }) => size);
}

/**
 * The sum of all slopes of a region. A common slope cannot be told from lakes that lie closer together or farther apart, and with many more
 * lakes than seasons the prior of the lakes would press them together without end: there the slopes are held to a sum of zero.
 */
export function slopeSumRows(layout: Layout, { regions, records }: FitInput): SparseRows {
  const regionOf = new Map(records.map(({ lake, season }) => [season, regions[lake] ?? 0]));
  return rowsOf(
    [...new Set(regionOf.values())].map((region) =>
      [...regionOf]
        .filter(([, own]) => own === region)
        .map(([season]) => [placeOfSeason(layout, season) + 1, 1]),
    ),
  );
}

/** True when there are so many lakes that the slopes must be held. */
export const slopesHeld = ({ lakes, seasons }: Layout): boolean => lakes > 2 * seasons;
