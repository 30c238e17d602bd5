// Where every file of a guide stands, relative to its folder: the one home of output paths.

export const ADDRESS = {
  board: "index.html",
  lake: (slug: string): string => `lakes/${slug}/index.html`,
  place: (slug: string): string => `lakes/${slug}/place/index.html`,
  launch: (slug: string): string => `lakes/${slug}/launch/index.html`,
  pastSprings: (slug: string): string => `lakes/${slug}/past-springs/index.html`,
  lakeReports: (slug: string): string => `lakes/${slug}/reports/index.html`,
  marks: (slug: string): string => `lakes/${slug}/marks.gpx`,
  map: (slug: string): string => `lakes/${slug}/map.geojson`,
  calendar: (slug: string): string => `lakes/${slug}/season.ics`,
  /** @param name one of {@link CARD} */
  card: (name: string): string => `cards/${name}.pdf`,
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
  schema: (kind: string): string => `schema/${kind}.schema.json`,
  sitemap: "sitemap.xml",
  manifest: "manifest.webmanifest",
  offlineWorker: "offline-worker.js",
  offlineFiles: "offline-files.js",
  /** Open Graph image of a page. */
  linkPicture: (page: string): string => `${folderOf(page)}link.png`,
  styles: "assets/site.css",
  glare: "assets/glare.js",
  ticks: "assets/ticks.js",
  words: "assets/words.js",
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
  /** The club's own files, copied as they are. */
  static: (file: string): string => `static/${file}`,
} as const;

/** The folder of a page, as it stands in a web address: "lakes/ember/". */
export const folderOf = (page: string): string => page.replace(/index\.html$/, "");

/** File names of cards, without folder and ending. Those marked as sheets come in one file for each kind of paper. */
export const CARD = {
  lake: (slug: string): string => slug,
  /** Sheets. @param volume from 1 on; null where one file holds every lake */
  lakes: (volume: number | null): string => (volume === null ? "sheets" : `sheets-${volume}`),
  launch: (slug: string): string => `${slug}-launch`,
  plumb: "plumb-a6",
  rig: "rig-a6",
  rigIndexCard: "rig-5x3",
  rigDrawings: "rig-drawings-a6",
  /** Sheets. */
  rigs: "rigs",
  /** Sheets. */
  labels: "labels",
  reportSlip: "report-slip-a6",
  /** Sheets. */
  reportSlips: "report-slips",
  /** Alone, and sheets of it and the box card. */
  trip: (slug: string): string => `trip-${slug}`,
  box: (slug: string): string => `box-${slug}`,
  /** Sheets. */
  tripLabels: (slug: string): string => `labels-${slug}`,
} as const;

/** The kinds of paper that sheets are made for. */
export const PAPERS = ["a4", "letter"] as const;
export type Paper = (typeof PAPERS)[number];

/** The file name of sheets on one kind of paper, such as "sheets-2-a4". */
export const onPaper = (sheets: string, paper: Paper): string => `${sheets}-${paper}`;
