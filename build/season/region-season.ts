import { type Hemisphere, seasonDay, seasonOf } from "../model/calendar.ts";
import type { IceState } from "../model/club.ts";
import { stateOfPhase } from "../model/phase.ts";
import { type Refusal, refusalOf } from "./after-ice/freezing.ts";
import { factorsOfReadings, type LakeClocks } from "./after-ice/lake-clocks.ts";
import { clocksOfLake, type KnownBy, readingOf, usualSecchi_m } from "./after-ice/lake-history.ts";
import type { Reading } from "./after-ice/readings.ts";
import { type Spring, springOf, statesOn } from "./after-ice/spring.ts";
import { type IceOffLaw, seasonStates, statesAfterIceOff } from "./after-ice/states.ts";
import { fitInputOf, regionsOf, seasonKey } from "./fit/fit-input.ts";
import { type Fit, fitPastSeasons } from "./fit/fit-past-seasons.ts";
import { type IndicatorSeason, indicatorLogChance, indicatorSeason } from "./indicator-lakes.ts";
import { dayChances, type LakeDistribution, lakeDistribution, spanOf } from "./lake-distribution.ts";
import { type DaySpan, evidenceOf, type LakeEvidence } from "./lake-evidence.ts";
import { at } from "./numbers.ts";
import { type IceOffDays, iceOffBySeason } from "./records.ts";
import { learnReporting, type ReportingLaw, silenceChance, watchChanceOf } from "./reporting-law.ts";
import type { SeasonEvidence, SeasonLake, SeasonReport } from "./season-evidence.ts";
import { priorGrid } from "./season-grid.ts";
import { type SeasonPosterior, type UpdateSettings, updateSeason } from "./season-posterior.ts";
import { readingStatements, type Statement, statementsByLake } from "./statements.ts";

/** No report of a lake, up to the club's latest one. */
interface Silence {
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
  readonly clocks: LakeClocks;
  readonly statements: readonly Statement[];
  /** What was read of its water this season, in order of date. */
  readonly readings: readonly Reading[];
  /** Absent once the lake was reported open, and before the club's first report of a season. */
  readonly silence: Silence | undefined;
  /** Chance of the silence by ice-off day; absent where there is none, and where nobody looks. */
  readonly silent: LakeEvidence | undefined;
  /** Chance of all that was seen of its own ice, and of the silence, by ice-off day. */
  readonly ofIce: LakeEvidence | undefined;
  /** The same with what water read or named says of the ice: the lake's part in the region's season. */
  readonly evidence: LakeEvidence | undefined;
  readonly span: DaySpan;
  readonly law: IceOffLaw;
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
  /** Lakes without a forecast, by slug, and why; they are in no region. */
  readonly refusals: ReadonlyMap<string, Refusal>;
  readonly reporting: ReportingLaw;
  /** Day of season of the club's latest report of ice this season. */
  readonly latestReport: number | undefined;
}

type LakeBefore = Omit<
  LakeSeason,
  "distribution" | "clocks" | "silent" | "ofIce" | "evidence" | "span" | "law" | "spring"
>;

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

/** Two pieces of evidence over one span together. */
function bothOf(a: LakeEvidence | undefined, b: LakeEvidence | undefined): LakeEvidence | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  return { span: a.span, chance: a.chance.map((value, i) => value * at(b.chance, i)) };
}

/** Updates one region's season by all evidence of its lakes. @param lakes each with its place in the fit */
export function regionSeason(
  fit: Fit,
  region: number,
  lakes: readonly (LakeBefore & { readonly place: number })[],
  reporting: ReportingLaw,
  indicators: IndicatorSeason | undefined,
  knownBy: KnownBy,
  settings?: UpdateSettings,
): RegionSeason {
  const grid = priorGrid(fit, region, settings?.grid);
  const known = lakes.map(({ place, ...lake }) => {
    const distribution = lakeDistribution(fit, place);
    const span = spanOf(distribution, grid);
    const silent = silenceByDay(lake.silence, reporting, span);
    const seen = (statements: readonly Pick<Statement, "likelihood">[]): LakeEvidence | undefined =>
      bothOf(statements.length === 0 ? undefined : evidenceOf(statements, span), silent);
    const usual = { day: distribution.m, variance: distribution.variance };
    return {
      ...lake,
      distribution,
      span,
      silent,
      clocks: clocksOfLake(lake.lake, usual, lake.past, knownBy),
      ofIce: seen(lake.statements.filter(({ state }) => state === undefined)),
      evidence: seen([...lake.statements, ...readingStatements(lake.readings)]),
    };
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
      const law: IceOffLaw = {
        from: lake.span.from,
        chances: dayChances(lake.distribution, posterior.grid, posterior.without(place), lake.span),
        ...(lake.ofIce === undefined ? {} : { evidence: lake.ofIce.chance }),
      };
      return { ...lake, law, spring: lakeSpring(lake, law) };
    }),
  };
}

/** A lake's states over the season. */
function lakeSpring(
  { clocks, readings, statements }: Omit<LakeSeason, "law" | "spring">,
  law: IceOffLaw,
): Spring {
  const spring = springOf(seasonStates(law, statesAfterIceOff(clocks, factorsOfReadings(clocks, readings))));
  return { ...spring, fit: statements.map((statement) => chanceOfStatement(statement, spring)) };
}

