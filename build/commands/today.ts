import { type CalendarDate, parseCalendarDate } from "../model/calendar.ts";

/** The day it is where the program runs. @throws when the clock shows no day of the calendar */
export function today(): CalendarDate {
  const now = new Date();
  const [year, month, day] = [now.getFullYear(), now.getMonth() + 1, now.getDate()];
  const date = parseCalendarDate(`${year}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`);
  if (date === undefined) throw new Error(`the clock shows ${now.toString()}`);
  return date;
}
