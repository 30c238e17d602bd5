import type { ListUse } from "./box-plan-use.ts";

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
