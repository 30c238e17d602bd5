import { type CalendarDate, dateOfSeasonDay, type Hemisphere, seasonDay } from "../model/calendar.ts";
import type { Club } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { doubtsOf } from "./doubts.ts";
import { explainRegion } from "./explain.ts";
import type { LakeForecast } from "./forecast.ts";
import { forecastOf, isObserved } from "./lake-forecast.ts";
import { anyGoodOn, goodOn, type LakeInRegion } from "./pairs.ts";
import { hemisphereOfLakes } from "./records.ts";
import { regionSeasons } from "./region-season.ts";
import { statementsByLake } from "./statements.ts";
import { windowOf } from "./window.ts";

/** Everything the season model says about a club's lakes, standing on the as-of date. */
export interface SeasonForecast {
  /** The days every daily table covers. */
  readonly window: { readonly from: CalendarDate; readonly to: CalendarDate };
  /** By slug. */
  readonly lakes: ReadonlyMap<string, LakeForecast>;
  /** Reports that contradict each other or the rest of the evidence; warnings only. */
  readonly doubts: readonly Diagnostic[];
  /** Chance that a lake is in a good phase on a day. @throws RangeError for a lake that is not the club's */
  good(slug: string, date: CalendarDate): number;
  /** Chance that at least one of two lakes is good on a day, sharing one spring. @throws RangeError as above */
  together(slugA: string, slugB: string, date: CalendarDate): number;
  /** Chance that at least one of several lakes is good on a day. @throws RangeError as above */
  anyGood(slugs: readonly string[], date: CalendarDate): number;
}

/** Turns days of season into dates, each only once. */
function datesOf(season: number, hemisphere: Hemisphere): (day: number) => CalendarDate {
  const dates = new Map<number, CalendarDate>();
  return (day) => {
    const known = dates.get(day);
    if (known !== undefined) return known;
    const date = dateOfSeasonDay(day, season, hemisphere);
    dates.set(day, date);
    return date;
  };
}

/**
 * Forecasts a season from past records and this season's reports. Nothing dated after the as-of date is used.
 * Pure: the same club gives the same forecast.
 */
export function forecastSeason(club: Pick<Club, "season" | "asOf" | "lakes" | "reports">): SeasonForecast {
  const hemisphere = hemisphereOfLakes(club.lakes);
  const regions = regionSeasons(club, hemisphere, statementsByLake(club, hemisphere));
  const today = seasonDay(club.asOf, club.season, hemisphere);
  const dateOf = datesOf(club.season, hemisphere);
  const all = regions.flatMap((region) => region.lakes.map((lake) => ({ lake, region })));
  const window = windowOf(
    all.map(({ lake }) => lake.spring),
    today,
  );
  const bySlug = new Map(all.map((entry) => [entry.lake.lake.slug, entry]));
  const known = (slug: string): LakeInRegion => {
    const entry = bySlug.get(slug);
    if (entry === undefined) throw new RangeError(`no lake “${slug}” in this club`);
    return entry;
  };
  const evidence = new Map(
    regions.flatMap((region) => [...explainRegion(region, isObserved, today, dateOf)]),
  );
  const anyGoodAmong = anyGoodOn();
  const days = new Map<CalendarDate, number>();
  const dayOf = (date: CalendarDate): number => {
    const day = days.get(date) ?? seasonDay(date, club.season, hemisphere);
    days.set(date, day);
    return day;
  };
  const anyGood = (slugs: readonly string[], date: CalendarDate): number =>
    anyGoodAmong([...new Set(slugs)].map(known), dayOf(date));
  return {
    window: { from: dateOf(window.from), to: dateOf(window.to) },
    lakes: new Map(
      club.lakes.flatMap(({ slug }) => {
        const why = evidence.get(slug);
        return why === undefined
          ? []
          : [[slug, forecastOf(known(slug).lake, why, { today, window, dateOf })] as const];
      }),
    ),
    doubts: club.lakes.flatMap(({ slug }) => doubtsOf(known(slug).lake)),
    good: (slug, date) => goodOn(known(slug).lake, dayOf(date)),
    together: (slugA, slugB, date) => anyGood([slugA, slugB], date),
    anyGood,
  };
}
