import {
  type CalendarDate,
  dateOfSeasonDay,
  daysBetween,
  type Hemisphere,
  seasonOf,
} from "../model/calendar.ts";
import type { Lake } from "../model/club.ts";
import { DAY_STATES, type DayState } from "../model/phase.ts";
import { LAST_BEST_DAY } from "./phases.ts";
import { iceOffBySeason } from "./records.ts";
import { turnoverCases } from "./turnover-times.ts";

/** An ice-off known to within this many days is taken at its middle; a wider one tells no phase. Our judgement, no source. */
const WIDEST_DAYS = 7;

/**
 * What a lake most likely was on a day of a past season, from that season's records: null when its ice-off was not recorded.
 * @param asOf records dated later are not used
 */
export function pastState(
  lake: Lake,
  date: CalendarDate,
  asOf: CalendarDate,
  hemisphere: Hemisphere,
): DayState | null {
  const season = seasonOf(date, hemisphere);
  const past = iceOffBySeason(lake, hemisphere, asOf);
  const days = past.get(season);
  if (days === undefined || !(days.to - days.from <= WIDEST_DAYS)) return null;
  const opened = dateOfSeasonDay(Math.round((days.from + days.to) / 2), season, hemisphere);
  const day = daysBetween(opened, date);
  if (day < 0) return "iced";
  const seen = lake.turnover.find((record) => record.season === season && record.to <= asOf);
  const cases =
    seen === undefined
      ? turnoverCases(lake, past, season, asOf, hemisphere)
      : [
          {
            onset: daysBetween(opened, seen.from),
            duration: daysBetween(seen.from, seen.to) + 1,
            chance: 1,
          },
        ];
  const chances = new Map<DayState, number>();
  for (const { onset, duration, chance } of cases) {
    const state = stateAfter(day, onset, onset + duration);
    chances.set(state, (chances.get(state) ?? 0) + chance);
  }
  return DAY_STATES.reduce((best, state) =>
    (chances.get(state) ?? 0) > (chances.get(best) ?? 0) ? state : best,
  );
}

function stateAfter(day: number, onset: number, clear: number): DayState {
  if (day < onset) return "iceOff";
  if (day < clear) return "turnover";
  return day <= LAST_BEST_DAY ? "postTurnover" : "summer";
}
