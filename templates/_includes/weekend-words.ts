import { type CalendarDate, dayRange, weekdayDayMonth } from "../../build/model/calendar.ts";

/** "16–17 May"; a single day with its weekday. */
export const weekendText = (days: readonly CalendarDate[]): string => {
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return "";
  return first === last ? weekdayDayMonth(first) : dayRange(first, last);
};
