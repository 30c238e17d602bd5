import type { CalendarDate } from "../model/calendar.ts";

/** The season and the day the guide speaks from. */
export interface Moment {
  readonly season: number;
  readonly asOf: CalendarDate;
}
