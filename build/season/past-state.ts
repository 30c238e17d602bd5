import { type CalendarDate, type Hemisphere, seasonDay, seasonOf } from "../model/calendar.ts";
import { type DayState, likeliestState } from "../model/phase.ts";
import { clocksOfLake } from "./after-ice/lake-history.ts";
import { statesOn } from "./after-ice/spring.ts";
import { seasonStates, statesAfterIceOff } from "./after-ice/states.ts";
import { meanOf } from "./numbers.ts";
import { iceOffBySeason } from "./records.ts";
import type { SeasonLake } from "./season-evidence.ts";

/** An ice-off known to within this many days is taken at its middle; a wider one says nothing of the state. Our judgement, no source. */
const WIDEST_DAYS = 7;

/**
 * What a lake most likely was on a day of a past season, from that season's records: null when its ice-off was not recorded.
 * @param asOf records dated later are not used
 */
export function pastState(
  lake: SeasonLake,
  date: CalendarDate,
  asOf: CalendarDate,
  hemisphere: Hemisphere,
): DayState | null {
  const season = seasonOf(date, hemisphere);
  const past = iceOffBySeason(lake, hemisphere, asOf);
  const days = past.get(season);
  if (days === undefined || !(days.to - days.from <= WIDEST_DAYS)) return null;
  const middles = [...past.values()]
    .map(({ from, to }) => (from + to) / 2)
    .filter((middle) => Number.isFinite(middle));
  const usual = { day: meanOf(middles), variance: 0 };
  const clocks = clocksOfLake(lake, usual, past, { season, asOf, hemisphere });
  const law = { from: Math.round((days.from + days.to) / 2), chances: Float64Array.of(1) };
  const states = seasonStates(law, statesAfterIceOff(clocks, []));
  return likeliestState(statesOn(states, seasonDay(date, season, hemisphere)));
}
