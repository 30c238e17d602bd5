import type { Guide, GuideLake } from "../../guide/guide-schema.ts";
import {
  addDays,
  type CalendarDate,
  dayMonth,
  dayOfMonth,
  daysBetween,
  monthOf,
} from "../../model/calendar.ts";
import { type DrawingContent, group, path, text } from "../drawing.ts";
import { clamp, estimateTextWidth, tenth } from "../geometry.ts";
import type { Ink } from "../ink.ts";

/** Where things stand in one strip. */
export interface StripFrame {
  readonly ink: Ink;
  readonly daily: GuideLake["daily"];
  /** Middle of the as-of day; below 0 when that day is not shown. */
  readonly asOf_x: number;
  readonly from: CalendarDate;
  readonly width: number;
  /** Top and bottom of the areas. */
  readonly top: number;
  readonly bottom: number;
  readonly perDay: number;
}

/** About how wide a text stands in a drawing. */
export const textWidth = (text: string, ink: Ink): number => estimateTextWidth(text, ink.textSize);

/** Days shown before the first day that can be anything but iced, and after the last that can be in anything but its later weeks. */
const ROOM_DAYS = { before: 10, after: 7 };
const SURE = 0.99;

const later = (a: CalendarDate, b: CalendarDate): CalendarDate => (a > b ? a : b);
const earlier = (a: CalendarDate, b: CalendarDate): CalendarDate => (a < b ? a : b);

/** The part of the guide's window in which this lake's spring can fall, and the as-of date, with room on either side. */
export function springDays(
  lake: GuideLake,
  { window, asOf }: Pick<Guide, "window" | "asOf">,
): { readonly from: CalendarDate; readonly to: CalendarDate } {
  const first = lake.daily.find(({ iced }) => iced < SURE)?.date ?? asOf;
  const last = lake.daily.findLast(({ laterWeeks }) => laterWeeks < SURE)?.date ?? asOf;
  return {
    from: later(window.from, addDays(earlier(first, asOf), -ROOM_DAYS.before)),
    to: earlier(window.to, addDays(later(last, asOf), ROOM_DAYS.after)),
  };
}

const dayLeft = ({ from, perDay }: StripFrame, date: CalendarDate): number =>
  daysBetween(from, date) * perDay;
const dayMiddle = (frame: StripFrame, date: CalendarDate): number => dayLeft(frame, date) + frame.perDay / 2;

/** Month names at their first day; a short tick and number at the 10th and 20th where there is room. */
export function drawMonths({ frame }: { frame: StripFrame }): DrawingContent {
  const { ink, daily, bottom, width } = frame;
  const y = tenth(bottom + ink.textSize * 1.02);
  const numbers = frame.perDay * 10 > textWidth("Mmm", ink) * 1.5;
  const ticks = daily.flatMap(({ date }) => {
    const day = dayOfMonth(date);
    const x = tenth(day === 1 ? dayLeft(frame, date) : dayMiddle(frame, date));
    if (day === 1) return [{ x, length: ink.textSize * 0.5, label: monthOf(date) }];
    return day === 10 || day === 20
      ? [{ x, length: ink.textSize * 0.25, label: numbers ? `${day}` : "" }]
      : [];
  });
  return group({ stroke: ink.line, "stroke-width": 1 }, [
    ticks.map(({ x, length, label }) => {
      const half = textWidth(label, ink) / 2;
      return group({}, [
        path({ d: `M${x} ${tenth(bottom)}v${tenth(length)}` }),
        label === ""
          ? null
          : text(
              {
                x: tenth(clamp(x, half, width - half)),
                y: tenth(y + ink.textSize * 0.25),
                "text-anchor": "middle",
                fill: ink.words,
                stroke: "none",
              },
              label,
            ),
      ]);
    }),
  ]);
}

/** A line at the as-of day; a page’s script moves it to today by the width of a day for each day since. */
export function drawAsOf({
  frame,
  date,
  lettered,
}: {
  frame: StripFrame;
  date: CalendarDate;
  lettered: boolean;
}) {
  const { ink, top, bottom, width, perDay, asOf_x } = frame;
  if (asOf_x < 0) return null;
  const x = tenth(asOf_x);
  const label = `as of ${dayMonth(date)}`;
  const half = textWidth(label, ink) / 2;
  const tail = lettered ? ink.textSize * 0.25 : 0;
  return group({ "data-x": x, "data-day": perDay.toFixed(3) }, [
    path({ d: `M${x} ${tenth(top)}V${tenth(bottom)}`, stroke: ink.paper, "stroke-width": 5 }),
    path({ d: `M${x} ${tenth(top - tail)}V${tenth(bottom)}`, stroke: ink.accent, "stroke-width": 2 }),
    lettered
      ? text(
          {
            x: tenth(clamp(x, half, width - half)),
            y: tenth(top - ink.textSize * 0.45),
            "text-anchor": "middle",
            "font-weight": "bold",
            fill: ink.words,
          },
          label,
        )
      : null,
  ]);
}
