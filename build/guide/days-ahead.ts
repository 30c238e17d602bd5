import { type CalendarDate, daysFromTo } from "../model/calendar.ts";
import { DAY_STATES, type DayState, likeliestState, STATE_WORDS } from "../model/phase.ts";
import { chanceText } from "../model/units.ts";
import type { Guide, GuideLake } from "./guide-schema.ts";

/** "Mixing, cloudy and poor. Leave it alone.": what a state means and what to do about it. */
export function stateText(state: DayState): string {
  const { meaning, advice } = STATE_WORDS[state];
  return `${meaning.charAt(0).toUpperCase()}${meaning.slice(1)}. ${advice}`;
}

/** The days that a reader may be standing on, as far as the forecast reaches. */
export const daysAhead = ({ asOf, window }: Pick<Guide, "asOf" | "window">): CalendarDate[] =>
  asOf > window.to ? [] : daysFromTo(asOf, window.to);

/**
 * The lake's likeliest state and its chance on each day from the as-of day on: "2 89 %;2 87 %;3 55 %", the state by
 * its place among a spring's. What the last one says holds to the end of the forecast.
 */
export const daysAheadText = ({ daily }: Pick<GuideLake, "daily">, { asOf }: Pick<Guide, "asOf">): string =>
  daily
    .filter(({ date }) => date >= asOf)
    .map((day) => {
      const state = likeliestState(day);
      return `${DAY_STATES.indexOf(state)} ${chanceText(day[state])}`;
    })
    .filter((_, i, days) => i === 0 || days.slice(i).some((later) => later !== days[i - 1]))
    .join(";");
