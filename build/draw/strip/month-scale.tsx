import { renderToString } from "preact-render-to-string";
import type { Guide } from "../../guide/guide-schema.ts";
import { dayOfMonth, daysFromTo, monthOf } from "../../model/calendar.ts";

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
