import { addDays, type CalendarDate, daysFromTo, weekendFrom } from "../model/calendar.ts";
import {
  chanceOf,
  DAY_STATES,
  type DayState,
  FISHABLE_STATES,
  GOOD_STATES,
  likeliestState,
  STATE_WORDS,
} from "../model/phase.ts";
import { chanceText } from "../model/units.ts";
import { isOpenOn } from "../season/choose-pair.ts";
import type { Board, Guide, GuideLake } from "./guide-schema.ts";
import { lakeAccess } from "./when.ts";

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

type GroupId = Board["groups"][number]["id"];

interface Row {
  readonly lake: GuideLake;
  /** Chances over the weekend's days; a day before its road opens counts as none. */
  readonly weekend: number | null;
  readonly fishable: number | null;
  /** Chance of being good, road or no road. */
  readonly goodBehindRoad: number | null;
}

/** A lake is worth the drive on a weekend when it is more likely good than not. */
const WORTH_THE_DRIVE = 0.5;
const SOON_DAYS = 14;

/** Mean chance, over the days, that the lake is in one of some states; null when the guide does not cover them. */
function chanceOver(
  lake: GuideLake,
  days: readonly CalendarDate[],
  states: readonly DayState[],
  counts: (date: CalendarDate) => boolean = (date) => isOpenOn(lakeAccess(lake), date),
): number | null {
  const rows = lake.daily.filter(({ date }) => days.includes(date));
  if (rows.length === 0) return null;
  const sum = rows.reduce((all, row) => all + (counts(row.date) ? chanceOf(row, states) : 0), 0);
  return Math.min(1, sum / rows.length);
}

const later = (a: CalendarDate, b: CalendarDate | null): CalendarDate => (b !== null && b > a ? b : a);

/** The day from which a lake is worth the drive: good by then, and its road open; null when its good days are over. */
function worthFrom({ lake, goodBehindRoad }: Row, days: readonly CalendarDate[]): CalendarDate | null {
  const [first] = days;
  const { opens } = lakeAccess(lake);
  if (first !== undefined && (goodBehindRoad ?? 0) >= WORTH_THE_DRIVE) return later(first, opens);
  return lake.next === null ? null : later(lake.next.from.p50, opens);
}

function groupOf(row: Row, days: readonly CalendarDate[], soonUntil: CalendarDate): GroupId {
  const from = worthFrom(row, days);
  const isOpen = days.some((day) => isOpenOn(lakeAccess(row.lake), day));
  if (isOpen && row.weekend !== null && row.weekend >= WORTH_THE_DRIVE) return "weekend";
  if (from !== null && from <= soonUntil) return "soon";
  if (isOpen && (row.fishable ?? 0) >= WORTH_THE_DRIVE) return "fishable";
  return from === null ? "past" : "later";
}

/**
 * Lakes to go to this weekend first, the likeliest on top; then those that come right soonest; then those in their later weeks; then those past. A lake
 * whose road is not open by then waits for it.
 */
export function arrangeBoard(lakes: readonly GuideLake[], asOf: CalendarDate): Board {
  const weekend = weekendFrom(asOf);
  const soonUntil = addDays(asOf, SOON_DAYS);
  const rows = lakes.map((lake) => ({
    lake,
    weekend: chanceOver(lake, weekend, GOOD_STATES),
    fishable: chanceOver(lake, weekend, FISHABLE_STATES),
    goodBehindRoad: chanceOver(lake, weekend, GOOD_STATES, () => true),
  }));
  const nextDay = (row: Row): CalendarDate => worthFrom(row, weekend) ?? row.lake.iceOff.p50;
  const groups = (["weekend", "soon", "fishable", "later", "past"] as const).map((id) => ({
    id,
    lakes: rows
      .filter((row) => groupOf(row, weekend, soonUntil) === id)
      .sort(
        (a, b) =>
          (id === "weekend" ? (b.weekend ?? 0) - (a.weekend ?? 0) : 0) ||
          (nextDay(a) < nextDay(b) ? -1 : nextDay(a) > nextDay(b) ? 1 : 0) ||
          (b.weekend ?? 0) - (a.weekend ?? 0),
      )
      .map(({ lake: { slug }, weekend: good, fishable }) => ({ slug, weekend: good, fishable })),
  }));
  return { weekend, groups: groups.filter((group) => group.lakes.length > 0) };
}
