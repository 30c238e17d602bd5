import { type Hemisphere, seasonDay, seasonOf } from "../model/calendar.ts";
import { fitInputOf, regionsOf, seasonKey } from "./fit/fit-input.ts";
import { type Fit, fitPastSeasons } from "./fit/fit-past-seasons.ts";
import { type IndicatorSeason, indicatorLogChance, indicatorSeason } from "./indicator-lakes.ts";
import { dayChances, type LakeDistribution, lakeDistribution, spanOf } from "./lake-distribution.ts";
import { type DaySpan, evidenceOf, type LakeEvidence } from "./lake-evidence.ts";
import { at } from "./numbers.ts";
import { type Spring, springOfLake } from "./phases.ts";
import { type IceOffDays, iceOffBySeason } from "./records.ts";
import { learnReporting, type ReportingLaw, silenceChance, watchChanceOf } from "./reporting-law.ts";
import type { SeasonEvidence, SeasonLake } from "./season-evidence.ts";
import { priorGrid } from "./season-grid.ts";
import { type SeasonPosterior, type UpdateSettings, updateSeason } from "./season-posterior.ts";
import { type Statement, statementsByLake } from "./statements.ts";
import { type TurnoverCase, turnoverCases } from "./turnover-times.ts";

/** No report of a lake, up to the club's latest one. */
export interface Silence {
  /** Day of season of that latest report. */
  readonly until: number;
  /** Chance that somebody looks at the lake and would have reported its opening. */
  readonly watched: number;
}

/** One lake with all that is known of it. */
export interface LakeSeason {
  readonly lake: SeasonLake;
  readonly distribution: LakeDistribution;
  readonly past: ReadonlyMap<number, IceOffDays>;
  readonly cases: readonly TurnoverCase[];
  readonly statements: readonly Statement[];
  /** Absent once the lake was reported open, and before the club's first report of a season. */
  readonly silence: Silence | undefined;
  /** Chance of the silence by ice-off day; absent where there is none, and where nobody looks. */
  readonly silent: LakeEvidence | undefined;
  /** Chance of all statements and of the silence by ice-off day. */
  readonly evidence: LakeEvidence | undefined;
  readonly span: DaySpan;
  readonly spring: Spring;
}

/** The lakes that share one spring, and that spring. */
export interface RegionSeason {
  readonly lakes: readonly LakeSeason[];
  readonly posterior: SeasonPosterior;
  /** What lakes outside the list say; absent once one of the region's own was reported open. */
  readonly indicators: IndicatorSeason | undefined;
}

/** All regions' seasons, and what was learnt of the club's reporting. */
export interface ClubSeason {
  readonly regions: readonly RegionSeason[];
  readonly reporting: ReportingLaw;
  /** Day of season of the club's latest report of ice this season. */
  readonly latestReport: number | undefined;
}

type LakeBefore = Omit<LakeSeason, "distribution" | "silent" | "evidence" | "span" | "spring">;

/** Chance of a lake's silence by its ice-off day. */
function silenceByDay(
  silence: Silence | undefined,
  { delay }: Pick<ReportingLaw, "delay">,
  span: DaySpan,
): LakeEvidence | undefined {
  if (silence === undefined || silence.watched === 0) return undefined;
  const chance = Float64Array.from({ length: span.to - span.from + 1 }, (_, i) =>
    silenceChance(silence.watched, delay, silence.until - (span.from + i)),
  );
  return { span, chance };
}

const product = (a: Float64Array, b: Float64Array): Float64Array => a.map((value, i) => value * at(b, i));

/** Two pieces of evidence over one span together. */
function bothOf(a: LakeEvidence | undefined, b: LakeEvidence | undefined): LakeEvidence | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  return { span: a.span, chance: product(a.chance, b.chance) };
}

