import { chanceOfStatements, type DaySpan, springOf } from "./lake-evidence.ts";
import { addTo, at, normalised } from "./numbers.ts";
import type { Statement } from "./statements.ts";
import type { TurnoverCase } from "./turnover-times.ts";

/** Weeks 3 to 5 after ice-off, the best ones, end on this day after it. Common practice, no published source. */
export const LAST_BEST_DAY = 35;

/** The four days on which a lake changes its state, in the order they come. */
const CHANGES = ["iceOff", "onset", "clear", "summer"] as const;
export type Change = (typeof CHANGES)[number];

/** A lake's spring, with all that was seen on it. */
export interface Spring {
  /** For each change, the chance that it has come by a day, from `firstDay` on; rounded for print, so that every table agrees. */
  readonly by: Readonly<Record<Change, Float64Array>>;
  readonly firstDay: number;
  /** Chance of each day of ice-off, over the span it was asked for; not rounded. */
  readonly iceOff: Float64Array;
  /** Chance that each statement is true. */
  readonly fit: readonly number[];
}

/** Chances are kept to four decimals: finer than any of this is known. */
const PARTS = 1e4;
/** Days of ice-off with less than this chance are passed over. */
const NEGLIGIBLE = 1e-12;

/**
 * Enumerates every ice-off day and every way the turnover may run.
 * @param chances of ice-off day by day over the span, from the season alone
 */
export function springOfLake(
  chances: Float64Array,
  span: DaySpan,
  cases: readonly TurnoverCase[],
  statements: readonly Statement[],
): Spring {
  const longest = cases.reduce(
    (days, { onset, duration }) => Math.max(days, onset + duration),
    LAST_BEST_DAY,
  );
  const length = span.to - span.from + longest + 2;
  const count = (): Float64Array => new Float64Array(length);
  const counts = { iceOff: count(), onset: count(), clear: count(), summer: count() };
  const fit = new Float64Array(statements.length);
  let all = 0;
  for (let i = 0; i < chances.length; i++) {
    if (at(chances, i) < NEGLIGIBLE) continue;
    for (const turnover of cases) {
      const spring = springOf(span.from + i, turnover);
      const weight = at(chances, i) * turnover.chance * chanceOfStatements(statements, spring);
      all += weight;
      addTo(counts.iceOff, i, weight);
      addTo(counts.onset, spring.onset - span.from, weight);
      addTo(counts.clear, spring.clear - span.from, weight);
      addTo(counts.summer, Math.max(i + LAST_BEST_DAY + 1, spring.clear - span.from), weight);
      for (let r = 0; r < statements.length; r++) if (statements[r]?.fits(spring)) addTo(fit, r, weight);
    }
  }
  const cumulated = (days: Float64Array): Float64Array => {
    let sum = 0;
    return days.map((weight) => {
      sum += weight / all;
      return Math.min(1, Math.round(sum * PARTS) / PARTS);
    });
  };
  return {
    by: {
      iceOff: cumulated(counts.iceOff),
      onset: cumulated(counts.onset),
      clear: cumulated(counts.clear),
      summer: cumulated(counts.summer),
    },
    firstDay: span.from,
    iceOff: normalised(counts.iceOff.slice(0, chances.length)),
    fit: Array.from(fit, (weight) => weight / all),
  };
}

/** Chance that a change has come by a day. */
export function chanceBy(spring: Spring, change: Change, day: number): number {
  const place = day - spring.firstDay;
  const by = spring.by[change];
  return place < 0 ? 0 : at(by, Math.min(place, by.length - 1));
}

/** First day by which a change has come with at least this chance. */
export function dayBy(spring: Spring, change: Change, chance: number): number {
  const place = spring.by[change].findIndex((by) => by >= chance);
  return spring.firstDay + (place < 0 ? spring.by[change].length - 1 : place);
}

/** Chance of each state on one day; they sum to 1. */
export function statesOn(spring: Spring, day: number) {
  const [open, cloudy, clear, over] = CHANGES.map((change) => chanceBy(spring, change, day));
  const part = (chance: number): number => Math.max(0, Math.round(chance * PARTS) / PARTS);
  const [a, b, c, d] = [open ?? 0, cloudy ?? 0, clear ?? 0, over ?? 0];
  return {
    iced: part(1 - a),
    iceOff: part(a - b),
    turnover: part(b - c),
    postTurnover: part(c - d),
    summer: part(d),
  };
}
