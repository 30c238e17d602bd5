import type { PhasedReport } from "../flies/catch-rates.ts";
import { lakeCatches } from "../flies/catch-rates.ts";
import type { FlyEvidence } from "../flies/rank-flies.ts";
import { ADDRESS } from "../model/addresses.ts";
import { type CalendarDate, hemisphereOf, seasonOf } from "../model/calendar.ts";
import type { Club, Lake, Pattern, Report } from "../model/club.ts";
import type { StandingContent } from "../model/content.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { type Memoize, type MemoizeLast, unmemoized, unmemoizedLast } from "../model/memoize.ts";
import { phaseName } from "../model/phase.ts";
import { flyClassOf } from "../rigs/fly-classes.ts";
import { rigDiagnostics } from "../rigs/gear-checks.ts";
import { rigsForLake } from "../rigs/lake-rigs.ts";
import { bandsToFish, leaderBoards } from "../rigs/leaders/leader-boards.ts";
import { rigTables } from "../rigs/tables/rig-tables.ts";
import { REFUSALS } from "../season/after-ice/freezing.ts";
import { backtest } from "../season/backtest/backtest.ts";
import { scoreClearDays } from "../season/backtest/clear-days.ts";
import { pastForecasts } from "../season/backtest/past-forecasts.ts";
import type { LakeForecast, Launch, PastForecast, RegionForecast } from "../season/forecast.ts";
import { forecastSeason, type SeasonForecast } from "../season/season.ts";
import { evidenceOfClub, type SeasonEvidence } from "../season/season-evidence.ts";
import { composeWater } from "../water/water.ts";
import { bestDaysInReach } from "./best-days.ts";
import { arrangeBoard } from "./board.ts";
import { composeCatches, composeDiet, composeFlies, fishedReports, flyEvidence } from "./flies.ts";
import {
  clubFacts,
  type Guide,
  type GuideLake,
  type GuidePage,
  type GuidePattern,
  lakeFacts,
  patternFacts,
  reportFacts,
  rigFacts,
  SCHEMA_VERSION,
} from "./guide-schema.ts";
import { fishedBands, riggedLake } from "./lake-inputs.ts";
import { renderChapter } from "./markdown.ts";
import { caughtByPattern, lakeSeasons, reportSeasons, unrecordedIceOff } from "./report-seasons.ts";
import { composeSearch, unfishedPatterns } from "./search.ts";
import { nextText, nowText, whyText } from "./status-words.ts";
import { composeTrip } from "./trips.ts";
import { composeWhen } from "./when.ts";

export interface ComposeOptions {
  /** The program's version. */
  readonly version: string;
  /** Where the guide will be published; absent when only for a disk. */
  readonly baseUrl?: string;
  /** Keeps costly results from one run to the next; computes always unless it is given. */
  readonly memoize?: Memoize;
  /** Keeps parts in memory from one edit to the next; makes all anew unless it is given. */
  readonly memoizeLast?: MemoizeLast;
  /** True leaves out what no card shows and no problem can come of: the scores of past seasons, and where to go when. */
  readonly forCards?: boolean;
}

export interface Composed {
  /** Absent when the rig box has errors. */
  readonly guide?: Guide;
  /** Rigs that cannot be right, and reports that the season model doubts. */
  readonly problems: readonly Diagnostic[];
}

function seenIn({ ice, phase }: Report): string[] {
  return [
    ...(ice === undefined ? [] : [`ice ${ice}`]),
    ...(phase === undefined ? [] : [phaseName(phase).toLowerCase()]),
  ];
}

function composeReport(report: Report, club: ClubFacts): GuideLake["reports"][number] {
  const { date, notes, ...measured } = reportFacts.of(report);
  return { date, seen: seenIn(report), ...measured, ...composeCatches(report, club), notes };
}

/** What members caught and sampled, and what it says about flies. */
interface Fished {
  readonly reports: readonly PhasedReport[];
  readonly evidence: FlyEvidence;
}

/** All of the club that a lake's part of the guide follows from, besides the lake's own. */
type ClubFacts = Pick<Club, "season" | "asOf" | "units" | "timezone" | "rigs" | "patterns">;

/** The days whose light a reader wants: today, and the middle first and last day of each phase to come. */
const lightDays = ({ phases }: LakeForecast, { asOf }: ClubFacts): CalendarDate[] => [
  ...new Set([asOf, ...phases.flatMap(({ from, to }) => [from.p50, to.p50]).filter((day) => day > asOf)]),
];

/** True for a report of the season in progress. */
const isThisSeason = ({ date }: Report, lake: Lake, { season }: ClubFacts): boolean =>
  seasonOf(date, hemisphereOf(lake.position.lat)) === season;

/** What a lake's part of the guide follows from. */
interface LakeParts {
  readonly lake: Lake;
  readonly forecast: LakeForecast;
  readonly launch: Launch;
  readonly club: ClubFacts;
  /** What lakes are called, by slug. */
  readonly names: ReadonlyMap<string, Pick<Lake, "name">>;
  readonly fished: Fished;
  /** The lake's own. */
  readonly reports: readonly Report[];
  readonly past: readonly PastForecast[];
  readonly region: RegionForecast;
}

