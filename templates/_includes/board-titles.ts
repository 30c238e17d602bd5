import { boardsAhead } from "../../build/guide/board.ts";
import type { Board, Guide } from "../../build/guide/guide-schema.ts";
import { type CalendarDate, dayRange, weekdayDayMonth } from "../../build/model/calendar.ts";
import { chanceText } from "../../build/model/units.ts";

type BoardGroup = Board["groups"][number];

export const weekendText = (days: readonly CalendarDate[]): string => {
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return "";
  return first === last ? weekdayDayMonth(first) : dayRange(first, last);
};

export function groupTitle(id: BoardGroup["id"], weekend: readonly CalendarDate[]): string {
  switch (id) {
    case "weekend":
      return `Good this weekend, ${weekendText(weekend)}`;
    case "soon":
      return "Good within two weeks";
    case "fishable":
      return "Fishable this weekend: later weeks, deeper, at dawn and dusk";
    case "later":
      return "Later";
    case "past":
      return "Not this weekend";
  }
}

/** The boards of the weeks to come in words, for the page's script. */
export const boardsAheadWords = (guide: Guide) =>
  boardsAhead(guide).map(({ from, board }) => ({
    from,
    groups: board.groups.map(({ id, lakes }) => ({
      id,
      title: groupTitle(id, board.weekend),
      lakes: lakes.map(({ slug, weekend }) => [slug, weekend === null ? "" : chanceText(weekend)]),
    })),
  }));
