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
    const chance = onset[a] as number;
    if (chance === 0) continue;
    const byK = new Float64Array(DAYS).map((_, k) => words(a, k));
    const runs: { to: number; factor: number }[] = [];
    for (let k = a + 1; k < DAYS; k++)
      if (k === LAST_DAY || (byK[k] as number) !== (byK[k + 1] as number))
        runs.push({ to: k, factor: byK[k] as number });
    days.push({ a, chance, runs });
    same[a] = chance * (byK[a] as number);
    for (let d = a + 1; d < DAYS; d++) {
      kNow[d] = (kNow[d] as number) + chance * (byK[d] as number);
      if (d >= LEAST_BEST_DAYS)
        kBefore[d] = (kBefore[d] as number) + chance * (byK[d - LEAST_BEST_DAYS] as number);
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
  const on = (d: number): number => (byK[d] as number) - (d === 0 ? 0 : (byK[d - 1] as number));
  let [over, longOver, begun, next] = [0, 0, 0, 0];
  for (let d = 0; d < DAYS; d++) {
    over += (same[d] as number) * (byK[d] as number) + on(d) * (kNow[d] as number);
    const before = d - LEAST_BEST_DAYS;
    if (before >= 0)
      longOver += (same[d] as number) * (byK[before] as number) + on(before) * (kBefore[d] as number);
    const day = days[next];
    if (day?.a === d) {
      next++;
      begun += (same[d] as number) * (byK[d] as number);
      let before = byK[d] as number;
      for (const { to, factor } of day.runs) {
        begun += day.chance * factor * ((byK[to] as number) - before);
        before = byK[to] as number;
      }
    }
    into.over[d] = over;
    into.longOver[d] = longOver;
    into.begun[d] = begun;
  }
}

/** The same without reports: onset and k are independent. @param hasBegun chance that onset has come by each day */
export function sumsWithoutWords(hasBegun: Float64Array, byK: Float64Array, into: TurnoverSums): void {
  const all = byK[LAST_DAY] as number;
  const { over, longOver, begun } = into;
  for (let d = 0; d < DAYS; d++) {
    const onset = hasBegun[d] as number;
    over[d] = onset * (byK[d] as number);
    longOver[d] = d < LEAST_BEST_DAYS ? 0 : onset * (byK[d - LEAST_BEST_DAYS] as number);
    begun[d] = onset * all;
  }
}
