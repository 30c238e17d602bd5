import { toBase, type UnitSystem } from "../../model/units.ts";
import type { Condition, RigSettings } from "./conditions.ts";

/** Lengths of rope are rounded up to this. */
const roundUp_m = (units: UnitSystem): number => (units === "imperial" ? toBase(5, "ft", "length") : 1);

/**
 * Anchor rope to let out: scope times depth and bow together, rounded up to 5 ft or 1 m.
 * @source scope: BoatUS Foundation; BoatUS Magazine, April 2014; US Coast Guard Auxiliary
 */
export function anchorRope_m(
  depth_m: number,
  condition: Condition,
  { scope, bow_m }: Pick<RigSettings, "scope" | "bow_m">,
  units: UnitSystem,
): number {
  const step_m = roundUp_m(units);
  return Math.ceil((scope[condition] * (depth_m + bow_m)) / step_m - 1e-9) * step_m;
}
