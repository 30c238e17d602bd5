import { at } from "../numbers.ts";
import type { StateWords } from "./lake-clocks.ts";
import { LEAST_BEST_DAYS } from "./lake-clocks.ts";
import { DAYS, LAST_DAY } from "./lake-traits.ts";

/**
 * Joint chances of onset `a` and of the first clear, settled day `k`, by each day after ice-off; with what reports say of the states as
 * factors, so that they need not end at 1.
 */
export interface TurnoverSums {
  /** a and k have both come. */
  readonly over: Float64Array;
  /** a has come, k came 14 days ago. */
  readonly longOver: Float64Array;
  /** a has come, k may be any day. */
  readonly begun: Float64Array;
}

/** The reports' factors summed over the days of onset, ready for any law of `k`. */
export interface WordTables {
  readonly onset: Float64Array;
  /** Each day of onset with the factor of later days of k, run by run: from one more than the last run's end to its own. */
  readonly days: readonly {
    readonly a: number;
    readonly chance: number;
    readonly runs: readonly { readonly to: number; readonly factor: number }[];
  }[];
  /** At d: onset on d, both come. */
  readonly same: Float64Array;
  /** At d: onset before d, k on d. */
  readonly kNow: Float64Array;
  /** At d: onset before d, k 14 days ago. */
  readonly kBefore: Float64Array;
}

export function wordTables(onset: Float64Array, words: StateWords): WordTables {
  const days: { a: number; chance: number; runs: { to: number; factor: number }[] }[] = [];
  const [same, kNow, kBefore] = [new Float64Array(DAYS), new Float64Array(DAYS), new Float64Array(DAYS)];
  for (let a = 0; a < DAYS; a++) {
    const chance = at(onset, a);
    if (chance === 0) continue;
    const byK = new Float64Array(DAYS).map((_, k) => words(a, k));
    const runs: { to: number; factor: number }[] = [];
    for (let k = a + 1; k < DAYS; k++)
      if (k === LAST_DAY || at(byK, k) !== at(byK, k + 1)) runs.push({ to: k, factor: at(byK, k) });
    days.push({ a, chance, runs });
    same[a] = chance * at(byK, a);
    for (let d = a + 1; d < DAYS; d++) {
      kNow[d] = at(kNow, d) + chance * at(byK, d);
      if (d >= LEAST_BEST_DAYS) kBefore[d] = at(kBefore, d) + chance * at(byK, d - LEAST_BEST_DAYS);
    }
  }
  return { onset, days, same, kNow, kBefore };
}

/** Sums for one law of k. @param byK chance that k has come by each day, readings included */
export function sumsWithWords(
  { days, same, kNow, kBefore }: WordTables,
  byK: Float64Array,
  into: TurnoverSums,
): void {
  const on = (d: number): number => at(byK, d) - (d === 0 ? 0 : at(byK, d - 1));
  let [over, longOver, begun, next] = [0, 0, 0, 0];
  for (let d = 0; d < DAYS; d++) {
    over += at(same, d) * at(byK, d) + on(d) * at(kNow, d);
    const before = d - LEAST_BEST_DAYS;
    if (before >= 0) longOver += at(same, d) * at(byK, before) + on(before) * at(kBefore, d);
    const day = days[next];
    if (day?.a === d) {
      next++;
      begun += at(same, d) * at(byK, d);
      let before = at(byK, d);
      for (const { to, factor } of day.runs) {
        begun += day.chance * factor * (at(byK, to) - before);
        before = at(byK, to);
      }
    }
    into.over[d] = over;
    into.longOver[d] = longOver;
    into.begun[d] = begun;
  }
}

/** The same without reports: onset and k are independent. @param hasBegun chance that onset has come by each day */
export function sumsWithoutWords(hasBegun: Float64Array, byK: Float64Array, into: TurnoverSums): void {
  const all = at(byK, LAST_DAY);
  const { over, longOver, begun } = into;
  for (let d = 0; d < DAYS; d++) {
    const onset = at(hasBegun, d);
    over[d] = onset * at(byK, d);
    longOver[d] = d < LEAST_BEST_DAYS ? 0 : onset * at(byK, d - LEAST_BEST_DAYS);
    begun[d] = onset * all;
  }
}
