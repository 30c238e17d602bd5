import { addDays, type CalendarDate, hemisphereOf, seasonOf } from "../model/calendar.ts";
import type { Lake, Report } from "../model/club.ts";
import type { Mark } from "../season/forecast.ts";
import type { LakeReports } from "./report-seasons-schema.ts";

/** The last day a report shows ice to have been whole or in part: on the day itself, or on the one before an ice that goes. */
const icedOn = ({ ice, date }: Report): CalendarDate[] =>
  ice === "on" ? [date] : ice === "part" ? [addDays(date, -1)] : [];

/** Ice off, or a phase that only an open lake can be in. */
const isOpen = ({ ice, phase }: Report): boolean =>
  ice === "off" || (ice === undefined && phase !== undefined);

const latest = (dates: readonly CalendarDate[]): CalendarDate | undefined => dates.toSorted().at(-1);

/**
 * Seasons in which reports saw a lake iced and then open, and no row of its file says when it opened, newest first. The fit of past
 * seasons reads rows only, so what stands in reports alone is lost to next year's forecast.
 * @param reports of the lake, up to the as-of date
 * @param marks of the season in progress: reports that they doubt are left out
 */
export function unrecordedIceOff(
  lake: Pick<Lake, "position" | "iceOff">,
  reports: readonly Report[],
  marks: readonly Mark[],
): LakeReports["unrecorded"] {
  const hemisphere = hemisphereOf(lake.position.lat);
  const doubted = new Set(marks.flatMap((mark) => (mark.doubted ? [mark.date] : [])));
  const trusted = reports.filter(({ date }) => !doubted.has(date));
  const seasons = [...new Set(trusted.map(({ date }) => seasonOf(date, hemisphere)))];
  return seasons
    .filter((season) => lake.iceOff.every((row) => row.season !== season))
    .sort((a, b) => b - a)
    .flatMap((season) => {
      const own = trusted.filter(({ date }) => seasonOf(date, hemisphere) === season);
      const by = own
        .filter(isOpen)
        .map(({ date }) => date)
        .toSorted()[0];
      const after = latest(own.flatMap(icedOn));
      return after === undefined || by === undefined || after >= by ? [] : [{ season, after, by }];
    });
}
