import { type GuideFrame, guideFrame } from "../build/guide/guide-frame.ts";
import type { Guide, GuidePage } from "../build/guide/guide-schema.ts";
import { hasReports, listedTrips } from "./contents.ts";

type Titled = Pick<GuidePage, "slug" | "title">;

/** What every page sees of the guide: its frame, and which pages there are to link to. */
export interface SheetGuide extends GuideFrame {
  readonly chapters: readonly Titled[];
  readonly pages: readonly Titled[];
  readonly hasTrips: boolean;
  readonly hasPatterns: boolean;
  readonly hasReports: boolean;
}

/** What every page sees of this guide. What a page is about it is given besides. */
export function sheetGuide(guide: Guide): SheetGuide {
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
export interface Sheet {
  readonly guide: SheetGuide;
  /** Inside the guide, such as "lakes/ember/index.html". */
  readonly address: string;
  /** From this page to another address; works on a disk and from any folder of a server. */
  readonly to: (address: string) => string;
}

/** The page of `guide` that stands at `address`. */
export function sheetAt(guide: SheetGuide, address: string): Sheet {
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
