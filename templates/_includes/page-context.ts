import { type GuideFrame, guideFrame } from "../../build/guide/guide-frame.ts";
import type { Guide, GuidePage, GuideTrip } from "../../build/guide/guide-schema.ts";

// What a guide holds decides which pages it has and which links lead there.

/** Trips that everybody may see. */
export const listedTrips = ({ trips }: Pick<Guide, "trips">): GuideTrip[] =>
  trips.filter(({ unlisted }) => !unlisted);

/** True where there is anything to say about rigs. */
export const hasRigs = ({ rigs }: Pick<Guide, "rigs">): boolean =>
  rigs.tippet.length + rigs.leaders.length + rigs.lines.length > 0;

/** True where somebody reported anything. */
export const hasReports = ({ reportSeasons }: Pick<Guide, "reportSeasons">): boolean =>
  reportSeasons.length > 0;

/** True where the guide has a standing chapter of that name, such as "methods". */
export const hasChapter = (
  { chapters }: { readonly chapters: readonly Pick<GuidePage, "slug">[] },
  slug: string,
): boolean => chapters.some((chapter) => chapter.slug === slug);

type Titled = Pick<GuidePage, "slug" | "title">;

/** What every page sees of the guide: its frame, and which pages there are to link to. */
export interface PageGuide extends GuideFrame {
  readonly chapters: readonly Titled[];
  readonly pages: readonly Titled[];
  readonly hasTrips: boolean;
  readonly hasPatterns: boolean;
  readonly hasReports: boolean;
}

/** What every page sees of this guide. What a page is about it is given besides. */
export function pageGuide(guide: Guide): PageGuide {
  const titles = (pages: readonly GuidePage[]): Titled[] => pages.map(({ slug, title }) => ({ slug, title }));
  return {
    ...guideFrame(guide),
    chapters: titles(guide.chapters),
    pages: titles(guide.pages),
    hasTrips: listedTrips(guide).length > 0,
    hasPatterns: guide.patterns.length > 0,
    hasReports: hasReports(guide),
  };
}

/** One page on its way out: what it sees of the guide, where in the guide it stands, and how it links to the rest. */
export interface PageContext {
  readonly guide: PageGuide;
  /** Inside the guide, such as "lakes/ember/index.html". */
  readonly address: string;
  /** From this page to another address; works on a disk and from any folder of a server. */
  readonly to: (address: string) => string;
}

/** The page of `guide` that stands at `address`. */
export function pageContextAt(guide: PageGuide, address: string): PageContext {
  const up = "../".repeat(address.split("/").length - 1);
  return { guide, address, to: (target) => `${up}${encodeURI(target)}` };
}

/** Where each page stands; every link is made from these. */
export const ADDRESS = {
  board: "index.html",
  lake: (slug: string): string => `lakes/${slug}/index.html`,
  place: (slug: string): string => `lakes/${slug}/place/index.html`,
  lakeReports: (slug: string): string => `lakes/${slug}/reports/index.html`,
  marks: (slug: string): string => `lakes/${slug}/marks.gpx`,
  map: (slug: string): string => `lakes/${slug}/map.geojson`,
  calendar: (slug: string): string => `lakes/${slug}/season.ics`,
  card: (slug: string): string => `cards/${slug}.pdf`,
  patterns: "patterns/index.html",
  pattern: (slug: string): string => `patterns/${slug}/index.html`,
  rigs: "rigs/index.html",
  trips: "trips/index.html",
  trip: (slug: string): string => `trips/${slug}/index.html`,
  tripCalendar: (slug: string): string => `trips/${slug}/trip.ics`,
  reports: "reports/index.html",
  reportSeason: (season: number): string => `reports/${season}/index.html`,
  reportsFeed: "reports/feed.xml",
  when: "when/index.html",
  chapter: (slug: string): string => `${slug}/index.html`,
  clubPage: (slug: string): string => `pages/${slug}/index.html`,
  notFound: "404.html",
  search: "search/index.html",
  data: "guide.json",
  sitemap: "sitemap.xml",
  manifest: "manifest.webmanifest",
  offlineWorker: "offline-worker.js",
  offlineFiles: "offline-files.js",
  linkPicture: (page: string): string => page.replace(/index\.html$/, "link.png"),
  styles: "assets/site.css",
  glare: "assets/glare.js",
  ticks: "assets/ticks.js",
  words: "assets/words.js",
  boards: "assets/boards.js",
  today: "assets/today.js",
  offline: "assets/offline.js",
  share: "assets/share.js",
  searchEntries: "assets/search-entries.js",
  searchStyles: "assets/search.css",
  searchScript: "assets/search.js",
  icon: "assets/icon.svg",
  textFont: "assets/text.woff2",
  boldFont: "assets/bold.woff2",
  fontLicence: "assets/font-licence.txt",
  notices: "notices.txt",
} as const;
