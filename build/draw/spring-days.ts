import type { Guide, GuideLake } from "../guide/guide-schema.ts";
import { addDays, type CalendarDate } from "../model/calendar.ts";

/** Days shown before the first day that can be anything but iced, and after the last that can be anything but summer. */
const ROOM_DAYS = { before: 10, after: 7 };
const SURE = 0.99;

const later = (a: CalendarDate, b: CalendarDate): CalendarDate => (a > b ? a : b);
const earlier = (a: CalendarDate, b: CalendarDate): CalendarDate => (a < b ? a : b);

/** The part of the guide's window in which this lake's spring can fall, and the as-of date, with room on either side. */
export function springDays(
  lake: GuideLake,
  { window, asOf }: Pick<Guide, "window" | "asOf">,
): { readonly from: CalendarDate; readonly to: CalendarDate } {
  const first = lake.daily.find(({ iced }) => iced < SURE)?.date ?? asOf;
  const last = lake.daily.findLast(({ summer }) => summer < SURE)?.date ?? asOf;
  return {
    from: later(window.from, addDays(earlier(first, asOf), -ROOM_DAYS.before)),
    to: earlier(window.to, addDays(later(last, asOf), ROOM_DAYS.after)),
  };
}
