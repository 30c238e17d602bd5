import ICAL from "ical.js";
import type { Guide, GuideLake, GuideTrip } from "../guide/guide-schema.ts";
import { iceOnDaysText } from "../guide/ice-left.ts";
import { spreadText } from "../guide/status-words.ts";
import { fishableText } from "../guide/trip-words.ts";
import { addDays, type CalendarDate, clockText, dayMonth } from "../model/calendar.ts";
import { phaseName } from "../model/phase.ts";
import type { Spread } from "../model/shared-schemas.ts";
import { chanceText } from "../model/units.ts";

/** RFC 5545 allows 75 octets a line; the library counts a folded line without its leading space. */
ICAL.foldLength = 74;

const FORECAST_NOTE = "A forecast, not a promise, and never a statement about safe ice.";

/** RFC 5545, 3.1: a text holds no control characters; line breaks are escaped by the library. U+FFFD stands for the rest. */
const replaceControlCharacters = (text: string): string => text.replace(/[^\P{Cc}\t\n]/gu, "\ufffd");

const dateValue = (date: CalendarDate): ICAL.Time => ICAL.Time.fromDateString(date);

/** An event of whole days; it takes nobody's time. */
function allDayEvent(
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
  component.updatePropertyWithValue("summary", replaceControlCharacters(event.summary));
  component.updatePropertyWithValue("description", replaceControlCharacters(event.description));
  component.updatePropertyWithValue("transp", "TRANSPARENT");
  return component;
}

/** A calendar file of events, its lines ended as RFC 5545 asks. */
function calendarText(events: readonly ICAL.Component[]): string {
  const calendar = new ICAL.Component("vcalendar");
  calendar.updatePropertyWithValue("version", "2.0");
  calendar.updatePropertyWithValue("prodid", "-//lake-season-guide//EN");
  for (const event of events) calendar.addSubcomponent(event);
  return `${calendar.toString()}\r\n`;
}

/** What ice may be left on a day, as a sentence before others. */
function iceText(lake: GuideLake | undefined, date: CalendarDate): string {
  const ice = lake === undefined ? null : iceOnDaysText(lake, date, date);
  return ice === null ? "" : `${dayMonth(date)}, ${lake?.name}, ${ice} `;
}

/**
 * One lake's phases as all-day events (RFC 5545), from middle day to middle day, the spread in the description; the later weeks, whose end
 * nobody forecasts, by their first day.
 */
export function seasonCalendar(guide: Guide, lake: GuideLake): string {
  const phases = lake.phases.map(({ phase, from, to }) => ({ phase, from, to: to as Spread | null }));
  const { laterWeeks } = lake;
  return calendarText(
    (laterWeeks === null
      ? phases
      : [...phases, { phase: "later-weeks" as const, from: laterWeeks, to: null }]
    ).map(({ phase, from, to }) => {
      const event = allDayEvent(guide, {
        uid: `${guide.season}-${phase}-${lake.slug}`,
        from: from.p50,
        until: addDays((to ?? from).p50, 1),
        summary: `${lake.name}: ${phaseName(phase).toLowerCase()}${to === null ? " begin" : ""}`,
        description: `From ${spreadText(from)}${to === null ? "" : ` until ${spreadText(to)}`}, as of ${guide.asOf}. ${iceText(lake, from.p50)}${FORECAST_NOTE}`,
      });
      event.updatePropertyWithValue("geo", `${lake.position.lat};${lake.position.lon}`);
      return event;
    }),
  );
}

type Day = GuideTrip["days"][number];

/** A lake's chance on the day, or that its road is closed. */
function lakeText(day: Day, lake: { readonly slug: string; readonly name: string }): string {
  const row = day.lakes.find(({ slug }) => slug === lake.slug);
  if (row === undefined) return lake.name;
  return row.open ? `${lake.name} ${chanceText(row.good)} good` : `${lake.name}, road closed`;
}

/** Where to go that day, where else, and from when there is light. */
function dayText({ pick, fishable, light }: GuideTrip, day: Day): string {
  const first = light.find(({ date }) => date === day.date)?.firstLight ?? null;
  const go =
    pick === null
      ? ["No lake can be reached."]
      : [
          `Go to: ${lakeText(day, pick)}.`,
          ...(pick.fallback === null
            ? []
            : [`Or else: ${lakeText(day, pick.fallback)}; one of the two ${chanceText(day.either)}.`]),
        ];
  const others = fishable.length === 0 ? [] : [fishableText(fishable)];
  return [...go, ...others, ...(first === null ? [] : [`First light ${clockText(first)}.`])].join(" ");
}

/** A trip's days as all-day events (RFC 5545), each with that day's chances and first light. */
export const tripCalendar = (guide: Guide, trip: GuideTrip): string => {
  const lakeOf = (slug: string | undefined): GuideLake | undefined =>
    guide.lakes.find((lake) => lake.slug === slug);
  return calendarText(
    trip.days.map((day, i) => {
      const event = allDayEvent(guide, {
        uid: `${guide.season}-trip-${trip.slug}-${day.date}`,
        from: day.date,
        until: addDays(day.date, 1),
        summary: trip.days.length === 1 ? trip.name : `${trip.name}, day ${i + 1} of ${trip.days.length}`,
        description: `${dayText(trip, day)} ${[trip.pick, trip.pick?.fallback].map((to) => iceText(lakeOf(to?.slug), day.date)).join("")}As of ${guide.asOf}. ${FORECAST_NOTE}`,
      });
      const lake = lakeOf(trip.pick?.slug);
      if (lake !== undefined) {
        event.updatePropertyWithValue("location", replaceControlCharacters(lake.name));
        event.updatePropertyWithValue("geo", `${lake.position.lat};${lake.position.lon}`);
      }
      return event;
    }),
  );
};
