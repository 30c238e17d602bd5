import {
  addDays,
  type CalendarDate,
  dateOfSeasonDay,
  type Hemisphere,
  seasonDay,
  seasonOf,
} from "../../model/calendar.ts";
import type { Fault } from "../../model/fault.ts";

/** The season and the day the guide speaks from. */
export interface Moment {
  readonly season: number;
  readonly asOf: CalendarDate;
}

/** Where and when a lake's records are read; what is undefined could not be read and is not checked against. */
export interface SeasonContext {
  readonly hemisphere: Hemisphere | undefined;
  readonly moment: Moment | undefined;
}

/** The seventh month of a season ends: 31 July in the north, late January in the south. Common practice, no source. */
const LAST_SPRING_DAY = 213;

/** A date that lies outside the season named beside it. */
export function wrongSeason(
  key: string,
  date: CalendarDate,
  season: number,
  hemisphere: Hemisphere | undefined,
): Fault | undefined {
  if (hemisphere === undefined) return undefined;
  const actual = seasonOf(date, hemisphere);
  if (actual === season) return undefined;
  const first = dateOfSeasonDay(1, season, hemisphere);
  const last = addDays(dateOfSeasonDay(1, season + 1, hemisphere), -1);
  return {
    code: "wrong-season",
    message: `${key} ${date} is not in season ${season}, which runs from ${first} to ${last}`,
    hint: `correct the date, or write season: ${actual}`,
  };
}

/** A run of days that ends before it begins. */
export const fromAfterTo = (from: CalendarDate, to: CalendarDate): Fault => ({
  code: "from-after-to",
  message: `to ${to} is before from ${from}`,
  hint: "swap or correct them",
});

/** A season that has not come yet. */
export const futureSeason = (season: number, moment: Moment | undefined): Fault | undefined =>
  moment === undefined || season <= moment.season
    ? undefined
    : {
        code: "future-season",
        message: `season ${season} is later than the season of this guide, ${moment.season}`,
        hint: "correct the year, or set the new season in club.yaml",
      };

/** Ice that goes off in autumn: most likely the day the lake froze. */
export function outOfSpring(
  key: string,
  date: CalendarDate,
  season: number,
  hemisphere: Hemisphere | undefined,
): Fault | undefined {
  if (hemisphere === undefined || seasonDay(date, season, hemisphere) <= LAST_SPRING_DAY) return undefined;
  return {
    code: "ice-off-out-of-season",
    message: `${key} ${date} is too late in the year for the ice to go off`,
    hint: "write the spring day on which the ice went; the day it came has no place here",
  };
}

/** A date after the day the guide speaks from. */
export const afterAsOf = (date: CalendarDate | undefined, moment: Moment | undefined): Fault | undefined =>
  date === undefined || moment === undefined || date <= moment.asOf
    ? undefined
    : {
        code: "record-after-as-of",
        message: `${date} is after ${moment.asOf}, the day this guide speaks from; the row is not used`,
        hint: "correct the date, or set a later asOf in club.yaml",
      };

/** A second row for a season. */
export const secondRow = (season: number, firstLine: number, instead: string): Fault => ({
  code: "two-rows-a-season",
  message: `season ${season} has a row already, on line ${firstLine}; ${instead}`,
  hint: "keep the row you trust most",
});