/** Updates one region's season by all evidence of its lakes. @param lakes each with its place in the fit */
export function regionSeason(
  fit: Fit,
  region: number,
  lakes: readonly (LakeBefore & { readonly place: number })[],
  reporting: ReportingLaw,
  indicators: IndicatorSeason | undefined,
  settings?: UpdateSettings,
): RegionSeason {
  const grid = priorGrid(fit, region, settings?.grid);
  const known = lakes.map(({ place, ...lake }) => {
    const distribution = lakeDistribution(fit, place);
    const span = spanOf(distribution, grid);
    const reported = lake.statements.length === 0 ? undefined : evidenceOf(lake.statements, lake.cases, span);
    const silent = silenceByDay(lake.silence, reporting, span);
    return { ...lake, distribution, span, silent, evidence: bothOf(reported, silent) };
  });
  const posterior = updateSeason(
    fit,
    region,
    known,
    settings,
    indicators === undefined ? undefined : indicatorLogChance(indicators),
  );
  return {
    posterior,
    indicators,
    lakes: known.map((lake, place) => {
      const chances = dayChances(lake.distribution, posterior.grid, posterior.without(place), lake.span);
      return {
        ...lake,
        spring: springOfLake(
          lake.silent === undefined ? chances : product(chances, lake.silent.chance),
          lake.span,
          lake.cases,
          lake.statements,
        ),
      };
    }),
  };
}

/** Day of season of the latest report of ice on any lake, by the as-of date. */
function latestIceReport(
  { season, asOf, reports, lakes }: SeasonEvidence,
  hemisphere: Hemisphere,
): number | undefined {
  const slugs = new Set(lakes.map(({ slug }) => slug));
  const days = reports.flatMap(({ lake, ice, date }) =>
    ice !== undefined && slugs.has(lake) && date <= asOf && seasonOf(date, hemisphere) === season
      ? [seasonDay(date, season, hemisphere)]
      : [],
  );
  return days.length === 0 ? undefined : Math.max(...days);
}

/** Fits all past seasons and updates this one, region by region, from what was known on the as-of date. */
export function clubSeason(
  club: SeasonEvidence,
  hemisphere: Hemisphere,
  settings?: UpdateSettings,
): ClubSeason {
  const reporting = learnReporting(club, hemisphere);
  const latestReport = latestIceReport(club, hemisphere);
  if (club.lakes.length === 0) return { regions: [], reporting, latestReport };
  const regions = regionsOf(club.lakes);
  const past = club.lakes.map((lake) => {
    const bySeason = new Map(iceOffBySeason(lake, hemisphere, club.asOf));
    bySeason.delete(club.season);
    return bySeason;
  });
  const input = fitInputOf(club.lakes, past, regions);
  const fit = fitPastSeasons(input);
  const statements = statementsByLake(club, hemisphere, reporting.delay);
  const lakes = club.lakes.map((lake, place) => {
    const bySeason = past[place] ?? new Map<number, IceOffDays>();
    const own = statements.get(lake.slug) ?? [];
    return {
      place,
      lake,
      past: bySeason,
      cases: turnoverCases(lake, bySeason, club.season, club.asOf, hemisphere),
      statements: own,
      silence:
        latestReport === undefined || own.some(({ open }) => open)
          ? undefined
          : { until: latestReport, watched: watchChanceOf(lake, reporting, own.length > 0) },
    };
  });
  const outside = (club.indicators ?? []).map((lake) => ({
    region: lake.region,
    series: iceOffBySeason(lake, hemisphere, club.asOf),
  }));
  return {
    reporting,
    latestReport,
    regions: [...new Set(regions)].map((region) => {
      const members = lakes.filter((_, place) => regions[place] === region);
      const opened = members.some(({ statements: own }) => own.some(({ open }) => open));
      const name = members[0]?.lake.region;
      const effects = new Map(
        [...new Set(members.flatMap(({ past: own }) => [...own.keys()]))].flatMap((season) => {
          const index = input.seasonIndex.get(seasonKey(region, season));
          return index === undefined ? [] : [[season, at(fit.seasonEffects, index)] as const];
        }),
      );
      const series = outside
        .filter((lake) => lake.region === undefined || lake.region === name)
        .map((lake) => lake.series);
      return regionSeason(
        fit,
        region,
        members,
        reporting,
        opened ? undefined : indicatorSeason(series, effects, club.season),
        settings,
      );
    }),
  };
}
