import type { JSX } from "preact";
import { type CalendarDate, dayMonth, dayOfMonth, daysBetween, monthOf } from "../model/calendar.ts";
import { clamp, tenth } from "./numbers.ts";
import { type Frame, lettering } from "./strip-frame.ts";

const dayLeft = ({ from, perDay }: Frame, date: CalendarDate): number => daysBetween(from, date) * perDay;
const dayMiddle = (frame: Frame, date: CalendarDate): number => dayLeft(frame, date) + frame.perDay / 2;

/** Month names at their first day; a short tick and number at the 10th and 20th where there is room. */
export function Months({ frame }: { frame: Frame }): JSX.Element {
  const { ink, daily, bottom, width } = frame;
  const y = tenth(bottom + ink.textSize * 1.02);
  const numbers = frame.perDay * 10 > lettering("Mmm", ink) * 1.5;
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
        const half = lettering(text, ink) / 2;
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
export function AsOf({ frame, date, lettered }: { frame: Frame; date: CalendarDate; lettered: boolean }) {
  const { ink, top, bottom, width, perDay, asOf_x } = frame;
  if (asOf_x < 0) return null;
  const x = tenth(asOf_x);
  const text = `as of ${dayMonth(date)}`;
  const half = lettering(text, ink) / 2;
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
