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
export interface Covariate {
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

export const isExact = ({ from, to }: Pick<PastRecord, "from" | "to">): boolean => from === to;

/** A day to start from where a record is only an interval. */
export const middleOf = ({ from, to }: PastRecord): number => {
  if (!Number.isFinite(from)) return to;
  return Number.isFinite(to) ? (from + to) / 2 : from;
};
