import { elsewhereThan } from "../build/guide/elsewhere.ts";
import type { Guide, GuideLake } from "../build/guide/guide-schema.ts";
import { ADDRESS, CARD } from "../build/model/addresses.ts";
import { Diet } from "./_includes/lake/diet.tsx";
import { Glance, lakeInBrief } from "./_includes/lake/glance.tsx";
import { hasPastSprings } from "./_includes/lake/past-forecasts.tsx";
import { Hazards, lakeLine, Place, PlaceInBrief, placeContents, Rules } from "./_includes/lake/place.tsx";
import { Plan } from "./_includes/lake/plan.tsx";
import { Dates, Evidence, SpringStrip } from "./_includes/lake/season.tsx";
import { Page } from "./_includes/layout.tsx";
import type { Rendered } from "./_includes/page-template.ts";
import { Fold, Harmless } from "./_includes/parts.tsx";
import { LeaderBoards } from "./_includes/rigs/gear-tables.tsx";

interface Data {
  readonly guide: Guide;
  readonly lake: GuideLake;
}

export const data = {
  pagination: { data: "guide.lakes", size: 1, alias: "lake" },
  permalink: ({ lake }: Data) => ADDRESS.lake(lake.slug),
  inputs: ({ guide, lake }: Data) => ({ lake, elsewhere: elsewhereThan(lake.slug, guide.when.occasions) }),
} as const;

/** Everything about one lake, what is decided on first. */
export function render({ lake, elsewhere, sheet }: Rendered<typeof data>) {
  const line = lakeLine(lake, sheet);
  return (
    <Page sheet={sheet} title={lake.name} description={lakeInBrief(lake)} isLake>
      <h1>{lake.name}</h1>
      <p class="small">
        {line === "" ? "" : `${line} · `}
        <a href={sheet.to(ADDRESS.place(lake.slug))}>{placeContents(lake)}</a>
      </p>
      {lake.summary === null ? null : <p>{lake.summary}</p>}
      <div class="top">
        <Glance lake={lake} elsewhere={elsewhere} sheet={sheet} />
        <SpringStrip lake={lake} sheet={sheet} />
      </div>
      <Dates lake={lake} sheet={sheet} />
      <p>
        <a href={sheet.to(ADDRESS.launch(lake.slug))}>
          At the launch: what temperature and clarity say
          {lake.search.length === 0 ? "" : ", and where to begin"}
        </a>
      </p>
      <Plan lake={lake} sheet={sheet} />
      <Diet lake={lake} sheet={sheet} />
      <LeaderBoards boards={lake.boards} sheet={sheet} />
      <Hazards sheet={sheet} />
      <Rules lake={lake} />
      <Place lake={lake} sheet={sheet} />
      <PlaceInBrief lake={lake} sheet={sheet} />
      <Evidence lake={lake} sheet={sheet} />
      {hasPastSprings(lake) ? (
        <p>
          <a href={sheet.to(ADDRESS.pastSprings(lake.slug))}>Past springs, as the guide would have said</a>
        </p>
      ) : null}
      {lake.notes === null ? null : (
        <Fold title="Notes" id="notes" answer="the club’s own">
          <Harmless class="prose" html={lake.notes} />
        </Fold>
      )}
      <Fold title="To take along" id="take" answer="cards, dates">
        <ul class="plain">
          <li>
            <a href={sheet.to(ADDRESS.card(lake.slug))}>
              {lake.place.map === null && lake.search.length === 0
                ? "Pocket card to print"
                : "Pocket cards to print"}
            </a>{" "}
            (PDF)
          </li>
          <li>
            <a href={sheet.to(ADDRESS.card(CARD.launch(lake.slug)))}>Launch card to print</a> (PDF)
          </li>
          <li>
            <a href={sheet.to(ADDRESS.calendar(lake.slug))}>Dates for your calendar</a> (iCalendar)
          </li>
        </ul>
      </Fold>
    </Page>
  );
}
