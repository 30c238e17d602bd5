import { DAYS } from "../../build/season/after-ice/lake-traits.ts";
import { statesAfterIceOff } from "../../build/season/after-ice/states.ts";
import type { LakeSeason } from "../../build/season/region-season.ts";
/** Standard normal, by the Box-Muller transform. */
export const normal = (random: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** Student t of whole degrees of freedom, by its definition: a normal over the root of a mean square of normals. */
export function studentT(random: () => number, df: number): number {
  let square = 0;
  for (let i = 0; i < df; i++) square += normal(random) ** 2;
  return normal(random) / Math.sqrt(square / df);
}

/** Draws a place in `weights`, each as often as its weight says; the weights sum to 1. */
export function placeByWeight(weights: ArrayLike<number>, random: () => number): () => number {
  const below: number[] = [];
  for (let p = 0; p < weights.length; p++) below.push((below[p - 1] ?? 0) + (weights[p] ?? 0));
  return () => {
    const u = random();
    let [low, high] = [0, below.length - 1];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((below[middle] ?? 1) < u) low = middle + 1;
      else high = middle;
    }
    return low;
  };
}

/** Chance that a lake is good on a day, given its ice-off: what follows the ice is checked elsewhere, here how lakes share a spring. */
export function goodGivenIceOff({
  clocks,
}: Pick<LakeSeason, "clocks">): (iceOff: number, day: number) => number {
  const after = statesAfterIceOff(clocks, []);
  const known = new Map<number, ReturnType<typeof after>>();
  return (iceOff, day) => {
    const d = day - iceOff;
    if (d < 0 || d >= DAYS) return 0;
    const states = known.get(iceOff) ?? structuredClone(after(iceOff));
    known.set(iceOff, states);
    const [onset, clear, later] = [states.onset, states.clear, states.later].map((by) => by[d] ?? 0);
    return (states.evidence - (onset ?? 0) + (clear ?? 0) - (later ?? 0)) / states.evidence;
  };
}
