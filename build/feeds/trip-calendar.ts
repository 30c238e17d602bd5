import type { Guide, GuideTrip } from "../guide/guide-schema.ts";
import { addDays } from "../model/calendar.ts";
import { clockText } from "../model/clock.ts";
import { chanceText } from "../model/units.ts";
import { allDayEvent, calendarText, FORECAST_NOTE, withoutControls } from "./calendar.ts";

type Day = GuideTrip["days"][number];

/** A lake's chance on the day, or that its road is closed. */
function lakeText(day: Day, lake: { readonly slug: string; readonly name: string }): string {
  const row = day.lakes.find(({ slug }) => slug === lake.slug);
  if (row === undefined) return lake.name;
  return row.open ? `${lake.name} ${chanceText(row.good)} good` : `${lake.name}, road closed`;
}

/** Where to go that day, where else, and from when there is light. */
function dayText({ pick, light }: GuideTrip, day: Day): string {
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
  return [...go, ...(first === null ? [] : [`First light ${clockText(first)}.`])].join(" ");
}

/** A trip's days as all-day events (RFC 5545), each with that day's chances and first light. */
export const tripCalendar = (guide: Guide, trip: GuideTrip): string =>
  calendarText(
    trip.days.map((day, i) => {
      const event = allDayEvent(guide, {
        uid: `${guide.season}-trip-${trip.slug}-${day.date}`,
        from: day.date,
        until: addDays(day.date, 1),
        summary: trip.days.length === 1 ? trip.name : `${trip.name}, day ${i + 1} of ${trip.days.length}`,
        description: `${dayText(trip, day)} As of ${guide.asOf}. ${FORECAST_NOTE}`,
      });
      const lake = guide.lakes.find(({ slug }) => slug === trip.pick?.slug);
      if (lake !== undefined) {
        event.updatePropertyWithValue("location", withoutControls(lake.name));
        event.updatePropertyWithValue("geo", `${lake.position.lat};${lake.position.lon}`);
      }
      return event;
    }),
  );
