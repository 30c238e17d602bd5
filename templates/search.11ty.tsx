import type { Guide } from "../build/guide/guide-schema.ts";
import { ADDRESS } from "../build/model/addresses.ts";
import { Page } from "./_includes/layout.tsx";
import type { PageContext } from "./_includes/page-context.ts";
import type { Rendered } from "./_includes/page-template.ts";
import { inOneLine } from "./_includes/parts.tsx";
import { type SearchEntry, searchEntries } from "./_includes/search-entries.ts";

/** What the page itself shows of what search finds. */
type ListedEntry = Omit<SearchEntry, "text">;

const Entry = ({ entry, sheet }: { entry: ListedEntry; sheet: PageContext }) => (
  <li>
    <a href={sheet.to(entry.address)}>{entry.name}</a>{" "}
    <span class="small">{inOneLine([entry.kind, entry.about])}</span>
  </li>
);

interface Data {
  readonly guide: Guide;
}

const listedEntries = (guide: Guide): ListedEntry[] =>
  searchEntries(guide).map(({ name, kind, about, address }) => ({ name, kind, about, address }));

export const data = {
  permalink: () => ADDRESS.search,
  inputs: ({ guide }: Data) => ({ entries: listedEntries(guide) }),
} as const;

/** Search, which needs its script; and everything from A to Z, which needs none. */
export const render = ({ entries, sheet }: Rendered<typeof data>) => (
  <Page
    sheet={sheet}
    title="Search"
    description="Every lake, pattern, trip, report and chapter of the guide, from A to Z."
    styles={ADDRESS.searchStyles}
    scripts={[ADDRESS.searchEntries, ADDRESS.searchScript]}
  >
    <h1>Search</h1>
    <search>
      <form class="search" method="get" hidden>
        <label for="q">Lake, fly, food, colour, word</label>
        <input type="search" id="q" name="q" autocomplete="off" />
        <button type="submit">Search</button>
      </form>
    </search>
    <div id="count" role="status" />
    <div id="results" />
    <section id="all" aria-labelledby="a-to-z">
      <h2 id="a-to-z">All from A to Z</h2>
      <ul class="plain results">
        {entries.map((entry) => (
          <Entry entry={entry} sheet={sheet} />
        ))}
      </ul>
    </section>
  </Page>
);
