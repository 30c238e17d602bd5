import { cautionsFor } from "../../templates/_includes/parts.tsx";
import { searchEntries } from "../../templates/_includes/search-entries.ts";
import { daysAhead, stateText } from "../guide/board.ts";
import type { Guide } from "../guide/guide-schema.ts";
import { ADDRESS } from "../model/addresses.ts";
import { weekdayDayMonth } from "../model/calendar.ts";
import { DAY_STATES, STATE_WORDS } from "../model/phase.ts";

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
    verdict: STATE_WORDS[state].verdict,
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
  { address: ADDRESS.searchEntries, text: constant("searchEntries", searchEntries(guide)) },
  { address: ADDRESS.manifest, text: `${JSON.stringify(manifest(guide))}\n` },
];
