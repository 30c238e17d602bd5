import { type CalendarDate, dayMonth } from "../model/calendar.ts";
import { chanceText } from "../model/units.ts";
import type { GuideLake } from "./guide-schema.ts";

/** Above this chance of ice, open water is not named without a warning. Our judgement, on the careful side. */
const LEAST_ICE = 0.05;

/** "21 %: ice still on; stay off what is left."; nothing where ice is less likely than 5 %. */
const chanceOfIceText = (iced: number): string | null =>
  iced > LEAST_ICE ? `${chanceText(iced)}: ice still on; stay off what is left.` : null;

type IceLake = Pick<GuideLake, "daily">;

/** The same on the likeliest of some days. */
export function iceOnDaysText({ daily }: IceLake, from: CalendarDate, to: CalendarDate): string | null {
  const days = daily.filter(({ date }) => date >= from && date <= to);
  return chanceOfIceText(Math.max(0, ...days.map(({ iced }) => iced)));
}

/** The warning that belongs beside a state of open water: a chance of ice today, or ice last seen in part. */
export function iceLeftText(
  lake: Pick<GuideLake, "now" | "daily" | "marks">,
  asOf: CalendarDate,
): string | null {
  if (lake.now.state === "iced") return null;
  const seen = lake.marks.findLast((mark) => mark.seen.startsWith("ice "));
  const inPart =
    seen?.seen === "ice part" ? `Ice in part on ${dayMonth(seen.date)}: stay off what is left.` : null;
  return iceOnDaysText(lake, asOf, asOf) ?? inPart;
}