function composeLake(
  { lake, forecast, launch, club, names, fished, reports, past, region }: LakeParts,
  memoize: Memoize,
): { lake: GuideLake; problems: readonly Diagnostic[] } {
  const fishable = { lake: riggedLake(lake), box: club.rigs, units: club.units };
  const rigs = memoize("rigs of a lake", fishable, (of) => rigsForLake(of.lake, of.box, of.units));
  const boards = memoize("boards of a lake", fishable, (of) =>
    leaderBoards(bandsToFish(of.lake), of.box, { days: 1, rods: 1 }, of.units),
  );
  const { water: place, problems } = composeWater(lake, lake.shape, {
    units: club.units,
    timezone: club.timezone,
    days: lightDays(forecast, club),
    bands: fishedBands(lake),
    reports: reports.filter((report) => isThisSeason(report, lake, club)),
    memoize,
  });
  const plan = rigs.map((one) => ({ ...one, flies: composeFlies(lake, one, club, fished.evidence) }));
  const told = reports.map((report) => composeReport(report, club));
  const composed: GuideLake = {
    slug: lake.slug,
    ...lakeFacts.of(lake),
    turnsOver: lake.turnoverRule.turnsOver,
    ...forecast,
    bestDays: bestDaysInReach(forecast, lake.access?.opens),
    status: {
      now: lake.freezes === "some-years" ? `If it freezes: ${nowText(forecast)}` : nowText(forecast),
      next: nextText(forecast),
      why: whyText(forecast, region, club.asOf, names, club.units),
    },
    place,
    launch,
    boards,
    search: composeSearch(lake, plan, club.units),
    plan,
    diet: composeDiet(lake, fished.evidence),
    catches: lakeCatches(
      fished.reports.filter(({ report }) => report.lake === lake.slug),
      (report) => isThisSeason(report, lake, club),
    ),
    reports: told,
    reported: {
      seasons: lakeSeasons({ position: lake.position, reports: told }),
      caught: caughtByPattern(told),
      unrecorded: unrecordedIceOff(lake, reports, forecast.marks),
    },
    pastForecasts: [...past],
  };
  return { lake: composed, problems };
}

/** The lakes on whose list a pattern stands, and in which phases. */
function lakesFor(pattern: Pattern, lakes: readonly GuideLake[]): GuidePattern["lakes"] {
  return lakes.flatMap(({ slug, name, plan }) => {
    const phases = plan
      .filter(({ flies }) => flies.some((fly) => fly.pattern === pattern.slug))
      .map(({ phase }) => phase);
    return phases.length === 0 ? [] : [{ slug, name, phases }];
  });
}

const composePattern = (pattern: Pattern, lakes: readonly GuideLake[]): GuidePattern => ({
  slug: pattern.slug,
  ...patternFacts.of(pattern),
  flyClass: flyClassOf(pattern),
  lakes: lakesFor(pattern, lakes),
});

const composePage = ({ slug, title, markdown }: StandingContent["chapters"][number]): GuidePage => ({
  slug,
  title,
  html: renderChapter(markdown),
});

/** The scores that a guide shows: as if each opening were known on its day, and as clubs report. The command tells of all. */
const SHOWN_SCORES = { modes: ["perfect", "delay4"], pastOnly: false } as const;

const NO_DAYS: Guide["when"] = { occasions: [], pool: null, weeks: [], lakes: [] };

function byLake(reports: readonly Report[]): ReadonlyMap<string, readonly Report[]> {
  const groups = new Map<string, Report[]>();
  for (const report of reports) {
    const group = groups.get(report.lake);
    if (group === undefined) groups.set(report.lake, [report]);
    else group.push(report);
  }
  return groups;
}

const NO_PAST: readonly PastForecast[] = [];

