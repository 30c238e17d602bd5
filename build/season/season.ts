import { type CalendarDate, dateOfSeasonDay, type Hemisphere, seasonDay } from "../model/calendar.ts";
import type { Lake } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { type Memoize, type MemoizeLast, unmemoized, unmemoizedLast } from "../model/memoize.ts";
import { doubtsOf } from "./doubts.ts";
import { explainRegion } from "./explain.ts";
import type { LakeForecast } from "./forecast.ts";
import { forecastOf, isObserved } from "./lake-forecast.ts";
import { anyGoodOn, goodOn, type LakeInRegion } from "./pairs.ts";
import { hemisphereOfLakes } from "./records.ts";
import { regionSeasons } from "./region-season.ts";
import { evidenceOfClub, type SeasonEvidence, type SeasonLake } from "./season-evidence.ts";
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
  /** Keeps what follows from this forecast and from `inputs`: `compute` may see both. */
  readonly memoize: Memoize;
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

/** The fitted season: what is told of it by name and day is asked of it. */
interface SeasonModel {
  readonly told: () => Told;
  readonly good: SeasonForecast["good"];
  readonly anyGood: SeasonForecast["anyGood"];
}

/** What a forecast says once and for all, as plain data. */
interface Told {
  readonly window: SeasonForecast["window"];
  readonly lakes: readonly {
    readonly slug: string;
    readonly forecast: LakeForecast;
    /** The chance of each of the lake's statements to be true. */
    readonly fit: readonly number[];
  }[];
}

function fitSeason(club: SeasonEvidence): SeasonModel {
  const hemisphere = hemisphereOfLakes(club.lakes);
  const regions = regionSeasons(club, hemisphere, statementsByLake(club, hemisphere));
  const today = seasonDay(club.asOf, club.season, hemisphere);
  const dateOf = datesOf(club.season, hemisphere);
  const all = regions.flatMap((region) => region.lakes.map((lake) => ({ lake, region })));
  const bySlug = new Map(all.map((entry) => [entry.lake.lake.slug, entry]));
  const known = (slug: string): LakeInRegion => {
    const entry = bySlug.get(slug);
    if (entry === undefined) throw new RangeError(`no lake “${slug}” in this club`);
    return entry;
  };
  const anyGoodAmong = anyGoodOn();
  const days = new Map<CalendarDate, number>();
  const dayOf = (date: CalendarDate): number => {
    const day = days.get(date) ?? seasonDay(date, club.season, hemisphere);
    days.set(date, day);
    return day;
  };
  return {
    told: () => {
      const window = windowOf(
        all.map(({ lake }) => lake.spring),
        today,
      );
      const evidence = new Map(
        regions.flatMap((region) => [...explainRegion(region, isObserved, today, dateOf)]),
      );
      return {
        window: { from: dateOf(window.from), to: dateOf(window.to) },
        lakes: club.lakes.flatMap(({ slug }) => {
          const why = evidence.get(slug);
          const { lake } = known(slug);
          return why === undefined
            ? []
            : [{ slug, forecast: forecastOf(lake, why, { today, window, dateOf }), fit: lake.spring.fit }];
        }),
      };
    },
    good: (slug, date) => goodOn(known(slug).lake, dayOf(date)),
    anyGood: (slugs, date) => anyGoodAmong([...new Set(slugs)].map(known), dayOf(date)),
  };
}

/** A forecast without its doubts: they alone speak of where things were written. */
function forecastFrom(
  evidence: SeasonEvidence,
  memoize: Memoize,
): Omit<SeasonForecast, "doubts"> & { readonly fits: ReadonlyMap<string, readonly number[]> } {
  let fitted: SeasonModel | undefined;
  const model = (): SeasonModel => {
    fitted ??= fitSeason(evidence);
    return fitted;
  };
  const { window, lakes } = memoize("season forecast", evidence, () => model().told());
  const anyGood: SeasonForecast["anyGood"] = (slugs, date) => model().anyGood(slugs, date);
  return {
    window,
    lakes: new Map(lakes.map(({ slug, forecast }) => [slug, forecast])),
    fits: new Map(lakes.map(({ slug, fit }) => [slug, fit])),
    good: (slug, date) => model().good(slug, date),
    together: (slugA, slugB, date) => anyGood([slugA, slugB], date),
    anyGood,
    memoize: (kind, inputs, compute) => memoize(kind, { evidence, inputs }, () => compute(inputs)),
  };
}

/** How a forecast is kept from one run, and from one edit, to the next; made anew unless they are given. */
interface ForecastMemory {
  readonly memoize?: Memoize;
  readonly memoizeLast?: MemoizeLast;
}

/**
 * Forecasts a season from past records and this season's reports. Nothing dated after the as-of date is used.
 * Pure: the same club gives the same forecast. The fit is made when it is first asked for: what is told of each lake may
 * be kept without it.
 */
export function forecastSeason(
  club: Omit<SeasonEvidence, "lakes"> & { readonly lakes: readonly (SeasonLake & Pick<Lake, "name">)[] },
  { memoize = unmemoized, memoizeLast = unmemoizedLast }: ForecastMemory = {},
): SeasonForecast {
  const evidence = evidenceOfClub(club);
  const { fits, ...forecast } = memoizeLast("season forecast", [JSON.stringify(evidence)], () =>
    forecastFrom(evidence, memoize),
  );
  const statements = statementsByLake(club, hemisphereOfLakes(club.lakes));
  return {
    ...forecast,
    doubts: club.lakes.flatMap(({ slug, name }) =>
      doubtsOf(name, statements.get(slug) ?? [], fits.get(slug) ?? []),
    ),
  };
}
