import type { BareLake } from "../build/guide/guide-schema.ts";
import { ADDRESS, CARD } from "../build/model/addresses.ts";
import { Launch } from "./_includes/lake/launch.tsx";
import { Page } from "./_includes/layout.tsx";
import type { Rendered } from "./_includes/page-template.ts";
import { Harmless, Section } from "./_includes/parts.tsx";

interface Data {
  readonly lake: BareLake;
}

export const data = {
  pagination: { data: "guide.lakesWithoutForecast", size: 1, alias: "lake" },
  permalink: ({ lake }: Data) => ADDRESS.lake(lake.slug),
  inputs: ({ lake }: Data) => ({ lake }),
} as const;

/** A lake without a forecast: why, and what its water says. */
export const render = ({ lake, sheet }: Rendered<typeof data>) => (
  <Page sheet={sheet} title={lake.name} description={lake.why}>
    <h1>{lake.name}</h1>
    {lake.summary === null ? null : <p>{lake.summary}</p>}
    <p>{lake.why}</p>
    <Launch lake={lake} sheet={sheet} />
    {lake.hazards.length === 0 ? null : (
      <Section title="Hazards" id="hazards">
        <ul>
          {lake.hazards.map((hazard) => (
            <li>{hazard}</li>
          ))}
        </ul>
      </Section>
    )}
    {lake.rules === null ? null : (
      <Section title="Rules" id="rules">
        <p>{lake.rules.text}</p>
      </Section>
    )}
    {lake.notes === null ? null : (
      <Section title="Notes" id="notes">
        <Harmless class="prose" html={lake.notes} />
      </Section>
    )}
    <Section title="To take along" id="take">
      <p>
        <a href={sheet.to(ADDRESS.card(CARD.launch(lake.slug)))}>Launch card to print</a> (PDF)
      </p>
    </Section>
  </Page>
);
