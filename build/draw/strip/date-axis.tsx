import type { JSX } from "preact";
import { renderToString } from "preact-render-to-string";
import type { Guide, GuideLake } from "../../guide/guide-schema.ts";
import {
  addDays,
  type CalendarDate,
  dayMonth,
  dayOfMonth,
  daysBetween,
  daysFromTo,
  monthOf,
} from "../../model/calendar.ts";
import { clamp, estimateTextWidth, tenth } from "../geometry.ts";
import type { Ink } from "../ink.ts";

/** Where things stand in one strip. */
export interface StripFrame {
  readonly ink: Ink;
  readonly daily: GuideLake["daily"];
  /** Middle of the day the guide speaks from; below 0 when that day is not shown. */
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

/** Days shown before the first day that can be anything but iced, and after the last that can be anything but summer. */
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
  const last = lake.daily.findLast(({ summer }) => summer < SURE)?.date ?? asOf;
  return {
    from: later(window.from, addDays(earlier(first, asOf), -ROOM_DAYS.before)),
    to: earlier(window.to, addDays(later(last, asOf), ROOM_DAYS.after)),
  };
}

const dayLeft = ({ from, perDay }: StripFrame, date: CalendarDate): number =>
  daysBetween(from, date) * perDay;
const dayMiddle = (frame: StripFrame, date: CalendarDate): number => dayLeft(frame, date) + frame.perDay / 2;

/** Month names at their first day; a short tick and number at the 10th and 20th where there is room. */
export function Months({ frame }: { frame: StripFrame }): JSX.Element {
  const { ink, daily, bottom, width } = frame;
  const y = tenth(bottom + ink.textSize * 1.02);
  const numbers = frame.perDay * 10 > textWidth("Mmm", ink) * 1.5;
  const ticks = daily.flatMap(({ date }) => {
    const day = dayOfMonth(date);
    const x = tenth(day === 1 ? dayLeft(frame, date) : dayMiddle(frame, date));
    if (day === 1) return [{ x, length: ink.textSize * 0.5, text: monthOf(date) }];
    return day === 10 || day === 20
      ? [{ x, length: ink.textSize * 0.25, text: numbers ? `${day}` : "" }]
      : [];
  });
  return (
    <g stroke={ink.line} stroke-width={1}>
      {ticks.map(({ x, length, text }) => {
        const half = textWidth(text, ink) / 2;
        return (
          <g>
            <path d={`M${x} ${tenth(bottom)}v${tenth(length)}`} />
            {text === "" ? null : (
              <text
                x={tenth(clamp(x, half, width - half))}
                y={tenth(y + ink.textSize * 0.25)}
                text-anchor="middle"
                fill={ink.words}
                stroke="none"
              >
                {text}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}

/** The day the guide speaks from; a page’s script moves it on to today, by the width of a day for each. */
export function AsOf({
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
  const text = `as of ${dayMonth(date)}`;
  const half = textWidth(text, ink) / 2;
  const tail = lettered ? ink.textSize * 0.25 : 0;
  return (
    <g data-x={x} data-day={perDay.toFixed(3)}>
      <path d={`M${x} ${tenth(top)}V${tenth(bottom)}`} stroke={ink.paper} stroke-width={5} />
      <path d={`M${x} ${tenth(top - tail)}V${tenth(bottom)}`} stroke={ink.accent} stroke-width={2} />
      {lettered ? (
        <text
          x={tenth(clamp(x, half, width - half))}
          y={tenth(top - ink.textSize * 0.45)}
          text-anchor="middle"
          font-weight="bold"
          fill={ink.words}
        >
          {text}
        </text>
      ) : null}
    </g>
  );
}

/** Share of the width after which a month's name would be cut off. */
const ROOM_FOR_NAME = 0.9;

/**
 * Months over a column of season strips that span the guide's window: a tick at each first day, as wide as its
 * surroundings, so that it lines up with strips stretched to the same width. For the eye only; the strips say their
 * dates in words.
 */
export function monthScale({ from, to }: Guide["window"]): string {
  const days = daysFromTo(from, to);
  const firsts = days.flatMap((date, i) =>
    dayOfMonth(date) === 1
      ? [
          {
            x: `${((100 * i) / days.length).toFixed(2)}%`,
            month: i < ROOM_FOR_NAME * days.length ? monthOf(date) : "",
          },
        ]
      : [],
  );
  return renderToString(
    <svg xmlns="http://www.w3.org/2000/svg" width="100%" height="16" aria-hidden="true">
      {firsts.map(({ x, month }) => (
        <>
          <line x1={x} x2={x} y1="2" y2="16" stroke="var(--strip-line)" />
          {month === "" ? null : (
            <text x={x} dx="4" y="12" font-size="13" fill="var(--strip-words)">
              {month}
            </text>
          )}
        </>
      ))}
    </svg>,
  );
}
