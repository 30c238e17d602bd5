import { at } from "../numbers.ts";
import { factorsOfReadings, type LakeClocks } from "./lake-clocks.ts";
import type { Reading } from "./readings.ts";
import { type Change, type IceOffLaw, type SeasonStates, seasonStates, statesAfterIceOff } from "./states.ts";

/** How one reading moved a lake: mean days by which it shifted the beginning of its best weeks and their end; later is positive. */
export interface ReadingEffect {
  readonly reading: Reading;
  readonly bestWeeks_d: number;
  readonly laterWeeks_d: number;
}

/** Mean day of a change, from the first day of the states on. */
function meanDay({ by }: SeasonStates, change: Change): number {
  let days = 0;
  for (let i = 0; i < by[change].length; i++) days += 1 - at(by[change], i);
  return days;
}

/** Takes out each reading in turn and computes the season anew. */
export function readingEffects(
  clocks: LakeClocks,
  law: IceOffLaw,
  readings: readonly Reading[],
): readonly ReadingEffect[] {
  if (readings.length === 0) return [];
  const statesWith = (some: readonly Reading[]): SeasonStates =>
    seasonStates(law, statesAfterIceOff(clocks, factorsOfReadings(clocks, some)));
  const states = statesWith(readings);
  return readings.map((reading) => {
    const others = readings.filter((other) => other !== reading);
    const without = statesWith(others);
    return {
      reading,
      bestWeeks_d: meanDay(states, "clear") - meanDay(without, "clear"),
      laterWeeks_d: meanDay(states, "later") - meanDay(without, "later"),
    };
  });
}