/** Every lake's part of the guide; one is composed again only when something that it follows from has changed. */
function composeLakes(
  club: Club,
  { lakes: forecasts, launches, regions }: Pick<SeasonForecast, "lakes" | "launches" | "regions">,
  pastBySlug: ReadonlyMap<string, readonly PastForecast[]>,
  memoize: Memoize,
  memoizeLast: MemoizeLast,
): ReturnType<typeof composeLake>[] {
  const { season, asOf, units, timezone, rigs } = club;
  const patterns = memoizeLast("patterns", club.patterns, () => club.patterns);
  const facts = memoizeLast(
    "club",
    [season, asOf, units, timezone, rigs, patterns],
    (): ClubFacts => ({
      season,
      asOf,
      units,
      timezone,
      rigs,
      patterns,
    }),
  );
  const lakesBySlug = new Map(club.lakes.map((lake) => [lake.slug, lake]));
  const names = memoizeLast(
    "names of lakes",
    club.lakes.flatMap(({ slug, name }) => [slug, name]),
    () => new Map(club.lakes.map(({ slug, name }) => [slug, { name }])),
  );
  const phased = fishedReports(club, lakesBySlug, forecasts);
  const fished = memoizeLast(
    "fished reports",
    phased.flatMap(({ report, phase }) => [report, phase]),
    (): Fished => ({ reports: phased, evidence: flyEvidence(phased) }),
  );
  const reportsOf = byLake(club.reports);
  return club.lakes.flatMap((lake) => {
    const forecast = forecasts.get(lake.slug);
    const launch = launches.get(lake.slug);
    const region = regions.find((one) => one.region === (lake.region ?? null));
    if (forecast === undefined || launch === undefined || region === undefined) return [];
    const reports = reportsOf.get(lake.slug) ?? [];
    const past = pastBySlug.get(lake.slug) ?? NO_PAST;
    return [
      memoizeLast(
        `part of lake ${lake.slug}`,
        [lake, forecast, launch, region, facts, names, fished, past, ...reports],
        () =>
          composeLake({ lake, forecast, launch, club: facts, names, fished, reports, past, region }, memoize),
      ),
    ];
  });
}

/** The lakes without a forecast, each with the reason. */
const bareLakes = (
  lakes: readonly Lake[],
  { refusals, launches }: Pick<SeasonForecast, "refusals" | "launches">,
): Guide["lakesWithoutForecast"] =>
  lakes.flatMap((lake) => {
    const [refusal, launch] = [refusals.get(lake.slug), launches.get(lake.slug)];
    if (refusal === undefined || launch === undefined) return [];
    return [{ slug: lake.slug, ...lakeFacts.of(lake), why: `${lake.name}: ${REFUSALS[refusal]}`, launch }];
  });

const turnoverRecords = (club: Club): Pick<SeasonEvidence, "lakes" | "season"> => {
  const { lakes, season } = evidenceOfClub(club);
  return { lakes, season };
};

/** Everything a reader will see, computed from what the club wrote. Pure. */
export function composeGuide(club: Club, content: StandingContent, options: ComposeOptions): Composed {
  const { memoize = unmemoized, memoizeLast = unmemoizedLast } = options;
  const rigProblems = [...rigDiagnostics(club.rigs), ...unfishedPatterns(club.patterns)];
  if (rigProblems.some(({ severity }) => severity === "error")) return { problems: rigProblems };
  const forecast = forecastSeason(club, { memoize, memoizeLast });
  const past =
    options.forCards === true
      ? new Map<string, readonly PastForecast[]>()
      : memoizeLast("past forecasts", [...club.lakes, club.season], () =>
          pastForecasts(club.lakes, club.season, memoize),
        );
  const composed = composeLakes(club, forecast, past, memoize, memoizeLast);
  const placeProblems = composed.flatMap(({ problems }) => problems);
  const lakes = composed
    .map(({ lake }) => lake)
    .sort((a, b) => (a.iceOff.p50 < b.iceOff.p50 ? -1 : a.iceOff.p50 > b.iceOff.p50 ? 1 : 0));
  const guideLakes = new Map(lakes.map((lake) => [lake.slug, lake]));
  const rigs = memoize("rig tables", { box: club.rigs, units: club.units }, ({ box, units }) =>
    rigTables(box, units),
  );
  const guide: Guide = {
    $schema: ADDRESS.schema("guide"),
    program: { name: "lake-season-guide", version: options.version },
    schemaVersion: SCHEMA_VERSION,
    club: clubFacts.of(club),
    season: club.season,
    asOf: club.asOf,
    baseUrl: options.baseUrl ?? null,
    window: forecast.window,
    lakes,
    lakesWithoutForecast: bareLakes(club.lakes, forecast),
    board: arrangeBoard(lakes, club.asOf),
    patterns: club.patterns.map((pattern) => composePattern(pattern, lakes)),
    reportSeasons: reportSeasons(lakes),
    when: options.forCards === true ? NO_DAYS : composeWhen(club, forecast, lakes),
    trips: club.trips.map((trip) =>
      composeTrip(trip, {
        forecast,
        lakes: guideLakes,
        box: club.rigs,
        plumb: rigs.plumb,
        units: club.units,
        patterns: club.patterns,
        timezone: club.timezone,
        content,
      }),
    ),
    rigs: {
      ...rigFacts.of(club.rigs),
      ...rigs,
    },
    regions: [...forecast.regions],
    reporting: forecast.reporting,
    backtest: options.forCards === true ? null : backtest(club.lakes, club.season, memoize, SHOWN_SCORES),
    clearDays:
      options.forCards === true ? null : memoize("end of turnover", turnoverRecords(club), scoreClearDays),
    cautions: content.cautions.map((caution) => ({ ...caution, when: [...caution.when] })),
    chapters: content.chapters.map(composePage),
    pages: club.pages.map(composePage),
  };
  return { guide, problems: [...placeProblems, ...rigProblems, ...forecast.doubts] };
}
