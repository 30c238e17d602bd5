import type { Guide, GuideLake } from "../guide/guide-schema.ts";
import { spreadText } from "../guide/status-words.ts";
import { addDays } from "../model/calendar.ts";
import { phaseName } from "../model/phase.ts";
import { allDayEvent, calendarText, FORECAST_NOTE } from "./calendar.ts";

/** One lake's phases as all-day events (RFC 5545), from middle day to middle day, the spread in the description. */
export const seasonCalendar = (guide: Guide, lake: GuideLake): string =>
  calendarText(
    lake.phases.map(({ phase, from, to }) => {
      const event = allDayEvent(guide, {
        uid: `${guide.season}-${phase}-${lake.slug}`,
        from: from.p50,
        until: addDays(to.p50, 1),
        summary: `${lake.name}: ${phaseName(phase).toLowerCase()}`,
        description: `From ${spreadText(from)} until ${spreadText(to)}, as of ${guide.asOf}. ${FORECAST_NOTE}`,
      });
      event.updatePropertyWithValue("geo", `${lake.position.lat};${lake.position.lon}`);
      return event;
    }),
  );
