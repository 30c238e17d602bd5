import type { GuideLake } from "../../../build/guide/guide-schema.ts";
import { Page } from "../../layout.tsx";
import { ADDRESS, type Sheet } from "../../sheet.ts";
import { AnchorSection } from "./anchor.tsx";
import { placeContents } from "./in-brief.tsx";
import { LightSection } from "./light.tsx";
import { MapSection } from "./map-section.tsx";
import { WaterSection } from "./water.tsx";
import { WindSection } from "./wind.tsx";

/** One lake as a place: what does not change with the forecast, kept off the page that is opened first. */
export function LakePlacePage({ lake, sheet }: { lake: GuideLake; sheet: Sheet }) {
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
