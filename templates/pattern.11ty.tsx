import type { GuidePattern } from "../build/guide/guide-schema.ts";
import { ADDRESS } from "../build/model/addresses.ts";
import { rounded } from "../build/model/units.ts";
import { Page } from "./_includes/layout.tsx";
import type { PageContext } from "./_includes/page-context.ts";
import type { Rendered } from "./_includes/page-template.ts";
import { capital, Fact, Harmless, inOneLine, Section, sizesText } from "./_includes/parts.tsx";
import { phasesText } from "./_includes/pattern-words.ts";

const Dressing = ({ pattern }: { pattern: GuidePattern }) => (
  <Section title="Dressing" id="dressing">
    <dl>
      {pattern.dressing.map(({ part, material }) => (
        <Fact name={capital(part)}>{material}</Fact>
      ))}
    </dl>
  </Section>
);

const Box = ({ pattern }: { pattern: GuidePattern }) => (
  <Section title="In the box" id="box">
    {pattern.stock.length === 0 ? (
      <p>None tied.</p>
    ) : (
      <table class="narrow">
        <thead>
          <tr>
            <th scope="col">Size</th>
            <th scope="col">Colour</th>
            <th scope="col">Tied</th>
          </tr>
        </thead>
        <tbody>
          {pattern.stock.map(({ size, colour, count }) => (
            <tr>
              <th scope="row">{size}</th>
              <td>{colour}</td>
              <td>{count}</td>
            </tr>
          ))}
        </tbody>
      </table>
    )}
  </Section>
);

const Where = ({ pattern, sheet }: { pattern: GuidePattern; sheet: PageContext }) => (
  <Section title="Where" id="where">
    <ul>
      {pattern.lakes.map(({ slug, name, phases }) => (
        <li>
          <a href={sheet.to(ADDRESS.lake(slug))}>{name}</a>: {phasesText(phases).toLowerCase()}
        </li>
      ))}
    </ul>
  </Section>
);

/** One pattern: what it is for, how it is tied, and where it is fished. */
interface Data {
  readonly pattern: GuidePattern;
}

export const data = {
  pagination: { data: "guide.patterns", size: 1, alias: "pattern" },
  permalink: ({ pattern }: Data) => ADDRESS.pattern(pattern.slug),
  inputs: ({ pattern }: Data) => ({ pattern }),
} as const;

export const render = ({ pattern, sheet }: Rendered<typeof data>) => (
  <Page
    sheet={sheet}
    title={pattern.name}
    description={`${pattern.name}: ${inOneLine([pattern.imitates, sizesText(pattern.sizes), phasesText(pattern.phases).toLowerCase()])}.`}
  >
    <h1>{pattern.name}</h1>
    <section class="glance" aria-label="At a glance">
      <dl>
        <Fact name="Imitates">
          <p class="big">{capital(pattern.imitates)}</p>
        </Fact>
        <Fact name="Sizes">
          {pattern.sizes.length === 0 ? null : <p class="big">{pattern.sizes.join(", ")}</p>}
        </Fact>
        <Fact name="Colours">{pattern.colours.join(", ")}</Fact>
        <Fact name="When">{phasesText(pattern.phases)}</Fact>
        <Fact name="How">{pattern.ways.map(capital).join(", ")}</Fact>
        <Fact name="Counts as">
          {pattern.flyClass},{" "}
          {pattern.mass_g === null ? "no mass written" : `${rounded(pattern.mass_g, 2)} g`}:{" "}
          <a href={`${sheet.to(ADDRESS.rigs)}#plumb`}>its row of the plumb table</a>
        </Fact>
        <Fact name="Water">{pattern.waters.length === 0 ? "any" : pattern.waters.join(", ")}</Fact>
      </dl>
    </section>
    {pattern.dressing.length === 0 ? null : <Dressing pattern={pattern} />}
    <Box pattern={pattern} />
    {pattern.lakes.length === 0 ? null : <Where pattern={pattern} sheet={sheet} />}
    {pattern.notes === null ? null : (
      <Section title="Notes" id="notes">
        <Harmless class="prose" html={pattern.notes} />
      </Section>
    )}
  </Page>
);
