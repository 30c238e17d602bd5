import type { Watched } from "../model/choices.ts";
import type { Club, IceOffDates, Lake, LastGoodRecord, Report, TurnoverRecord } from "../model/club.ts";
import { type PastLake, type Placed, pastOf } from "./records.ts";

/** What the states after ice-off follow from. */
const LAKE_TRAITS = [
  "area_ha",
  "meanDepth_m",
  "maxDepth_m",
  "freezes",
  "fedBy",
  "layers",
] as const satisfies readonly (keyof Lake)[];
type LakeTrait = (typeof LAKE_TRAITS)[number];

/** What a report says of ice and water. */
const READINGS = [
  "ice",
  "phase",
  "water_C",
  "deep",
  "clarity_m",
  "looks",
] as const satisfies readonly (keyof Report)[];

/** All of a lake that the season model sees. */
export interface SeasonLake extends PastLake, Pick<Lake, "slug" | "turnoverRule" | LakeTrait> {
  readonly iceOff: readonly Placed<IceOffDates>[];
  readonly turnover: readonly Placed<Omit<TurnoverRecord, "where">>[];
  readonly lastGood: readonly Placed<Omit<LastGoodRecord, "where">>[];
  /** Whether somebody looks at it in spring, as its file says; absent where visits are learnt from reports. */
  readonly watched?: Watched;
}

/** All of a report that it sees. */
export type SeasonReport = Placed<Pick<Report, "lake" | "date" | (typeof READINGS)[number]>>;

/** All of a club that it sees. */
export interface SeasonEvidence extends Pick<Club, "season" | "asOf"> {
  readonly lakes: readonly SeasonLake[];
  readonly reports: readonly SeasonReport[];
  /** Lakes outside the club's list that measure the season until its own first opening. */
  readonly indicators?: readonly PastLake[];
}

/** What a season's forecast follows from, as plain data: no words, and no places, which move with any edit of the lines above. */
export function evidenceOfClub({
  season,
  asOf,
  lakes,
  reports,
  indicators = [],
}: SeasonEvidence): SeasonEvidence {
  return {
    season,
    asOf,
    lakes: lakes.map((lake) => ({
      ...pastOf(lake),
      slug: lake.slug,
      turnover: lake.turnover.map(({ season: of, from, to }) => ({ season: of, from, to })),
      lastGood: lake.lastGood.map(({ season: of, on }) => ({ season: of, on })),
      turnoverRule: lake.turnoverRule,
      ...pick(lake, LAKE_TRAITS),
      ...(lake.watched === undefined ? {} : { watched: lake.watched }),
    })),
    indicators: indicators.map(pastOf),
    reports: reports.flatMap((report) => {
      const read = pick(report, READINGS);
      return Object.keys(read).length === 0 ? [] : [{ lake: report.lake, date: report.date, ...read }];
    }),
  };
}

/** Some fields of a value, those that are there. */
const pick = <T extends object, K extends keyof T>(value: T, keys: readonly K[]): Pick<T, K> =>
  Object.fromEntries(keys.flatMap((key) => (value[key] === undefined ? [] : [[key, value[key]]]))) as Pick<
    T,
    K
  >;
