import { renderToString } from "preact-render-to-string";
import { chartDays, type SeasonChart } from "../../guide/season-chart.ts";
import { dayOfMonth, daysBetween, monthOf } from "../../model/calendar.ts";

/** Share of the width beyond which a label would be cut off. */
const ROOM_FOR_LABEL = 0.95;

/** What is as wide as the rows of the chart, which are stretched: places are shares of the width. */
const percent = (share: number): string => `${(100 * share).toFixed(2)}%`;

/** Columns in one chart stand side by side: where each begins, and how wide it is. */
function placedColumns({ from, to, columns }: SeasonChart) {
  const days = chartDays({ from, to }).length;
  return columns.map((column) => ({
    column,
    left: daysBetween(from, column.from) / days,
    wide: (daysBetween(column.from, column.to) + 1) / days,
  }));
}

/** Over the rows: the first day of each weekend and holiday, and the months. For the eye only; links below say the days in words. */
export function chartHead(chart: SeasonChart): string {
  const days = chartDays(chart);
  return renderToString(
    <svg xmlns="http://www.w3.org/2000/svg" width="100%" height="34" aria-hidden="true">
      {days.map((date, i) =>
        dayOfMonth(date) === 1 && i < ROOM_FOR_LABEL * days.length ? (
          <>
            <line
              x1={percent(i / days.length)}
              x2={percent(i / days.length)}
              y1="0"
              y2="14"
              stroke="var(--strip-line)"
            />
            <text x={percent(i / days.length)} dx="4" y="12" font-size="13" fill="var(--strip-words)">
              {monthOf(date)}
            </text>
          </>
        ) : null,
      )}
      {placedColumns(chart).map(({ column, left, wide }, i) => (
        <text
          x={percent(left + wide / 2)}
          y="30"
          font-size="13"
          text-anchor="middle"
          class={i === 0 ? "coming" : undefined}
          data-last={column.to}
        >
          {dayOfMonth(column.from)}
        </text>
      ))}
    </svg>,
  );
}

/** Through all rows: each weekend and holiday as a column, the coming one boxed. */
export const chartColumns = (chart: SeasonChart): string =>
  renderToString(
    <svg xmlns="http://www.w3.org/2000/svg" width="100%" height="100%" aria-hidden="true">
      {placedColumns(chart).map(({ column, left, wide }, i) => (
        <rect
          x={percent(left)}
          y="0"
          width={percent(wide)}
          height="100%"
          class={i === 0 ? "coming" : undefined}
          data-last={column.to}
        />
      ))}
    </svg>,
  );
