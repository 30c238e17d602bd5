import { weekdayDayMonth } from "../model/calendar.ts";
import type { GuideTrip } from "./guide-schema.ts";

/** One thing to tell whoever stays ashore: what it is, and what of it is known; the rest is written by hand. */
export interface TellLine {
  readonly label: string;
  readonly given: string | null;
}

/** What to leave with someone ashore before the boats go out. */
export const tellLines = ({ to }: Pick<GuideTrip, "to">): TellLine[] => [
  { label: "Told to", given: null },
  { label: "Trip leader", given: null },
  { label: "Phone", given: null },
  { label: "Vehicle, plate", given: null },
  { label: "Launch", given: null },
  { label: "Due back", given: `${weekdayDayMonth(to)}, at` },
  { label: "If not back by", given: `${weekdayDayMonth(to)}, at` },
  { label: "then call", given: null },
];
