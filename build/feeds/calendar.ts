import ICAL from "ical.js";
import type { Guide } from "../guide/guide-schema.ts";
import type { CalendarDate } from "../model/calendar.ts";

/** RFC 5545 allows 75 octets a line; the library counts a folded line without its leading space. */
ICAL.foldLength = 74;

export const FORECAST_NOTE = "A forecast, not a promise, and never a statement about safe ice.";

/** RFC 5545, 3.1: a text holds no control characters; line breaks are escaped by the library. U+FFFD stands for the rest. */
export const withoutControls = (text: string): string => text.replace(/[^\P{Cc}\t\n]/gu, "\ufffd");

const dateValue = (date: CalendarDate): ICAL.Time => ICAL.Time.fromDateString(date);

/** An event of whole days; it takes nobody's time. */
export function allDayEvent(
  { asOf }: Pick<Guide, "asOf">,
  event: {
    /** Unlike that of any other event of the guide. */
    readonly uid: string;
    readonly from: CalendarDate;
    /** The day after the last. */
    readonly until: CalendarDate;
    readonly summary: string;
    readonly description: string;
  },
): ICAL.Component {
  const component = new ICAL.Component("vevent");
  component.updatePropertyWithValue("uid", `${event.uid}@lake-season-guide`);
  component.updatePropertyWithValue("dtstamp", ICAL.Time.fromDateTimeString(`${asOf}T00:00:00Z`));
  component.updatePropertyWithValue("dtstart", dateValue(event.from));
  component.updatePropertyWithValue("dtend", dateValue(event.until));
  component.updatePropertyWithValue("summary", withoutControls(event.summary));
  component.updatePropertyWithValue("description", withoutControls(event.description));
  component.updatePropertyWithValue("transp", "TRANSPARENT");
  return component;
}

/** A calendar file of events, its lines ended as RFC 5545 asks. */
export function calendarText(events: readonly ICAL.Component[]): string {
  const calendar = new ICAL.Component("vcalendar");
  calendar.updatePropertyWithValue("version", "2.0");
  calendar.updatePropertyWithValue("prodid", "-//lake-season-guide//EN");
  for (const event of events) calendar.addSubcomponent(event);
  return `${calendar.toString()}\r\n`;
}
