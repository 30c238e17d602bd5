import { Temporal } from "temporal-polyfill";

/** A calendar day written as ISO 8601 `YYYY-MM-DD`. Never an instant: it has no time of day and no zone. */
export type CalendarDate = string & { readonly calendarDate: never };

/** Seasons are named by the year of their day 1: 1 January north of the equator, 1 July south of it. */
export type Hemisphere = "north" | "south";

const ISO_DATE = /^\d{4}-\d{2}-\d{2}$/;

/** Reads `YYYY-MM-DD`; `undefined` for another form or a day the calendar does not have (30 February). */
export function parseCalendarDate(text: string): CalendarDate | undefined {
  if (!ISO_DATE.test(text)) return undefined;
  try {
    return Temporal.PlainDate.from(text, { overflow: "reject" }).toString() as CalendarDate;
  } catch {
    return undefined;
  }
}

const MS_PER_DAY = 86_400_000;
const EPOCH = Temporal.PlainDate.from("1970-01-01");

/** Days since 1 January 1970, a Thursday. ECMA-262 reads a date without a time as midnight UTC. */
const epochDay = (date: CalendarDate): number => Date.parse(date) / MS_PER_DAY;

/** The day `days` after `date` (before it when negative). */
export const addDays = (date: CalendarDate, days: number): CalendarDate =>
  EPOCH.add({ days: epochDay(date) + days }).toString() as CalendarDate;

/** Whole days from `from` to `to`; negative when `to` comes first. */
export const daysBetween = (from: CalendarDate, to: CalendarDate): number => epochDay(to) - epochDay(from);

/** Every day from `from` to `to`, both included. */
export const daysFromTo = (from: CalendarDate, to: CalendarDate): CalendarDate[] =>
  Array.from({ length: daysBetween(from, to) + 1 }, (_, i) => addDays(from, i));

const firstDay = (season: number, hemisphere: Hemisphere): CalendarDate =>
  `${String(season).padStart(4, "0")}-${hemisphere === "north" ? "01-01" : "07-01"}` as CalendarDate;

/** Day of season: 1 on the season's first day (1 January in the north, 1 July in the south). */
export const seasonDay = (date: CalendarDate, season: number, hemisphere: Hemisphere): number =>
  daysBetween(firstDay(season, hemisphere), date) + 1;

/** The calendar day of a whole day of season; the inverse of {@link seasonDay}. */
export const dateOfSeasonDay = (day: number, season: number, hemisphere: Hemisphere): CalendarDate =>
  addDays(firstDay(season, hemisphere), day - 1);

/** The season a day belongs to. */
export function seasonOf(date: CalendarDate, hemisphere: Hemisphere): number {
  const year = yearOf(date);
  return hemisphere === "south" && monthNumber(date) < 7 ? year - 1 : year;
}

/** Lakes on the equator count as northern. */
export const hemisphereOf = (latitude_deg: number): Hemisphere => (latitude_deg < 0 ? "south" : "north");

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
const WEEKDAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];
const yearOf = (date: CalendarDate): number => Number(date.slice(0, -6));
const monthNumber = (date: CalendarDate): number => Number(date.slice(-5, -3));
/** ISO 8601: 1 for Monday to 7 for Sunday. */
const weekdayNumber = (date: CalendarDate): number => ((((epochDay(date) + 3) % 7) + 7) % 7) + 1;

/** Day of the month, 1 to 31. */
export const dayOfMonth = (date: CalendarDate): number => Number(date.slice(-2));

/** "May". */
export const monthOf = (date: CalendarDate): string => MONTHS[monthNumber(date) - 1] ?? "";

/** "16 May": how a day is written everywhere a reader sees it. */
export const dayMonth = (date: CalendarDate): string => `${dayOfMonth(date)} ${monthOf(date)}`;

/** "Sat 16 May". */
export const weekdayDayMonth = (date: CalendarDate): string =>
  `${WEEKDAYS[weekdayNumber(date) - 1] ?? ""} ${dayMonth(date)}`;

/** "Sat 16 May 2026". */
export const weekdayDayMonthYear = (date: CalendarDate): string => `${weekdayDayMonth(date)} ${yearOf(date)}`;

/** "16 May 2026". */
export const dayMonthYear = (date: CalendarDate): string => `${dayMonth(date)} ${yearOf(date)}`;

/** "14–21 May", "28 May – 3 Jun", or "16 May" when both are one day. */
export function dayRange(from: CalendarDate, to: CalendarDate): string {
  if (from === to) return dayMonth(from);
  return from.slice(0, -3) === to.slice(0, -3)
    ? `${dayOfMonth(from)}–${dayOfMonth(to)} ${monthOf(to)}`
    : `${dayMonth(from)} – ${dayMonth(to)}`;
}

/** True on a Saturday. */
export const isSaturday = (date: CalendarDate): boolean => weekdayNumber(date) === 6;

/** The Monday of the week that `date` falls in. */
export const mondayOf = (date: CalendarDate): CalendarDate => addDays(date, 1 - weekdayNumber(date));

/** The days of the weekend that `date` falls in, or else of the next one, without those before `date`. */
export function weekendFrom(date: CalendarDate): CalendarDate[] {
  const weekday = weekdayNumber(date);
  return weekday === 7 ? [date] : [addDays(date, 6 - weekday), addDays(date, 7 - weekday)];
}

/** The instant a calendar day begins in a time zone, milliseconds since 1970; on some days clocks skip midnight. */
export const startOfDay_ms = (date: CalendarDate, timezone: string): number =>
  Temporal.PlainDate.from(date).toZonedDateTime(timezone).epochMilliseconds;

/** "05:31" of `2026-05-16T05:31-06:00`. */
export const clockText = (localMinute: string): string => localMinute.slice(11, 16);

/** An instant on the clocks of a time zone, to the nearest minute, with their offset then: `2026-05-16T05:31-06:00`. */
export const localMinute = (epoch_ms: number, timezone: string): string =>
  Temporal.Instant.fromEpochMilliseconds(Math.round(epoch_ms))
    .toZonedDateTimeISO(timezone)
    .toString({ smallestUnit: "minute", roundingMode: "halfExpand", timeZoneName: "never" });

const NS_PER_HOUR = 3.6e12; // exact
const DEG_PER_HOUR = 15; // the earth turns 360 degrees in 24 hours

/**
 * The longitude where a zone's standard time is the mean sun's own, -180 to 180 degrees; undefined for a zone that names no place,
 * such as UTC and Etc/GMT+7. Standard time is the lesser of the offsets in January and July.
 * @throws RangeError when the zone is not known
 */
export function zoneLongitude_deg(timezone: string, year: number): number | undefined {
  if (!timezone.includes("/") || /^etc\//i.test(timezone)) return undefined;
  const offsets_h = [1, 7].map(
    (month) =>
      Temporal.ZonedDateTime.from({ timeZone: timezone, year, month, day: 1 }).offsetNanoseconds /
      NS_PER_HOUR,
  );
  const longitude = Math.min(...offsets_h) * DEG_PER_HOUR;
  return longitude - 360 * Math.round(longitude / 360);
}
