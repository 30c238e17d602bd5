import type { JSX } from "preact";
import { BoardPage } from "../../templates/board.tsx";
import { ChapterPage, NotFoundPage } from "../../templates/chapter-pages.tsx";
import { hasReports, hasRigs, listedTrips } from "../../templates/contents.ts";
import { LakePage } from "../../templates/lake/lake-page.tsx";
import { LakePlacePage } from "../../templates/lake/place/place-page.tsx";
import { LakeReportsPage } from "../../templates/lake/reports-page.tsx";
import { PatternPage, PatternsPage } from "../../templates/pattern-pages.tsx";
import { ReportsPage } from "../../templates/reports/reports-page.tsx";
import { ReportSeasonPage } from "../../templates/reports/season-page.tsx";
import { RigsPage } from "../../templates/rigs-page.tsx";
import { SearchPage } from "../../templates/search-page.tsx";
import { ADDRESS, type Sheet, sheetAt } from "../../templates/sheet.ts";
import { TripPage, TripsPage } from "../../templates/trip-pages.tsx";
import { WhenPage } from "../../templates/when-page.tsx";
import type { Guide } from "../guide/guide-schema.ts";

/** One page of the site: where it goes, and how it is drawn when its turn comes. */
export interface SitePage {
  readonly address: string;
  readonly draw: () => JSX.Element;
}

/** Every page of the guide, or one lake's own alone. */
export function sitePages(guide: Guide, only?: string): SitePage[] {
  const page = (address: string, draw: (sheet: Sheet) => JSX.Element): SitePage => ({
    address,
    draw: () => draw(sheetAt(guide, address)),
  });
  const lakes = guide.lakes
    .filter(({ slug }) => only === undefined || slug === only)
    .flatMap((lake) => [
      page(ADDRESS.lake(lake.slug), (sheet) => <LakePage lake={lake} sheet={sheet} />),
      page(ADDRESS.place(lake.slug), (sheet) => <LakePlacePage lake={lake} sheet={sheet} />),
      ...(lake.reports.length > 0
        ? [page(ADDRESS.lakeReports(lake.slug), (sheet) => <LakeReportsPage lake={lake} sheet={sheet} />)]
        : []),
    ]);
  if (only !== undefined) return lakes;
  return [
    page(ADDRESS.board, (sheet) => <BoardPage sheet={sheet} />),
    ...lakes,
    page(ADDRESS.when, (sheet) => <WhenPage sheet={sheet} />),
    ...(guide.patterns.length > 0 ? [page(ADDRESS.patterns, (sheet) => <PatternsPage sheet={sheet} />)] : []),
    ...guide.patterns.map((pattern) =>
      page(ADDRESS.pattern(pattern.slug), (sheet) => <PatternPage pattern={pattern} sheet={sheet} />),
    ),
    ...(hasReports(guide) ? [page(ADDRESS.reports, (sheet) => <ReportsPage sheet={sheet} />)] : []),
    ...guide.reportSeasons.map((season) =>
      page(ADDRESS.reportSeason(season.season), (sheet) => (
        <ReportSeasonPage season={season} sheet={sheet} />
      )),
    ),
    ...(hasRigs(guide) ? [page(ADDRESS.rigs, (sheet) => <RigsPage sheet={sheet} />)] : []),
    ...(listedTrips(guide).length > 0 ? [page(ADDRESS.trips, (sheet) => <TripsPage sheet={sheet} />)] : []),
    ...guide.trips.map((trip) =>
      page(ADDRESS.trip(trip.slug), (sheet) => <TripPage trip={trip} sheet={sheet} />),
    ),
    ...guide.chapters.map((chapter) =>
      page(ADDRESS.chapter(chapter.slug), (sheet) => <ChapterPage chapter={chapter} sheet={sheet} />),
    ),
    ...guide.pages.map((chapter) =>
      page(ADDRESS.clubPage(chapter.slug), (sheet) => <ChapterPage chapter={chapter} sheet={sheet} />),
    ),
    page(ADDRESS.search, (sheet) => <SearchPage sheet={sheet} />),
    page(ADDRESS.notFound, (sheet) => <NotFoundPage sheet={sheet} />),
  ];
}
