import { type CalendarDate, dateOfSeasonDay, type Hemisphere, seasonDay } from "../model/calendar.ts";
import type { Lake } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { type Memoize, type MemoizeLast, unmemoized, unmemoizedLast } from "../model/memoize.ts";
import type { Refusal } from "./after-ice/freezing.ts";
import { basinOf } from "./after-ice/lake-history.ts";
import { doubtsOf, regionDoubts } from "./doubts.ts";
import { explainRegion } from "./explain.ts";
import type { LakeForecast, Launch, RegionForecast, Reporting } from "./forecast.ts";
import { forecastOf, isObserved } from "./lake-forecast.ts";
import { bareLaunch, launchToday } from "./launch.ts";
import { mostInformativeLake } from "./most-informative-lake.ts";
import { anyGoodOn, fishableOn, goodOn, type LakeInRegion } from "./pairs.ts";
import { hemisphereOfLakes } from "./records.ts";
import { regionForecast, reportingOf } from "./region-forecast.ts";
import { clubSeason } from "./region-season.ts";
import { evidenceOfClub, type SeasonEvidence, type SeasonLake } from "./season-evidence.ts";
import { statementsByLake } from "./statements.ts";
import { windowOf } from "./window.ts";

/** Everything the season model says about a club's lakes, standing on the as-of date. */
export interface SeasonForecast {
  /** The days every daily table covers. */
  readonly window: { readonly from: CalendarDate; readonly to: CalendarDate };
  /** By slug. */
  readonly lakes: ReadonlyMap<string, LakeForecast>;
  /** Lakes without a forecast, by slug, and why. */
  readonly refusals: ReadonlyMap<string, Refusal>;
  /** What readings at the launch say, for every lake, by slug. */
  readonly launches: ReadonlyMap<string, Launch>;
  readonly regions: readonly RegionForecast[];
  readonly reporting: Reporting;
  /** Reports that contradict each other or the rest of the evidence; warnings only. */
  readonly doubts: readonly Diagnostic[];
  /** Chance that a lake is in a good state on a day; 0 without a forecast. @throws RangeError for a lake that is not the club's */
  good(slug: string, date: CalendarDate): number;
  /** Chance that it can be fished that day: good, or in its later weeks. @throws RangeError as above */
  fishable(slug: string, date: CalendarDate): number;
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
  readonly fishable: SeasonForecast["fishable"];
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
  readonly refusals: readonly { readonly slug: string; readonly refusal: Refusal }[];
  readonly launches: readonly { readonly slug: string; readonly launch: Launch }[];
  readonly regions: readonly RegionForecast[];
  readonly reporting: Reporting;
}

function fitSeason(club: SeasonEvidence): SeasonModel {
  const hemisphere = hemisphereOfLakes(club.lakes);
  const season = clubSeason(club, hemisphere);
  const { regions } = season;
  const today = seasonDay(club.asOf, club.season, hemisphere);
  const dateOf = datesOf(club.season, hemisphere);
  const all = regions.flatMap((region) => region.lakes.map((lake) => ({ lake, region })));
  const bySlug = new Map(all.map((entry) => [entry.lake.lake.slug, entry]));
  const known = (slug: string): LakeInRegion | undefined => {
    const entry = bySlug.get(slug);
    if (entry === undefined && !season.refusals.has(slug))
      throw new RangeError(`no lake “${slug}” in this club`);
    return entry;
  };
  const chanceOn = (slug: string, date: CalendarDate, chance: typeof goodOn): number => {
    const entry = known(slug);
    return entry === undefined ? 0 : chance(entry.lake, dayOf(date));
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
      const informative = new Map(
        regions.map((region) => [region, mostInformativeLake(region, isObserved, today)]),
      );
      const evidence = new Map(
        regions.flatMap((region) => [
          ...explainRegion(region, informative.get(region)?.byLake ?? [], dateOf),
        ]),
      );
      return {
        window: { from: dateOf(window.from), to: dateOf(window.to) },
        lakes: club.lakes.flatMap(({ slug }) => {
          const why = evidence.get(slug);
          const lake = known(slug)?.lake;
          return why === undefined || lake === undefined
            ? []
            : [{ slug, forecast: forecastOf(lake, why, { today, window, dateOf }), fit: lake.spring.fit }];
        }),
        refusals: [...season.refusals].map(([slug, refusal]) => ({ slug, refusal })),
        launches: club.lakes.map((lake) => {
          const entry = known(lake.slug);
          return {
            slug: lake.slug,
            launch: entry === undefined ? bareLaunch(basinOf(lake)) : launchToday(entry.lake, today),
          };
        }),
        regions: regions.map((region) => regionForecast(region, informative.get(region)?.best ?? null)),
        reporting: reportingOf(season, club, hemisphere),
      };
    },
    good: (slug, date) => chanceOn(slug, date, goodOn),
    fishable: (slug, date) => chanceOn(slug, date, fishableOn),
    anyGood: (slugs, date) =>
      anyGoodAmong(
        [...new Set(slugs)].flatMap((slug) => known(slug) ?? []),
        dayOf(date),
      ),
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
  const { window, lakes, refusals, launches, regions, reporting } = memoize("season forecast", evidence, () =>
    model().told(),
  );
  const anyGood: SeasonForecast["anyGood"] = (slugs, date) => model().anyGood(slugs, date);
  return {
    window,
    regions,
    reporting,
    refusals: new Map(refusals.map(({ slug, refusal }) => [slug, refusal])),
    launches: new Map(launches.map(({ slug, launch }) => [slug, launch])),
    lakes: new Map(lakes.map(({ slug, forecast }) => [slug, forecast])),
    fits: new Map(lakes.map(({ slug, fit }) => [slug, fit])),
    good: (slug, date) => model().good(slug, date),
    fishable: (slug, date) => model().fishable(slug, date),
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
  const names = new Map(club.lakes.map(({ slug, name }) => [slug, name]));
  return {
    ...forecast,
    doubts: [
      ...club.lakes.flatMap(({ slug, name }) =>
        doubtsOf(name, statements.get(slug) ?? [], fits.get(slug) ?? [], forecast.lakes.get(slug)?.iceOff),
      ),
      ...forecast.regions.flatMap((region) =>
        regionDoubts(
          region,
          club.lakes
            .filter((lake) => (lake.region ?? null) === region.region)
            .flatMap(({ slug }) => statements.get(slug) ?? []),
          (slug) => names.get(slug) ?? slug,
        ),
      ),
    ],
  };
}
