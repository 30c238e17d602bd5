import type { ChartRow, SeasonChart } from "../../guide/season-chart.ts";
import { daysBetween } from "../../model/calendar.ts";
import { createDrawing, type Drawing, path } from "../drawing.ts";
import { tenth } from "../geometry.ts";
import type { Ink } from "../ink.ts";
import { bandsOf, drawAreas } from "./season-strip.ts";

interface RowOptions {
  readonly ink: Ink;
  readonly width: number;
  readonly height: number;
}

/**
 * One lake's row in the chart of all lakes, stretched over the chart's days: the chance of each state as stacked areas. What lies
 * before its road opens is faded, up to a gate: a post with a bar. The row's words stand beside it.
 */
export function chartRow(
  { lake, opens }: ChartRow,
  { from, to }: Pick<SeasonChart, "from" | "to">,
  { ink, width, height }: RowOptions,
): Drawing {
  const daily = lake.daily.filter(({ date }) => date >= from && date <= to);
  const perDay = width / Math.max(1, daily.length);
  const frame = { ink, daily, asOf_x: -1, from, width, top: 0, bottom: height, perDay };
  const gate = opens === null ? null : tenth(Math.min(width, daysBetween(from, opens) * perDay));
  return createDrawing({ width, height, title: null, stretch: true }, [
    drawAreas({ frame, bands: bandsOf(frame) }),
    gate === null
      ? null
      : [
          path({ d: `M0 0H${gate}V${height}H0Z`, fill: ink.paper, class: "shut" }),
          path({
            d: `M${gate} 0V${height}M${gate - 4} 1.2H${gate + 4}`,
            stroke: ink.words,
            "stroke-width": 2.4,
          }),
        ],
  ]);
}
