import type { GuideLake } from "../../build/guide/guide-schema.ts";
import { Shot } from "../gear-tables.tsx";
import { Page } from "../layout.tsx";
import { LeaderBoards } from "../leader-boards.tsx";
import { Harmless, Section } from "../parts.tsx";
import { ADDRESS, type Sheet } from "../sheet.ts";
import { Diet } from "./diet.tsx";
import { Evidence } from "./evidence.tsx";
import { Glance, lakeInBrief } from "./glance.tsx";
import { PlaceInBrief } from "./place/in-brief.tsx";
import { Hazards, lakeLine, Place, Rules } from "./place.tsx";
import { Plan } from "./plan.tsx";
import { RigDrawn } from "./rig-section.tsx";
import { Dates, SpringStrip } from "./season.tsx";

/** Everything about one lake, what is decided on first. */
export function LakePage({ lake, sheet }: { lake: GuideLake; sheet: Sheet }) {
  const line = lakeLine(lake, sheet);
  return (
    <Page sheet={sheet} title={lake.name} description={lakeInBrief(lake)} isLake>
      <h1>{lake.name}</h1>
      {line === "" ? null : <p class="small">{line}</p>}
      {lake.summary === null ? null : <p>{lake.summary}</p>}
      <div class="top">
        <Glance lake={lake} sheet={sheet} />
        <SpringStrip lake={lake} sheet={sheet} />
      </div>
      <Dates lake={lake} sheet={sheet} />
      <Plan lake={lake} sheet={sheet} />
      <Diet lake={lake} sheet={sheet} />
      <RigDrawn lake={lake} sheet={sheet} />
      {lake.shot.rows.length === 0 ? null : (
        <Section title="Shot" id="shot">
          <Shot shot={lake.shot} sheet={sheet} />
        </Section>
      )}
      <LeaderBoards boards={lake.boards} sheet={sheet} />
      <Hazards lake={lake} sheet={sheet} />
      <Rules lake={lake} />
      <Place lake={lake} sheet={sheet} />
      <PlaceInBrief lake={lake} sheet={sheet} />
      <Evidence lake={lake} sheet={sheet} />
      {lake.notes === null ? null : (
        <Section title="Notes" id="notes">
          <Harmless class="prose" html={lake.notes} />
        </Section>
      )}
      <Section title="To take along" id="take">
        <ul class="plain">
          <li>
            <a href={sheet.to(ADDRESS.card(lake.slug))}>
              {lake.place.map === null ? "Pocket card to print" : "Pocket card and map card to print"}
            </a>{" "}
            (PDF)
          </li>
          <li>
            <a href={sheet.to(ADDRESS.calendar(lake.slug))}>Dates for your calendar</a> (iCalendar)
          </li>
        </ul>
      </Section>
    </Page>
  );
}
