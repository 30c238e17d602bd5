import { Temporal } from "temporal-polyfill";
import type { CalendarDate } from "./calendar.ts";

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
