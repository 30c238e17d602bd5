import { toBase, type UnitSystem } from "../model/units.ts";

const STEPS: Readonly<Record<UnitSystem, { readonly unit: string; readonly sizes: readonly number[] }>> = {
  imperial: { unit: "ft", sizes: [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000] },
  metric: { unit: "m", sizes: [0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500] },
};
const MOST_STEPS = 9;

/** Depths in round numbers of the club's own units, m: above 0, below the deepest place, nine at most. */
export function roundDepths_m(deepest_m: number, units: UnitSystem): number[] {
  const { unit, sizes } = STEPS[units];
  for (const size of sizes) {
    const step_m = toBase(size, unit, "length");
    const count = Math.ceil(deepest_m / step_m) - 1;
    if (count <= MOST_STEPS)
      return Array.from({ length: count }, (_, i) => toBase(size * (i + 1), unit, "length"));
  }
  return [];
}
