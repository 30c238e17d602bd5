import type { Guide, GuidePattern } from "../build/guide/guide-schema.ts";
import { ADDRESS } from "../build/model/addresses.ts";
import { Page } from "./_includes/layout.tsx";
import type { PageContext } from "./_includes/page-context.ts";
import type { Rendered } from "./_includes/page-template.ts";
import { capital, inOneLine, sizesText } from "./_includes/parts.tsx";
import { boxText, phasesText } from "./_includes/pattern-words.ts";

const PatternRow = ({ pattern, sheet }: { pattern: GuidePattern; sheet: PageContext }) => (
  <li>
    <h2>
      <a href={sheet.to(ADDRESS.pattern(pattern.slug))}>{pattern.name}</a>
    </h2>
    <p>{inOneLine([capital(pattern.imitates), sizesText(pattern.sizes), pattern.colours.join(", ")])}</p>
    <p class="small">{inOneLine([phasesText(pattern.phases), `${boxText(pattern)} in the box`])}</p>
  </li>
);

interface Data {
  readonly guide: Guide;
}

export const data = {
  permalink: ({ guide }: Data) => guide.patterns.length > 0 && ADDRESS.patterns,
  inputs: ({ guide }: Data) => ({ patterns: guide.patterns }),
} as const;

/** All patterns of the club. */
export const render = ({ patterns, sheet }: Rendered<typeof data>) => (
  <Page
    sheet={sheet}
    title="Patterns"
    description="The club’s flies: what each imitates, when it is fished, and how many are in the box."
  >
    <h1>Patterns</h1>
    <ul class="patterns">
      {patterns.map((pattern) => (
        <PatternRow pattern={pattern} sheet={sheet} />
      ))}
    </ul>
  </Page>
);
