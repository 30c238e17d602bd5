import type { GuideLake } from "../build/guide/guide-schema.ts";
import { ADDRESS } from "../build/model/addresses.ts";
import { hasPastSprings, PastForecasts } from "./_includes/lake/past-forecasts.tsx";
import { Page } from "./_includes/layout.tsx";
import type { Rendered } from "./_includes/page-template.ts";

interface Data {
  readonly lake: GuideLake;
}

export const data = {
  pagination: { data: "guide.lakes", size: 1, alias: "lake" },
  permalink: ({ lake }: Data) => hasPastSprings(lake) && ADDRESS.pastSprings(lake.slug),
  inputs: ({ lake }: Data) => ({ lake }),
} as const;

/** How this guide's own forecasts of a lake's past springs would have come out. */
export const render = ({ lake, sheet }: Rendered<typeof data>) => (
  <Page
    sheet={sheet}
    title={`${lake.name}, past springs`}
    description={`${lake.name}: what the guide would have said of past springs, and the day the lake opened.`}
  >
    <h1>{lake.name}: past springs</h1>
    <p>
      <a href={sheet.to(ADDRESS.lake(lake.slug))}>Forecast, flies and rigs for {lake.name}</a>
    </p>
    <PastForecasts past={lake.pastForecasts} />
  </Page>
);
