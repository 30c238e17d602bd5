import type { Club, IceOffDates, Lake, Report, TurnoverRecord } from "../model/club.ts";
import { type PastLake, type Placed, pastOf } from "./records.ts";

/** All of a lake that the season model sees. */
export interface SeasonLake extends PastLake, Pick<Lake, "slug" | "turnoverRule"> {
  readonly iceOff: readonly Placed<IceOffDates>[];
  readonly turnover: readonly Placed<Omit<TurnoverRecord, "where">>[];
  /** Whether somebody looks at it in spring, as its file says; absent where visits are learnt from reports. */
  readonly watched?: boolean;
}

/** All of a report that it sees. */
export type SeasonReport = Placed<Pick<Report, "lake" | "date" | "ice" | "phase">>;

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
      turnoverRule: lake.turnoverRule,
      ...(lake.watched === undefined ? {} : { watched: lake.watched }),
    })),
    indicators: indicators.map(pastOf),
    reports: reports.flatMap(({ lake, date, ice, phase }) =>
      ice === undefined && phase === undefined
        ? []
        : [{ lake, date, ...(ice === undefined ? {} : { ice }), ...(phase === undefined ? {} : { phase }) }],
    ),
  };
}
