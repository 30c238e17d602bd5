import { hasReports, listedTrips } from "../../build/guide/guide-contents.ts";
import { type GuideFrame, guideFrame } from "../../build/guide/guide-frame.ts";
import type { Guide, GuidePage } from "../../build/guide/guide-schema.ts";

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
  /** HTML of the club's own partials, by name. */
  readonly partials?: Readonly<Record<string, string>> | undefined;
  /** From this page to another address; works on a disk and from any folder of a server. */
  readonly to: (address: string) => string;
}

/** The page of `guide` that stands at `address`. */
export function pageContextAt(guide: PageGuide, address: string): PageContext {
  const up = "../".repeat(address.split("/").length - 1);
  return { guide, address, to: (target) => `${up}${encodeURI(target)}` };
}
