import type { GuideLake } from "../build/guide/guide-schema.ts";
import { ADDRESS } from "../build/model/addresses.ts";
import { IceLeft, Launch, WarmWater } from "./_includes/lake/launch.tsx";
import { RigSection } from "./_includes/lake/plan.tsx";
import { SearchSection } from "./_includes/lake/search-plan.tsx";
import { Page } from "./_includes/layout.tsx";
import type { Rendered } from "./_includes/page-template.ts";
import { Cautions, cautionsFor } from "./_includes/parts.tsx";

interface Data {
  readonly lake: GuideLake;
}

export const data = {
  pagination: { data: "guide.lakes", size: 1, alias: "lake" },
  permalink: ({ lake }: Data) => ADDRESS.launch(lake.slug),
  inputs: ({ lake }: Data) => ({ lake }),
} as const;

/** What a lake's readings at the launch say, how warm it may be, and where to begin. */
export const render = ({ lake, sheet }: Rendered<typeof data>) => (
  <Page
    sheet={sheet}
    title={`${lake.name}, at the launch`}
    description={`${lake.name}: what its surface temperature and clarity say at the launch, and where to begin.`}
  >
    <h1>{lake.name}: at the launch</h1>
    <p>
      <a href={sheet.to(ADDRESS.lake(lake.slug))}>Forecast, flies and rigs for {lake.name}</a>
    </p>
    <IceLeft lake={lake} sheet={sheet} />
    <Launch lake={lake} sheet={sheet} />
    <Cautions cautions={cautionsFor(sheet.guide, lake.now.state)} sheet={sheet} />
    <RigSection lake={lake} sheet={sheet} />
    <WarmWater lake={lake} sheet={sheet} />
    <SearchSection lake={lake} sheet={sheet} />
  </Page>
);
