import { type CalendarDate, dateOfSeasonDay, daysBetween, type Hemisphere } from "../model/calendar.ts";
import type { DayRange } from "../model/club.ts";
import { addTo } from "./numbers.ts";
import type { IceOffDays } from "./records.ts";
import type { SeasonLake } from "./season-evidence.ts";

/** Days from ice-off to the first cloudy day, days it stays poor, and the chance of the two together. */
export interface TurnoverCase {
  readonly onset: number;
  readonly duration: number;
  readonly chance: number;
}

/** Weight of the club's rule, in observed turnovers: each season seen adds one to its own day. */
const RULE_WEIGHT = 8;
/** Longer waits or turnovers in the records are taken for slips and left out. */
const LONGEST_DAYS = 60;
/** A lake that does not turn over goes from ice-off to its best weeks on day 15. Common practice, no published source. */
const NO_TURNOVER: readonly TurnoverCase[] = [{ onset: 15, duration: 0, chance: 1 }];

function dayChances(range: DayRange, seen: readonly number[]): { day: number; chance: number }[] {
  const counted = seen.filter((days) => days >= 1 && days <= LONGEST_DAYS);
  const last = Math.max(range.to, ...counted);
  const weights = new Float64Array(last + 1);
  for (let day = range.from; day <= range.to; day++)
    addTo(weights, day, RULE_WEIGHT / (range.to - range.from + 1));
  for (const day of counted) addTo(weights, day, 1);
  const all = RULE_WEIGHT + counted.length;
  return Array.from(weights, (weight, day) => ({ day, chance: weight / all })).filter(
    ({ chance }) => chance > 0,
  );
}

/**
 * How this lake's turnover may run: the club's rule, updated by the turnovers of past seasons.
 * @param past ice-off of past seasons, from which the wait for a turnover is counted where the day is known
 * @param season the season in progress; its own record is evidence on this spring, not on the rule
 */
export function turnoverCases(
  lake: Pick<SeasonLake, "turnover" | "turnoverRule">,
  past: ReadonlyMap<number, IceOffDays>,
  season: number,
  asOf: CalendarDate,
  hemisphere: Hemisphere,
): readonly TurnoverCase[] {
  const rule = lake.turnoverRule;
  if (!rule.turnsOver) return NO_TURNOVER;
  const seen = lake.turnover.filter((record) => record.season !== season && record.to <= asOf);
  const onsets = seen.flatMap(({ season: year, from }) => {
    const iceOff = past.get(year);
    if (iceOff === undefined || iceOff.from !== iceOff.to) return [];
    return [daysBetween(dateOfSeasonDay(Math.round(iceOff.from), year, hemisphere), from)];
  });
  const durations = seen.map(({ from, to }) => daysBetween(from, to) + 1);
  return dayChances(rule.onset, onsets).flatMap((onset) =>
    dayChances(rule.duration, durations).map((duration) => ({
      onset: onset.day,
      duration: duration.day,
      chance: onset.chance * duration.chance,
    })),
  );
}
