import type { CalendarDate } from "../model/calendar.ts";
import { chanceOf, GOOD_STATES } from "../model/phase.ts";
import type { LakeForecast } from "../season/forecast.ts";
import { runAboutBest } from "../season/lake-forecast.ts";

/** The best days of those on which a lake's road is open; null where none of them is likely good. */
export function bestDaysInReach(
  { bestDays, daily }: Pick<LakeForecast, "bestDays" | "daily">,
  opens: CalendarDate | undefined,
): LakeForecast["bestDays"] {
  if (bestDays === null || opens === undefined || opens <= bestDays.from) return bestDays;
  const open = daily.filter(({ date }) => date >= opens);
  const run = runAboutBest(open.map((row) => Math.min(1, chanceOf(row, GOOD_STATES))));
  const [from, to] = [open[run?.from ?? -1]?.date, open[run?.to ?? -1]?.date];
  return run === null || from === undefined || to === undefined ? null : { from, to, chance: run.chance };
}
