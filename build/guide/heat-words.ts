import { type CalendarDate, dayMonth } from "../model/calendar.ts";
import { chanceText, temperatureText, type UnitSystem } from "../model/units.ts";
import { STOP_C, TAKE_CARE_C } from "../model/warm-water.ts";
import type { GuideLake } from "./guide-schema.ts";

type Heat = GuideLake["heat"][number];

/** Above it the chance of warm water in July and August is understated, m. Our judgement. */
const UNDERSTATED_FROM_M = 1500;
/** From this chance on a day is told of as the first that may be so warm. */
const ONE_IN_TEN = 0.1;

/** "Take care at 64 °F and over; stop at 68 °F and over." */
export const heatRule = (units: UnitSystem): string =>
  `Take care at ${temperatureText(TAKE_CARE_C, units)} and over; stop at ${temperatureText(STOP_C, units)} and over.`;

/** When a limit may be passed: "at least 12 % today; at least 1 in 10 from 9 Jun; highest on 26 Jul, at least 53 %". */
function whenOver(
  { heat, elevation_m }: Pick<GuideLake, "heat" | "elevation_m">,
  asOf: CalendarDate,
  chance: (row: Heat) => number,
): string {
  const ahead = heat.filter(({ date }) => date >= asOf);
  const [first] = ahead;
  if (first === undefined) return "under 1 % on every day to come";
  const highest = ahead.reduce((most, row) => (chance(row) > chance(most) ? row : most), first);
  const least = elevation_m !== null && elevation_m > UNDERSTATED_FROM_M ? "at least " : "";
  if (chance(highest) < 0.01) return "under 1 % on every day to come";
  const from = ahead.find((row) => chance(row) >= ONE_IN_TEN);
  return [
    ...(first.date === asOf ? [`${least}${chanceText(chance(first))} today`] : []),
    ...(from === undefined || from.date === asOf ? [] : [`${least}1 in 10 from ${dayMonth(from.date)}`]),
    `highest on ${dayMonth(highest.date)}, ${least}${chanceText(chance(highest))}`,
  ].join("; ");
}

/** A line for each limit of warm water, with its chance on the days to come. */
export const heatLines = (
  lake: Pick<GuideLake, "heat" | "elevation_m">,
  asOf: CalendarDate,
  units: UnitSystem,
): string[] => [
  `Take care at ${temperatureText(TAKE_CARE_C, units)} and over: ${whenOver(lake, asOf, ({ takeCare }) => takeCare)}.`,
  `Stop at ${temperatureText(STOP_C, units)} and over: ${whenOver(lake, asOf, ({ stop }) => stop)}.`,
];
