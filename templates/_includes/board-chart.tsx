import { screenInk } from "../../build/draw/ink.ts";
import { basinMap } from "../../build/draw/map/basin-map.ts";
import { chartColumns, chartHead } from "../../build/draw/strip/chart-columns.tsx";
import { chartRow } from "../../build/draw/strip/chart-row.ts";
import { stripLegend } from "../../build/draw/strip/legend.ts";
import { renderSvg } from "../../build/draw/svg.ts";
import { hasChapter } from "../../build/guide/guide-contents.ts";
import type { GuideLake } from "../../build/guide/guide-schema.ts";
import {
  type ChartLake,
  type ChartRow,
  type OnDays,
  onDays,
  outdoorDays,
  type SeasonChart,
  seasonChart,
  shortNames,
} from "../../build/guide/season-chart.ts";
import type { Occasion } from "../../build/guide/when-schema.ts";
import { ADDRESS } from "../../build/model/addresses.ts";
import { dayMonth } from "../../build/model/calendar.ts";
import { STATE_WORDS } from "../../build/model/phase.ts";
import { chanceNumber } from "../../build/model/units.ts";
import type { PageContext } from "./page-context.ts";
import { Drawing, Harmless } from "./parts.tsx";
import { weekendText } from "./weekend-words.ts";

/** What the chart and the map show of a lake. */
export interface BoardLake extends ChartLake, Pick<GuideLake, "position"> {
  /** Outer rings and islands; empty where no shape is known. */
  readonly shoreline: readonly (readonly (readonly [number, number])[])[];
}

/** "Best weeks · 97", or why nobody gets there. */
const onText = (on: OnDays | null, { access }: ChartLake): string =>
  on !== null
    ? `${STATE_WORDS[on.state].name} · ${chanceNumber(on.good)}`
    : access?.opens == null
      ? "not covered"
      : `road ${dayMonth(access.opens)}`;

/** A row's words for each column, for the page's script; those before the last change are said once. */
function Row({
  row,
  name,
  chart,
  sheet,
}: {
  row: ChartRow;
  name: string;
  chart: SeasonChart;
  sheet: PageContext;
}) {
  const words = row.on.map((on) => onText(on, row.lake));
  return (
    <li data-lake={row.lake.slug}>
      <a href={sheet.to(ADDRESS.lake(row.lake.slug))}>
        <strong>{name}</strong>{" "}
        <span class="state small" data-on={words.join(";")}>
          {words[0]}
        </span>
      </a>
      <Harmless
        class="row-strip"
        html={renderSvg(chartRow(row, chart, { ink: screenInk, width: 360, height: 36 }))}
      />
    </li>
  );
}

interface OfAllLakes {
  readonly lakes: readonly BoardLake[];
  readonly occasions: readonly Occasion[];
  readonly sheet: PageContext;
}

/** Every lake's spring, one under the other, under one row of dates. */
export function Chart({ lakes, occasions, sheet }: OfAllLakes) {
  const chart = seasonChart(lakes, occasions, sheet.guide);
  const names = shortNames(lakes);
  const [coming] = chart.columns;
  return (
    <section class="chart" aria-labelledby="chart">
      <h2 id="chart">The spring, lake by lake</h2>
      <p class="small">
        Good: ice-off or best weeks. In %, on{" "}
        <span
          class="coming-days"
          data-on={chart.columns.map((days) => weekendText([days.from, days.to])).join(";")}
        >
          {coming === undefined ? "the days to come" : weekendText([coming.from, coming.to])}
        </span>
        , boxed.
      </p>
      <Harmless class="chart-head" html={chartHead(chart)} />
      <div class="chart-rows">
        <ul class="plain">
          {chart.rows.map((row) => (
            <Row row={row} name={names.get(row.lake.slug) ?? row.lake.name} chart={chart} sheet={sheet} />
          ))}
        </ul>
        <Harmless class="chart-columns" html={chartColumns(chart)} />
      </div>
      <Harmless class="key" html={renderSvg(stripLegend({ ink: screenInk, width: 480, marks: false }))} />
      <p class="small">
        T: road opens. After ice-off stay off what ice is left.{" "}
        {hasChapter(sheet.guide, "methods") ? (
          <a href={sheet.to(ADDRESS.chapter("methods"))}>How it is made</a>
        ) : null}
      </p>
    </section>
  );
}

/** The lakes where they lie, on the days that come next. */
export function LakesMap({ lakes, occasions, sheet }: OfAllLakes) {
  const [coming] = outdoorDays(occasions);
  if (coming === undefined || lakes.length < 2) return null;
  const names = shortNames(lakes);
  const days = weekendText([coming.from, coming.to]);
  const drawn = basinMap(
    lakes.map((lake) => ({
      name: names.get(lake.slug) ?? lake.name,
      position: lake.position,
      shoreline: lake.shoreline,
      on: onDays(lake, coming.from, coming.to),
      opens: lake.access?.opens ?? null,
    })),
    { ink: screenInk, units: sheet.guide.club.units, width: 344, days },
  );
  return (
    <details class="fold basin">
      <summary>
        <span>Map of the lakes</span> <span class="small">{days}</span>
      </summary>
      <Drawing drawing={drawn} />
    </details>
  );
}
