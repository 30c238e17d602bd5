import { meanOf } from "./numbers.ts";
import { isExact } from "./records.ts";
import { ERROR_DF, tLogKernel } from "./student-t.ts";

/** Ice-off day by season of one lake outside the club's list. */
export type IceOffSeries = ReadonlyMap<number, { readonly from: number; readonly to: number }>;

/** How lakes outside the list measure a season: their mean anomaly is `loading * s`, with t errors of scale `error_d`. */
export interface IndicatorSeason {
  readonly loading: number;
  /** Days, widened. */
  readonly error_d: number;
  /** Lakes with a day of this season. */
  readonly lakes: number;
  /** Past seasons that the loading was learnt from. */
  readonly seasons: number;
  /** This season's mean anomaly, days; late is positive. */
  readonly anomaly_d: number;
}

/** Prior of the loading: five pairs of regions of open records gave 0.71 to 1.02. */
const LOADING = { mean: 0.9, sd: 0.3 };
const LEAST_SHARED_SEASONS = 8;
/** Brackets held too little without it. A judgement, not tested. */
const WIDENED = 1.3;
/** The loading and the error's scale lean on each other; both stand still long before this. */
const ROUNDS = 20;

/**
 * What lakes outside the list say of a season, learnt over the past seasons they share with the club.
 * @param seasonEffects the club's past season effects `s` by season, days
 * @returns `undefined` with fewer than 8 shared seasons, or without a day of this season
 */
export function indicatorSeason(
  series: readonly IceOffSeries[],
  seasonEffects: ReadonlyMap<number, number>,
  season: number,
): IndicatorSeason | undefined {
  const open = series.flatMap((all) => {
    const shared = [...all].flatMap(([year, days]) =>
      year !== season && seasonEffects.has(year) && isExact(days) ? [[year, days.from] as const] : [],
    );
    const now = all.get(season);
    if (now === undefined || !isExact(now) || shared.length === 0) return [];
    const usual = meanOf(shared.map(([, day]) => day));
    return [{ now: now.from - usual, past: new Map(shared.map(([year, day]) => [year, day - usual])) }];
  });
  const past = [...seasonEffects].flatMap(([year, s]) => {
    const anomalies = open.flatMap(({ past }) => past.get(year) ?? []);
    return anomalies.length === 0 ? [] : [{ s, z: meanOf(anomalies) }];
  });
  if (past.length < LEAST_SHARED_SEASONS) return undefined;
  const sum = (value: (year: { s: number; z: number }) => number): number =>
    past.reduce((all, year) => all + value(year), 0);
  let loading = LOADING.mean;
  let variance = 0;
  for (let round = 0; round < ROUNDS; round++) {
    variance = sum(({ s, z }) => (z - loading * s) ** 2) / (past.length - 1);
    const prior = variance / LOADING.sd ** 2;
    loading = (sum(({ s, z }) => s * z) + prior * LOADING.mean) / (sum(({ s }) => s * s) + prior);
  }
  return {
    loading,
    error_d: WIDENED * Math.sqrt(variance),
    lakes: open.length,
    seasons: past.length,
    anomaly_d: meanOf(open.map(({ now }) => now)),
  };
}

/** Log chance of the indicators' anomaly by the season's effect `s`, without its constant. */
export const indicatorLogChance =
  ({ loading, error_d, anomaly_d }: IndicatorSeason) =>
  (s: number): number =>
    tLogKernel((anomaly_d - loading * s) / Math.max(error_d, 0.5), ERROR_DF);
