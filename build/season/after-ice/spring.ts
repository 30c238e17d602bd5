import type { DayState } from "../../model/phase.ts";
import { at } from "../numbers.ts";
import { CHANGES, type Change, chanceBy, rounded, type SeasonStates } from "./states.ts";

/** A lake's spring as everything that is shown reads it: chances to four decimals, so that every table agrees. */
export interface Spring {
  /** Day of season of the first place of every array. */
  readonly firstDay: number;
  /** Chance that each change has come by a day. */
  readonly by: Readonly<Record<Change, Float64Array>>;
  /** Chance of each ice-off day; not rounded. */
  readonly iceOff: Float64Array;
  /** Chance of surface water at which to take care, and to stop. */
  readonly takeCare: Float64Array;
  readonly stop: Float64Array;
  /** Chance that each of the lake's statements is true. */
  readonly fit: readonly number[];
}

export function springOf({ firstDay, by, iceOff, takeCare, stop }: SeasonStates): Omit<Spring, "fit"> {
  return {
    firstDay,
    iceOff,
    by: {
      iceOff: by.iceOff.map(rounded),
      onset: by.onset.map(rounded),
      clear: by.clear.map(rounded),
      later: by.later.map(rounded),
    },
    takeCare: takeCare.map(rounded),
    stop: stop.map(rounded),
  };
}

/** Chance of each state on one day; they sum to 1. */
export function statesOn(spring: Pick<Spring, "by" | "firstDay">, day: number): Record<DayState, number> {
  const [open = 0, turning = 0, clear = 0, later = 0] = CHANGES.map((change) =>
    chanceBy(spring, change, day),
  );
  return {
    iced: rounded(1 - open),
    iceOff: rounded(open - turning),
    turnover: rounded(turning - clear),
    postTurnover: rounded(clear - later),
    laterWeeks: rounded(later),
  };
}

/** Chance of warm water on one day. */
export function heatOn(
  { takeCare, stop, firstDay }: Pick<Spring, "takeCare" | "stop" | "firstDay">,
  day: number,
): { takeCare: number; stop: number } {
  const place = day - firstDay;
  const chanceIn = (chances: Float64Array): number =>
    place < 0 || place >= chances.length ? 0 : at(chances, place);
  return { takeCare: chanceIn(takeCare), stop: chanceIn(stop) };
}
