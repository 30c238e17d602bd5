import type { JSX } from "preact";
import {
  ADDRESS,
  hasReports,
  hasRigs,
  listedTrips,
  type PageContext,
  pageContextAt,
  pageGuide,
} from "../../templates/_includes/page-context.ts";
import { printedOf } from "../../templates/_includes/print-files.ts";
import { searchEntries } from "../../templates/_includes/search-entries.ts";
import { type BoardLake, BoardPage } from "../../templates/board.tsx";
import { ChapterPage, NotFoundPage } from "../../templates/chapter.tsx";
import { LakePage } from "../../templates/lake.tsx";
import { LakePlacePage } from "../../templates/lake-place.tsx";
import { LakeReportsPage } from "../../templates/lake-reports.tsx";
import { PatternPage, PatternsPage } from "../../templates/patterns.tsx";
import { ReportSeasonPage } from "../../templates/report-season.tsx";
import { type ReportedLake, ReportsPage } from "../../templates/reports.tsx";
import { RigsPage } from "../../templates/rigs.tsx";
import { type ListedEntry, SearchPage } from "../../templates/search.tsx";
import { TripPage, TripsPage } from "../../templates/trips.tsx";
import { WhenPage } from "../../templates/when.tsx";
import type { Guide, GuideLake, GuideTrip } from "../guide/guide-schema.ts";
import type { ListedLake } from "../guide/report-seasons.ts";
import type { Inputs } from "../model/memoize.ts";

/** One page of the site: where it goes, what it is made of, and how it is drawn of that alone when its turn comes. */
export interface SitePage {
  readonly address: string;
  readonly needs: Inputs;
  readonly draw: () => JSX.Element;
}

const boardLake = ({ slug, name, now, bestDays, status, daily, marks, access }: GuideLake): BoardLake => ({
  slug,
  name,
  now,
  bestDays,
  status,
  daily,
  marks,
  access,
});

const reportedLake = ({ slug, name, reports }: GuideLake): ReportedLake => ({
  slug,
  name,
  reports: reports.length,
});

const listedLake = ({ slug, name, position, reports }: GuideLake): ListedLake => ({
  slug,
  name,
  position,
  reports,
});

/** The ways to the lakes that a trip may go to. */
const roadsOf = ({ pick }: GuideTrip, lakes: readonly GuideLake[]) =>
  lakes
    .filter(({ slug }) => [pick?.slug, pick?.fallback?.slug].includes(slug))
    .map(({ slug, access }) => ({ slug, access }));

const listedEntries = (guide: Guide): ListedEntry[] =>
  searchEntries(guide).map(({ name, kind, about, address }) => ({ name, kind, about, address }));

/** Every page of the guide, or one lake's own alone. */
export function sitePages(guide: Guide, only?: string): SitePage[] {
  const frame = pageGuide(guide);
  const page = <Own extends Inputs>(
    address: string,
    own: Own,
    draw: (own: Own, sheet: PageContext) => JSX.Element,
  ): SitePage => ({
    address,
    needs: { ...own, guide: frame, address },
    draw: () => draw(own, pageContextAt(frame, address)),
  });
  const lakes = guide.lakes
    .filter(({ slug }) => only === undefined || slug === only)
    .flatMap((lake) => [
      page(ADDRESS.lake(lake.slug), { lake }, (own, sheet) => <LakePage {...own} sheet={sheet} />),
      page(ADDRESS.place(lake.slug), { lake }, (own, sheet) => <LakePlacePage {...own} sheet={sheet} />),
      ...(lake.reports.length > 0
        ? [
            page(ADDRESS.lakeReports(lake.slug), { lake }, (own, sheet) => (
              <LakeReportsPage {...own} sheet={sheet} />
            )),
          ]
        : []),
    ]);
  if (only !== undefined) return lakes;
  const { board, when, patterns, backtest, reportSeasons } = guide;
  const trips = listedTrips(guide);
  const reporting = guide.lakes.filter(({ reports }) => reports.length > 0).map(listedLake);
  return [
    page(
      ADDRESS.board,
      { board, lakes: guide.lakes.map(boardLake), occasions: when.occasions, trips },
      (own, sheet) => <BoardPage {...own} sheet={sheet} />,
    ),
    ...lakes,
    page(ADDRESS.when, { when }, (own, sheet) => <WhenPage {...own} sheet={sheet} />),
    ...(patterns.length > 0
      ? [page(ADDRESS.patterns, { patterns }, (own, sheet) => <PatternsPage {...own} sheet={sheet} />)]
      : []),
    ...patterns.map((pattern) =>
      page(ADDRESS.pattern(pattern.slug), { pattern }, (own, sheet) => (
        <PatternPage {...own} sheet={sheet} />
      )),
    ),
    ...(hasReports(guide)
      ? [
          page(
            ADDRESS.reports,
            { seasons: reportSeasons, lakes: guide.lakes.map(reportedLake) },
            (own, sheet) => <ReportsPage {...own} sheet={sheet} />,
          ),
        ]
      : []),
    ...reportSeasons.map((season) =>
      page(ADDRESS.reportSeason(season.season), { season, lakes: reporting }, (own, sheet) => (
        <ReportSeasonPage {...own} sheet={sheet} />
      )),
    ),
    ...(hasRigs(guide) ? [page(ADDRESS.rigs, {}, (_, sheet) => <RigsPage sheet={sheet} />)] : []),
    ...(trips.length > 0
      ? [page(ADDRESS.trips, { trips }, (own, sheet) => <TripsPage {...own} sheet={sheet} />)]
      : []),
    ...guide.trips.map((trip) =>
      page(ADDRESS.trip(trip.slug), { trip, roads: roadsOf(trip, guide.lakes) }, (own, sheet) => (
        <TripPage {...own} sheet={sheet} />
      )),
    ),
    ...guide.chapters.map((chapter) =>
      page(
        ADDRESS.chapter(chapter.slug),
        {
          chapter,
          backtest: chapter.slug === "methods" ? backtest : null,
          printed: chapter.slug === "printing" ? printedOf(guide) : null,
        },
        (own, sheet) => <ChapterPage {...own} sheet={sheet} />,
      ),
    ),
    ...guide.pages.map((chapter) =>
      page(ADDRESS.clubPage(chapter.slug), { chapter }, (own, sheet) => (
        <ChapterPage {...own} sheet={sheet} />
      )),
    ),
    page(ADDRESS.search, { entries: listedEntries(guide) }, (own, sheet) => (
      <SearchPage {...own} sheet={sheet} />
    )),
    page(ADDRESS.notFound, {}, (_, sheet) => <NotFoundPage sheet={sheet} />),
  ];
}
