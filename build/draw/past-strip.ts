import type { GuideLake } from "../guide/guide-schema.ts";
import { addDays, type CalendarDate, dayMonth, daysBetween } from "../model/calendar.ts";
import { createDrawing, type Drawing, path, text } from "./drawing.ts";
import type { Ink } from "./ink.ts";

const LEFT = 44;
const WIDE = 270;
const MARGIN = 8;
const LEADING = 18;
const TOP = 8;

const newYear = (season: number): CalendarDate => `${season}-01-01` as CalendarDate;
/** Days from 1 January of the season's year, so that springs stand beside each other. */
const dayOf = (season: number, date: CalendarDate): number => daysBetween(newYear(season), date);

/** Past springs, a line each: the bracket that the guide would have given, its middle day, and the day the lake opened. */
export function pastStrip(past: GuideLake["pastForecasts"], ink: Ink): Drawing {
  const days = past.flatMap(({ season, opened, forecast }) => [
    dayOf(season, opened),
    ...(forecast === null ? [] : [dayOf(season, forecast.p10), dayOf(season, forecast.p90)]),
  ]);
  const [first, last] = [Math.min(...days), Math.max(...days)];
  const perDay = (WIDE - 2 * MARGIN) / Math.max(1, last - first);
  const x = (season: number, date: CalendarDate): number =>
    Math.round((LEFT + MARGIN + perDay * (dayOf(season, date) - first)) * 10) / 10;
  const bottom = TOP + past.length * LEADING;
  const named = (day: number): string => dayMonth(addDays(newYear(past[0]?.season ?? 2000), day));
  return createDrawing(
    {
      width: LEFT + WIDE,
      height: Math.ceil(bottom + 8 + ink.textSize),
      title:
        "Past springs: the days the guide would have given, and the day the lake opened; the table has the same dates.",
      textSize: ink.textSize,
    },
    [
      text({ x: LEFT + MARGIN, y: bottom + 4 + ink.textSize, fill: ink.words }, named(first)),
      text(
        { x: LEFT + WIDE - MARGIN, y: bottom + 4 + ink.textSize, "text-anchor": "end", fill: ink.words },
        named(last),
      ),
      past.map(({ season, opened, forecast }, i) => {
        const y = TOP + (i + 0.5) * LEADING;
        const day = x(season, opened);
        return [
          text({ x: LEFT - 8, y: y + ink.textSize * 0.35, "text-anchor": "end", fill: ink.words }, season),
          path({ d: `M${LEFT} ${y}H${LEFT + WIDE}`, stroke: ink.line, "stroke-width": 0.5, fill: "none" }),
          forecast === null
            ? null
            : [
                path({
                  d: `M${x(season, forecast.p10)} ${y - 5}V${y + 5}H${x(season, forecast.p90)}V${y - 5}Z`,
                  stroke: ink.words,
                  fill: ink.paper,
                }),
                path({
                  d: `M${x(season, forecast.p50)} ${y - 5}v10`,
                  stroke: ink.words,
                  "stroke-width": 2,
                  fill: "none",
                }),
              ],
          path({
            d: `M${day - 4.5} ${y}L${day} ${y - 4.5}L${day + 4.5} ${y}L${day} ${y + 4.5}Z`,
            fill: forecast === null ? ink.paper : ink.words,
            stroke: ink.words,
            "stroke-width": 1.2,
          }),
        ];
      }),
    ],
  );
}
