import ICAL from "ical.js";
import type { Guide, GuideLake } from "../guide/guide-schema.ts";
import { spreadText } from "../guide/status-words.ts";
import { addDays, type CalendarDate } from "../model/calendar.ts";
import { phaseName } from "../model/phase.ts";

/** RFC 5545 allows 75 octets a line; the library counts a folded line without its leading space. */
ICAL.foldLength = 74;

const FORECAST_NOTE = "A forecast, not a promise, and never a statement about safe ice.";

const dateValue = (date: CalendarDate): ICAL.Time => ICAL.Time.fromDateString(date);

function phaseEvent(
  guide: Guide,
  lake: GuideLake,
  { phase, from, to }: GuideLake["phases"][number],
): ICAL.Component {
  const component = new ICAL.Component("vevent");
  component.updatePropertyWithValue("uid", `${guide.season}-${phase}-${lake.slug}@lake-season-guide`);
  component.updatePropertyWithValue("dtstamp", ICAL.Time.fromDateTimeString(`${guide.asOf}T00:00:00Z`));
  component.updatePropertyWithValue("dtstart", dateValue(from.p50));
  component.updatePropertyWithValue("dtend", dateValue(addDays(to.p50, 1)));
  component.updatePropertyWithValue("summary", `${lake.name}: ${phaseName(phase).toLowerCase()}`);
  component.updatePropertyWithValue(
    "description",
    `From ${spreadText(from)} until ${spreadText(to)}, as of ${guide.asOf}. ${FORECAST_NOTE}`,
  );
  component.updatePropertyWithValue("geo", `${lake.position.lat};${lake.position.lon}`);
  component.updatePropertyWithValue("transp", "TRANSPARENT");
  return component;
}

/** One lake's phases as all-day events (RFC 5545), from middle day to middle day, the spread in the description. */
export function seasonCalendar(guide: Guide, lake: GuideLake): string {
  const calendar = new ICAL.Component("vcalendar");
  calendar.updatePropertyWithValue("version", "2.0");
  calendar.updatePropertyWithValue("prodid", "-//lake-season-guide//EN");
  for (const window of lake.phases) calendar.addSubcomponent(phaseEvent(guide, lake, window));
  return `${calendar.toString()}\r\n`;
}
