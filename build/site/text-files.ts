import { renderToString } from "preact-render-to-string";
import { ADDRESS } from "../../templates/_includes/page-context.ts";
import { cautionsFor } from "../../templates/_includes/parts.tsx";
import { searchEntries } from "../../templates/_includes/search-entries.ts";
import { boardsAheadWords } from "../../templates/board.tsx";
import { daysAhead, stateText } from "../guide/board.ts";
import type { Guide } from "../guide/guide-schema.ts";
import { weekdayDayMonth } from "../model/calendar.ts";
import { DAY_STATES, STATE_WORDS } from "../model/phase.ts";
import { type SitePage, sitePages } from "./pages.tsx";

/** A page as it is written. */
export const pageText = ({ draw }: SitePage): string => `<!DOCTYPE html>\n${renderToString(draw())}\n`;

/** A file that is neither a page nor the same for every club. */
interface DataFile {
  readonly address: string;
  readonly text: string;
}

/** A script that gives a value a name: unlike data, a page opened from a disk may load it. */
const constant = (name: string, value: unknown): string => `const ${name} = ${JSON.stringify(value)};\n`;

/** What the pages' own script says of today, by day and by state. */
const words = (guide: Guide) => ({
  days: Object.fromEntries(daysAhead(guide).map((day) => [day, weekdayDayMonth(day)])),
  states: DAY_STATES.map((state) => ({
    state,
    name: STATE_WORDS[state].name,
    words: stateText(state),
    cautions: cautionsFor(guide, state).map(({ short, agency }) => ({ short, agency })),
  })),
});

/** What a phone needs to keep the guide beside its programs (W3C Web Application Manifest). */
const manifest = ({ club, season }: Guide) => ({
  name: `${club.name}, season ${season}`,
  short_name: club.name,
  lang: "en",
  id: ".",
  start_url: ADDRESS.board,
  scope: ".",
  display: "minimal-ui",
  icons: [{ src: ADDRESS.icon, type: "image/svg+xml", sizes: "any" }],
});

/** What the pages load besides styles, type and program. */
export const dataFiles = (guide: Guide): DataFile[] => [
  { address: ADDRESS.words, text: constant("guideWords", words(guide)) },
  { address: ADDRESS.boards, text: constant("guideBoards", boardsAheadWords(guide)) },
  { address: ADDRESS.searchEntries, text: constant("searchEntries", searchEntries(guide)) },
  { address: ADDRESS.manifest, text: `${JSON.stringify(manifest(guide))}\n` },
];

/**
 * The pages of a guide and what its own pages load, each drawn when it is asked for: to look at before anything is written.
 * @returns what gives the text of a file by its address inside the guide, such as "lakes/ember/index.html"; undefined for
 * what is no page, and for what is the same for every guide
 */
export function liveFiles(guide: Guide): (address: string) => string | undefined {
  let pages: ReadonlyMap<string, SitePage> | undefined;
  let data: ReadonlyMap<string, string> | undefined;
  return (address) => {
    pages ??= new Map(sitePages(guide).map((page) => [page.address, page]));
    const page = pages.get(address);
    if (page !== undefined) return pageText(page);
    data ??= new Map(dataFiles(guide).map((file) => [file.address, file.text]));
    return data.get(address);
  };
}
