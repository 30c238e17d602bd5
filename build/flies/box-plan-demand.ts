import { poissonDistribution } from "simple-statistics";
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
 * ice, which has no list, takes nothing. A list without flies takes nothing either.
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

/** A pattern is carried when one rod is to fish it for about an hour, a tenth of a day. Common practice, no source. */
const WORTH_CARRYING_RODDAYS = 0.1;
/** Spares of every pattern carried. Common practice, no source. */
const LEAST_SPARES = 2;

/** How much a pattern is fished by its place in a list, from 0: the second half as much as the first, the third a third. */
const placeWeight = (place: number): number => 1 / (place + 1);

export interface PatternUse {
  readonly pattern: string;
  readonly use_rodDays: number;
  /** The list that calls for it most, and its place there, from 0. */
  readonly list: ListUse;
  readonly place: number;
  readonly spares: number;
}

/**
 * The patterns worth carrying with their use and spares, in no order. A list's use is shared among its flies by place.
 * Each pattern has two spares, the first choice of a list that is fished enough one for each rod.
 */
export function patternUses(lists: readonly ListUse[], rods: number): PatternUse[] {
  const uses = new Map<string, Omit<PatternUse, "spares"> & { most: number; first: boolean }>();
  for (const list of lists.filter(({ use_rodDays }) => use_rodDays > 0)) {
    const all = list.patterns.reduce((sum, _, place) => sum + placeWeight(place), 0);
    for (const [place, pattern] of list.patterns.entries()) {
      const use_rodDays = (list.use_rodDays * placeWeight(place)) / all;
      const known = uses.get(pattern);
      const leads = known === undefined || use_rodDays > known.most;
      uses.set(pattern, {
        pattern,
        use_rodDays: (known?.use_rodDays ?? 0) + use_rodDays,
        list: leads ? list : known.list,
        place: leads ? place : known.place,
        most: leads ? use_rodDays : known.most,
        first: known?.first === true || (place === 0 && list.use_rodDays >= WORTH_CARRYING_RODDAYS),
      });
    }
  }
  const all = [...uses.values()].sort((a, b) => b.use_rodDays - a.use_rodDays);
  const worth = all.filter(({ use_rodDays }) => use_rodDays >= WORTH_CARRYING_RODDAYS);
  return (worth.length > 0 ? worth : all.slice(0, 1)).map(({ first, most: _, ...use }) => ({
    ...use,
    spares: first ? Math.max(LEAST_SPARES, rods) : LEAST_SPARES,
  }));
}

/**
 * Whole parts of a total in proportion to the weights, by largest remainder: they sum to the total exactly.
 * @param weights from 0, not all 0
 */
export function apportion(total: number, weights: readonly number[]): number[] {
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  const quotas = weights.map((weight) => (total * weight) / all);
  const parts = quotas.map(Math.floor);
  const left = total - parts.reduce((sum, part) => sum + part, 0);
  const byRemainder = quotas
    .map((quota, i) => ({ i, remainder: quota - Math.floor(quota) }))
    .sort((a, b) => b.remainder - a.remainder || a.i - b.i);
  const raised = new Set(byRemainder.slice(0, left).map(({ i }) => i));
  return parts.map((part, i) => part + (raised.has(i) ? 1 : 0));
}

/** Flies a rod loses in a day where the trip does not say. Common practice, no source. */
const USUAL_LOSS_RODDAY = 3;
/** So many trips out of a hundred are to come home without having run out. */
const COVERED = 0.9;

/**
 * The smallest count that a Poisson number of this mean stays within with the given chance.
 * @param mean from 0; below a million
 * @param chance above 0, at most 0.999
 * @throws RangeError for a mean that has no distribution
 */
export function poissonQuantile(mean: number, chance: number): number {
  if (mean === 0) return 0;
  const cells = poissonDistribution(mean);
  if (cells === undefined) throw new RangeError(`no Poisson distribution has the mean ${mean}`);
  let sum = 0;
  const count = cells.findIndex((cell) => {
    sum += cell;
    return sum >= chance;
  });
  return count === -1 ? cells.length - 1 : count;
}

export interface Losses {
  /** On average. */
  readonly expected: number;
  /** What nine trips in ten stay within. */
  readonly covered: number;
  readonly perRodDay: number;
}

/** Flies a trip loses: each rod loses its flies one by one, by chance, so the total is a Poisson number. */
export function lossesOf(rods: number, days: number, flyLoss_rodDay = USUAL_LOSS_RODDAY): Losses {
  const expected = rods * days * flyLoss_rodDay;
  return { expected, covered: poissonQuantile(expected, COVERED), perRodDay: flyLoss_rodDay };
}
