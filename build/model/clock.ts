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