/** Chance that what was seen is true, given all that is known of the lake. */
function chanceOfStatement(
  { state, day, fits }: Statement,
  spring: Pick<Spring, "by" | "firstDay" | "iceOff">,
): number {
  if (state !== undefined) {
    const states = statesOn(spring, day);
    return states[stateOfPhase(state)];
  }
  let chance = 0;
  spring.iceOff.forEach((part, i) => {
    if (fits(spring.firstDay + i)) chance += part;
  });
  return chance;
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

function reportsByLake({ reports }: SeasonEvidence): ReadonlyMap<string, readonly SeasonReport[]> {
  const byLake = new Map<string, SeasonReport[]>();
  for (const report of reports) byLake.set(report.lake, [...(byLake.get(report.lake) ?? []), report]);
  return byLake;
}

const placeOf = ({ position, elevation_m, freezes }: SeasonLake) => ({
  latitude_deg: position.lat,
  ...(elevation_m === undefined ? {} : { elevation_m }),
  ...(freezes === undefined ? {} : { freezes }),
});

/** This season's reports of ice on one lake. */
const iceReports = (
  reports: readonly SeasonReport[],
  { season, asOf, hemisphere }: KnownBy,
): { day: number; ice: IceState }[] =>
  reports.flatMap(({ date, ice }) =>
    ice === undefined || date > asOf || seasonOf(date, hemisphere) !== season
      ? []
      : [{ day: seasonDay(date, season, hemisphere), ice }],
  );

/** What was read of a lake's water this season, in order of date. What is read through a hole in the ice says nothing here. */
function readingsOf(
  lake: SeasonLake,
  reports: readonly SeasonReport[],
  { season, asOf, hemisphere }: KnownBy,
): Reading[] {
  const usual_m = usualSecchi_m(
    reports.filter(({ date }) => date <= asOf),
    iceOffBySeason(lake, hemisphere, asOf),
    hemisphere,
  );
  return reports
    .filter(({ date, ice }) => ice !== "on" && date <= asOf && seasonOf(date, hemisphere) === season)
    .flatMap((report) => readingOf(report, seasonDay(report.date, season, hemisphere), usual_m) ?? [])
    .sort((a, b) => a.day - b.day);
}

/** Fits all past seasons and updates this one, region by region, from what was known on the as-of date. */
export function clubSeason(
  club: SeasonEvidence,
  hemisphere: Hemisphere,
  settings?: UpdateSettings,
): ClubSeason {
  const reporting = learnReporting(club, hemisphere);
  const latestReport = latestIceReport(club, hemisphere);
  const freezing = club.lakes.filter(({ freezes }) => freezes !== "never");
  const refusals = new Map<string, Refusal>(
    club.lakes.flatMap(({ slug, freezes }) => (freezes === "never" ? [[slug, "never"] as const] : [])),
  );
  if (freezing.length === 0) return { regions: [], refusals, reporting, latestReport };
  const regions = regionsOf(freezing);
  const past = freezing.map((lake) => {
    const bySeason = new Map(iceOffBySeason(lake, hemisphere, club.asOf));
    bySeason.delete(club.season);
    return bySeason;
  });
  const input = fitInputOf(freezing, past, regions);
  const fit = fitPastSeasons(input);
  const statements = statementsByLake(club, hemisphere, reporting.delay);
  const knownBy: KnownBy = { season: club.season, asOf: club.asOf, hemisphere };
  const reports = reportsByLake(club);
  const lakes = freezing.map((lake, place) => {
    const bySeason = past[place] ?? new Map<number, IceOffDays>();
    const own = statements.get(lake.slug) ?? [];
    const readings = readingsOf(lake, reports.get(lake.slug) ?? [], knownBy);
    return {
      place,
      lake,
      past: bySeason,
      statements: own,
      readings,
      silence:
        latestReport === undefined || own.some(({ open }) => open) || readingStatements(readings).length > 0
          ? undefined
          : { until: latestReport, watched: watchChanceOf(lake, reporting, own.length > 0) },
    };
  });
  freezing.forEach((lake, place) => {
    const refusal = refusalOf({
      lake: placeOf(lake),
      ownRecords: iceOffBySeason(lake, hemisphere, club.asOf).size,
      dated: freezing.flatMap((other, i) =>
        regions[i] === regions[place] && (past[i]?.size ?? 0) > 0 ? [placeOf(other)] : [],
      ),
      usual: at(fit.m, place),
      usualSd: Math.sqrt(at(fit.v, place) + at(fit.sigma, place) ** 2 + fit.omega.ss),
      ice: iceReports(reports.get(lake.slug) ?? [], knownBy),
    });
    if (refusal !== undefined) refusals.set(lake.slug, refusal);
  });
  const outside = (club.indicators ?? []).map((lake) => ({
    region: lake.region,
    series: iceOffBySeason(lake, hemisphere, club.asOf),
  }));
  return {
    reporting,
    latestReport,
    refusals,
    regions: [...new Set(regions)].flatMap((region) => {
      const members = lakes.filter(
        ({ lake }, place) => regions[place] === region && !refusals.has(lake.slug),
      );
      if (members.length === 0) return [];
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
        knownBy,
        settings,
      );
    }),
  };
}
