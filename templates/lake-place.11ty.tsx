import type { GuideLake } from "../build/guide/guide-schema.ts";
import { ADDRESS } from "../build/model/addresses.ts";
import { MapSection } from "./_includes/lake/map.tsx";
import { LightSection, placeContents } from "./_includes/lake/place.tsx";
import { WaterSection } from "./_includes/lake/water.tsx";
import { AnchorSection, WindSection } from "./_includes/lake/wind.tsx";
import { Page } from "./_includes/layout.tsx";
import type { Rendered } from "./_includes/page-template.ts";

interface Data {
  readonly lake: GuideLake;
}

export const data = {
  pagination: { data: "guide.lakes", size: 1, alias: "lake" },
  permalink: ({ lake }: Data) => ADDRESS.place(lake.slug),
  inputs: ({ lake }: Data) => ({ lake }),
} as const;

/** One lake as a place: what does not change with the forecast, kept off the page that is opened first. */
export function render({ lake, sheet }: Rendered<typeof data>) {
  const contents = `${lake.name}: ${placeContents(lake)}`;
  return (
    <Page
      sheet={sheet}
      title={`${lake.name}, the place`}
      description={`${contents}. What does not change with the forecast.`}
    >
      <h1>{contents}</h1>
      <p>
        <a href={sheet.to(ADDRESS.lake(lake.slug))}>Forecast, flies and rigs for {lake.name}</a>
      </p>
      <MapSection lake={lake} sheet={sheet} />
      <WindSection lake={lake} sheet={sheet} />
      <AnchorSection lake={lake} sheet={sheet} />
      <LightSection lake={lake} />
      <WaterSection lake={lake} sheet={sheet} />
    </Page>
  );
}
