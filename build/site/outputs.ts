import { hasChapter, hasReports, listedTrips } from "../guide/guide-contents.ts";
import type { Guide } from "../guide/guide-schema.ts";
import { allFiles, printAddresses, printedOf, printedTrip, tripFiles } from "../guide/print-files.ts";
import { ADDRESS } from "../model/addresses.ts";
import type { SitePage } from "./pages.ts";

/** One file of a guide. */
export interface Output {
  readonly address: string;
  readonly kind: "page" | "card" | "data" | "asset";
  /**
   * True where links lead to it from the board on: it is saved on phones and packed in the archive. Nothing leads to what
   * belongs to an unlisted trip, nor to what only programs ask for.
   */
  readonly listed: boolean;
}

type Outputs = readonly Output[];
const outputs = (kind: Output["kind"], listed: boolean, ...addresses: readonly string[]): Outputs =>
  addresses.map((address) => ({ address, kind, listed }));

function cardOutputs(guide: Guide): Outputs {
  const listed = printAddresses(allFiles(printedOf(guide), guide));
  const unlisted = guide.trips.filter((trip) => trip.unlisted).map(printedTrip);
  return [
    ...outputs("card", true, ...listed),
    ...outputs("card", false, ...printAddresses(unlisted.flatMap(tripFiles))),
  ];
}

function dataOutputs(guide: Guide, schemas: readonly string[]): Outputs {
  const { lakes, trips, baseUrl } = guide;
  return [
    ...outputs("data", true, ADDRESS.data, ...lakes.map(({ slug }) => ADDRESS.calendar(slug))),
    ...lakes
      .filter(({ place }) => place.map !== null)
      .flatMap(({ slug }) => outputs("data", true, ADDRESS.map(slug), ADDRESS.marks(slug))),
    ...trips.flatMap(({ slug, unlisted }) => outputs("data", !unlisted, ADDRESS.tripCalendar(slug))),
    ...(hasReports(guide) ? outputs("data", true, ADDRESS.reportsFeed) : []),
    ...outputs("data", false, ADDRESS.offlineFiles, ...schemas.map(ADDRESS.schema)),
    ...(baseUrl === null ? [] : outputs("data", false, ADDRESS.sitemap)),
  ];
}

function assetOutputs(guide: Guide): Outputs {
  const { styles, searchStyles, words, today, glare, share, offline } = ADDRESS;
  const { searchEntries, searchScript, manifest, icon, textFont, boldFont } = ADDRESS;
  const onEveryPage = [styles, words, today, glare, share, offline, manifest, icon, textFont, boldFont];
  const pictures = [ADDRESS.board, ...guide.lakes.map(({ slug }) => ADDRESS.lake(slug))];
  return [
    ...outputs("asset", true, ...onEveryPage, searchStyles, searchEntries, searchScript),
    ...outputs("asset", listedTrips(guide).length > 0, ADDRESS.ticks),
    ...outputs("asset", hasChapter(guide, "about"), ADDRESS.fontLicence, ADDRESS.notices),
    ...outputs("asset", false, ADDRESS.offlineWorker),
    ...(guide.baseUrl === null ? [] : outputs("asset", false, ...pictures.map(ADDRESS.linkPicture))),
  ];
}

/**
 * Every file of a whole guide, known before any is written, but for what the club's own templates and static files add.
 * @param pages as `sitePages` lists them
 * @param schemas the kinds of JSON Schemas that are published
 */
export const guideOutputs = (
  guide: Guide,
  pages: readonly SitePage[],
  schemas: readonly string[] = [],
): Outputs => [
  ...pages.flatMap(({ address, listed }) => outputs("page", listed, address)),
  ...cardOutputs(guide),
  ...dataOutputs(guide, schemas),
  ...assetOutputs(guide),
];
