import type { Guide, GuideLake } from "../guide/guide-schema.ts";
import { type CalendarDate, dayMonth, dayRange, daysBetween } from "../model/calendar.ts";
import { STATE_WORDS } from "../model/phase.ts";
import { chanceText } from "../model/units.ts";
import type { Ink } from "./ink.ts";
import { LEADING } from "./lettering.ts";
import { tenth } from "./numbers.ts";
import { picture } from "./picture.tsx";
import { Areas, bandsOf, StateNames } from "./strip-areas.tsx";
import { AsOf, Months } from "./strip-dates.tsx";
import type { Frame } from "./strip-frame.ts";
import { Marks, placeMarks } from "./strip-marks.tsx";

export interface StripOptions {
  readonly ink: Ink;
  /** In the drawing's units: CSS pixels on screen, points on paper. */
  readonly width: number;
  readonly height: number;
  /** First and last day shown; the guide's whole window unless said. */
  readonly from?: CalendarDate;
  readonly to?: CalendarDate;
  /** A row of the board: areas and as-of line, no lettering. */
  readonly compact: boolean;
}

/** What the strip shows, in one sentence. */
export function stripTitle(
  lake: Pick<GuideLake, "name" | "now">,
  asOf: CalendarDate,
  daily: GuideLake["daily"],
): string {
  const first = daily[0]?.date ?? asOf;
  const last = daily.at(-1)?.date ?? asOf;
  const { state, chance } = lake.now;
  return `${lake.name}: chance of each state by day, ${dayRange(first, last)}. As of ${dayMonth(asOf)}: ${STATE_WORDS[state].name} (${chanceText(chance)}).`;
}

/**
 * One lake's spring as an SVG drawing: the chance of each day state as stacked areas, ice on top.
 * It has no ids, so any number of drawings can stand on one page.
 */
export function seasonStrip(
  lake: Pick<GuideLake, "name" | "now" | "daily" | "marks">,
  guide: Pick<Guide, "window" | "asOf">,
  { ink, width, height, from = guide.window.from, to = guide.window.to, compact }: StripOptions,
): string {
  const daily = lake.daily.filter(({ date }) => date >= from && date <= to);
  const perDay = width / Math.max(1, daily.length);
  const first = daily[0]?.date ?? from;
  const middleOf = (date: CalendarDate): number => (daysBetween(first, date) + 0.5) * perDay;
  const marks = lake.marks
    .filter(({ date }) => daily.some((day) => day.date === date))
    .map((mark) => ({ mark, x: tenth(middleOf(mark.date)) }));
  const placed = placeMarks(width, marks, ink);
  const lane = ink.textSize * 1.4;
  const markRows = placed.length === 0 ? 0 : placed.some(({ word }) => word?.row === 1) ? 2 : 1;
  const marksTop = height - ink.textSize * (0.2 + LEADING * markRows);
  const frame: Frame = {
    ink,
    daily,
    asOf_x: daily.some(({ date }) => date === guide.asOf) ? middleOf(guide.asOf) : -1,
    from: first,
    width,
    top: compact ? 0 : lane,
    bottom: compact ? height : marksTop - lane,
    perDay,
  };
  const bands = bandsOf(frame);
  return picture(
    {
      width: width,
      height: height,
      title: stripTitle(lake, guide.asOf, daily),
      stretch: compact,
      ...(compact ? {} : { textSize: ink.textSize }),
    },
    <>
      <Areas frame={frame} bands={bands} />
      <AsOf frame={frame} date={guide.asOf} lettered={!compact} />
      {compact ? null : <StateNames frame={frame} bands={bands} />}
      {compact ? null : <Months frame={frame} />}
      {compact || markRows === 0 ? null : (
        <Marks placed={placed} ink={ink} y={marksTop + ink.textSize * 0.6} />
      )}
    </>,
  );
}
