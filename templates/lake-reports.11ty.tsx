import { screenInk } from "../build/draw/ink.ts";
import { readings } from "../build/draw/readings.ts";
import type { GuideLake } from "../build/guide/guide-schema.ts";
import { listReports } from "../build/guide/report-seasons.ts";
import { reportsText } from "../build/guide/report-words.ts";
import { ADDRESS } from "../build/model/addresses.ts";
import { dayRange } from "../build/model/calendar.ts";
import { Page } from "./_includes/layout.tsx";
import type { PageContext } from "./_includes/page-context.ts";
import type { Rendered } from "./_includes/page-template.ts";
import { Drawing, Section } from "./_includes/parts.tsx";
import {
  CatchCells,
  CatchNote,
  CatchTable,
  ReportList,
  SeasonsTable,
} from "./_includes/reports/report-tables.tsx";

const READINGS_WIDTH = 328;

function Catch({ lake, sheet }: { lake: GuideLake; sheet: PageContext }) {
  const { seasons, caught } = lake.reported;
  return (
    <Section title="Catch" id="catch">
      <SeasonsTable label="Catch by season" seasons={seasons} hrefOf={(season) => `#season-${season}`} />
      {caught.length === 0 ? null : (
        <CatchTable
          label="Catch by pattern and way"
          caption="All seasons, by pattern and way"
          of={["Pattern"]}
        >
          {caught.map(({ pattern, name, way, fish, rate }) => (
            <tr>
              <th scope="row">
                <a href={sheet.to(ADDRESS.pattern(pattern))}>{name}</a>
                <span class="under">{way ?? "way not told"}</span>
              </th>
              <CatchCells fish={fish} rate={rate} />
            </tr>
          ))}
        </CatchTable>
      )}
      <CatchNote />
    </Section>
  );
}

/** Temperature and clarity over each season that has two readings of them. */
function Readings({ lake, sheet }: { lake: GuideLake; sheet: PageContext }) {
  const { units } = sheet.guide.club;
  const drawn = lake.reported.seasons.flatMap(({ season }) => {
    const drawing = readings(lake, { ink: screenInk, units, season, width: READINGS_WIDTH });
    return drawing === null ? [] : [<Drawing drawing={drawing} />];
  });
  return drawn.length === 0 ? null : (
    <Section title="Water" id="water">
      {drawn}
    </Section>
  );
}

/** Rows of ice-off that reports hold and the lake's own file does not: what to write, and where. */
function ToRecord({ lake, sheet }: { lake: GuideLake; sheet: PageContext }) {
  const { unrecorded } = lake.reported;
  if (unrecorded.length === 0) return null;
  const isRunning = unrecorded.some(({ season }) => season === sheet.guide.season);
  return (
    <Section title="To record" id="record">
      <p>
        Reports bracket the ice-off of {unrecorded.map(({ season }) => season).join(", ")}:{" "}
        {unrecorded.map(({ after, by }) => dayRange(after, by)).join(", ")}. No dated row holds it, and only
        dated rows serve the forecasts of later years. Under <code>iceOff</code> in{" "}
        <code>lakes/{lake.slug}.yaml</code> write
      </p>
      <ul class="plain">
        {unrecorded.map(({ season, after, by }) => (
          <li>
            <code>{`- { season: ${season}, after: ${after}, by: ${by} }`}</code>
          </li>
        ))}
      </ul>
      <p>
        Where somebody saw the last ice go, write <code>on</code> and that day instead of <code>after</code>{" "}
        and <code>by</code>.
        {isRunning
          ? ` Add the row of ${sheet.guide.season} when the season is over; until then the reports themselves are used.`
          : ""}
      </p>
    </Section>
  );
}

interface Data {
  readonly lake: GuideLake;
}

export const data = {
  pagination: { data: "guide.lakes", size: 1, alias: "lake" },
  permalink: ({ lake }: Data) => lake.reports.length > 0 && ADDRESS.lakeReports(lake.slug),
  inputs: ({ lake }: Data) => ({ lake }),
} as const;

/** All that was ever reported of one lake. */
export function render({ lake, sheet }: Rendered<typeof data>) {
  const listed = listReports([lake]);
  return (
    <Page
      sheet={sheet}
      title={`${lake.name}, reports`}
      description={`${lake.name}: what members saw and caught, ${reportsText(lake.reports.length)}, days without a fish included.`}
    >
      <h1>{lake.name}: reports</h1>
      <p>
        <a href={sheet.to(ADDRESS.lake(lake.slug))}>Forecast, flies and rigs for {lake.name}</a>
      </p>
      <Catch lake={lake} sheet={sheet} />
      <Readings lake={lake} sheet={sheet} />
      {lake.reported.seasons.map(({ season }) => (
        <Section title={String(season)} id={`season-${season}`}>
          <ReportList reports={listed.filter((one) => one.season === season)} sheet={sheet} />
        </Section>
      ))}
      <ToRecord lake={lake} sheet={sheet} />
    </Page>
  );
}
