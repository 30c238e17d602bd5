import { meanOf } from "../numbers.ts";
import type { IceOffDays, PastLake } from "../records.ts";

/** One lake's ice-off in one season, on the day scale: `from` and `to` are equal when the day is known, otherwise they hold it between them. */
export interface PastRecord {
  readonly lake: number;
  /** Index among the season effects; lakes of one region share theirs. */
  readonly season: number;
  /** May be minus infinity. */
  readonly from: number;
  /** May be infinity. */
  readonly to: number;
}

/** What a lake's place says about its ice-off: a value for each lake, and the days of ice-off per unit that are expected of it. */
interface Covariate {
  readonly values: readonly number[];
  readonly daysPerUnit: number;
  readonly sd: number;
}

export interface FitInput {
  /** Region of each lake, from 0. */
  readonly regions: readonly number[];
  readonly covariates: readonly Covariate[];
  /** Number of season effects over all regions. */
  readonly seasons: number;
  readonly records: readonly PastRecord[];
  /** Middle ice-off of the lakes, used only when there is no record at all. */
  readonly levelWithoutRecords: { readonly day: number; readonly sd: number };
}

/** A day to start from where a record is only an interval. */
export const middleOf = ({ from, to }: PastRecord): number => {
  if (!Number.isFinite(from)) return to;
  return Number.isFinite(to) ? (from + to) / 2 : from;
};

/**
 * Days of ice-off by place: 4 days per degree of latitude and per 400 ft.
 * @source A. D. Hopkins (1918), Periodical events and natural law as guides to agricultural research and practice
 */
const LATITUDE = { daysPerUnit: 4, sd: 1.5 };
const ELEVATION_100_M = { daysPerUnit: 3.3, sd: 1 };

/**
 * Where a club without one record starts: day 110 of the year (20 April) at 46 degrees and 490 m, the middle of the open records of
 * northern Wisconsin (NSIDC G01377), carried elsewhere by latitude and elevation, give or take 25 days. A guess, and a wide one.
 */
const START = { day: 110, latitude_deg: 46, elevation_m: 490, sd: 25 };

function covariatesOf(lakes: readonly PastLake[]): Covariate[] {
  const elevations = lakes.flatMap(({ elevation_m }) =>
    elevation_m === undefined ? [] : [elevation_m / 100],
  );
  return [
    { ...LATITUDE, values: lakes.map(({ position }) => Math.abs(position.lat)) },
    ...(elevations.length === lakes.length ? [{ ...ELEVATION_100_M, values: elevations }] : []),
  ];
}

function levelWithoutRecords(lakes: readonly PastLake[]): FitInput["levelWithoutRecords"] {
  const latitude = meanOf(lakes.map(({ position }) => Math.abs(position.lat)));
  const elevation_m = meanOf(lakes.map((lake) => lake.elevation_m ?? START.elevation_m));
  return {
    day:
      START.day +
      LATITUDE.daysPerUnit * (latitude - START.latitude_deg) +
      (ELEVATION_100_M.daysPerUnit * (elevation_m - START.elevation_m)) / 100,
    sd: START.sd,
  };
}

/** Each lake's region as a number from 0; lakes without one share a region of their own. */
export function regionsOf(lakes: readonly PastLake[]): readonly number[] {
  const names = [...new Set(lakes.map(({ region }) => region ?? ""))];
  return lakes.map(({ region }) => names.indexOf(region ?? ""));
}

/** The fit's input, and the index of each region's season under `seasonKey`. */
export interface IndexedFitInput extends FitInput {
  readonly seasonIndex: ReadonlyMap<string, number>;
}

export const seasonKey = (region: number, season: number): string => `${region} ${season}`;

/** What the fit needs of a club's records. */
export function fitInputOf(
  lakes: readonly PastLake[],
  past: readonly ReadonlyMap<number, IceOffDays>[],
  regions: readonly number[],
): IndexedFitInput {
  const seasons = new Map<string, number>();
  const records = past.flatMap((bySeason, lake): PastRecord[] =>
    [...bySeason].map(([season, days]) => {
      const key = seasonKey(regions[lake] ?? 0, season);
      const index = seasons.get(key) ?? seasons.size;
      seasons.set(key, index);
      return { lake, season: index, ...days };
    }),
  );
  return {
    regions,
    covariates: covariatesOf(lakes),
    seasons: seasons.size,
    records,
    levelWithoutRecords: levelWithoutRecords(lakes),
    seasonIndex: seasons,
  };
}
