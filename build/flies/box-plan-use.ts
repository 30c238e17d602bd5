import type { CalendarDate } from "../model/calendar.ts";
import { type DayState, GOOD_STATES, type Phase, stateOfPhase } from "../model/phase.ts";

/** Of the days that the first choice is no good, the share spent on lakes beyond the fallback. Common practice, no source. */
const OTHERS_SHARE = 0.1;

type LakeDay = { readonly date: CalendarDate } & Readonly<Record<DayState, number>>;

/** A lake as far as its flies go. */
export interface BoxLake {
  readonly name: string;
  readonly daily: readonly LakeDay[];
  /** The fly list of each phase, best first. */
  readonly plan: readonly {
    readonly phase: Phase;
    readonly flies: readonly { readonly pattern: string }[];
  }[];
}

/** How much one list of flies is fished. */
export interface ListUse {
  readonly lake: string;
  readonly phase: Phase;
  /** Slugs, best first. */
  readonly patterns: readonly string[];
  readonly use_rodDays: number;
}

/**
 * The share of a day spent on each lake: on the first its chance of being good, on the second the rest; where there are
 * more, they share evenly a tenth of that rest. A lake alone gets the day.
 * @param good chance of each lake being good, the first choice first
 */
export function fishedShares(good: readonly number[]): number[] {
  const [first = 0] = good;
  if (good.length < 2) return good.map(() => 1);
  const rest = 1 - first;
  const others = good.length - 2;
  const toOthers = others === 0 ? 0 : OTHERS_SHARE;
  return good.map((_, i) => {
    if (i === 0) return first;
    return i === 1 ? rest * (1 - toOthers) : (rest * toOthers) / others;
  });
}

const goodOn = (day: LakeDay): number => GOOD_STATES.reduce((sum, state) => sum + day[state], 0);

/**
 * How much each lake's list for each phase is fished, and on how many days any is. A list's weight on a day is the
 * share of the day spent on its lake times the chance of its phase; the weights of a day are brought to one, so that
 * ice and summer, which have no list, take nothing. A list without flies takes nothing either.
 * @param lakes the first choice first, then the fallback
 */
export function listUses(
  days: readonly CalendarDate[],
  rods: number,
  lakes: readonly BoxLake[],
): { readonly lists: ListUse[]; readonly fishedDays: number } {
  const lists = lakes.flatMap(({ name, plan }, lake) =>
    plan
      .filter(({ flies }) => flies.length > 0)
      .map(({ phase, flies }) => ({
        lake,
        list: { lake: name, phase, patterns: flies.map(({ pattern }) => pattern) },
      })),
  );
  const uses = lists.map(() => 0);
  let fishedDays = 0;
  for (const date of days) {
    const states = lakes.map(({ daily }) => daily.find((day) => day.date === date));
    const shares = fishedShares(states.map((day) => (day === undefined ? 0 : goodOn(day))));
    const weights = lists.map(
      ({ lake, list }) => (shares[lake] ?? 0) * (states[lake]?.[stateOfPhase(list.phase)] ?? 0),
    );
    const all = weights.reduce((sum, weight) => sum + weight, 0);
    if (all === 0) continue;
    fishedDays += 1;
    for (const [i, weight] of weights.entries()) uses[i] = (uses[i] ?? 0) + (rods * weight) / all;
  }
  return { lists: lists.map(({ list }, i) => ({ ...list, use_rodDays: uses[i] ?? 0 })), fishedDays };
}
