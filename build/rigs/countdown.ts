import type { RigBox } from "../model/club.ts";
import { toBase, type UnitSystem } from "../model/units.ts";
import type { Line } from "./rig-plan.ts";

/** Round steps of depth in each system of units: 3 ft or 1 m. */
export const tableStep_m = (units: UnitSystem): number =>
  units === "imperial" ? toBase(3, "ft", "length") : 1;

const TABLE_STEPS = [1, 2, 3, 4, 5, 6];

/** The depths every depth table has a row for, m. */
export const tableDepths_m = (units: UnitSystem): number[] =>
  TABLE_STEPS.map((step) => step * tableStep_m(units));

/**
 * Whole seconds for a fly line to sink to a depth.
 * @param depth_m 0 or more
 * @throws RangeError for a rate of 0 or less: it never gets there
 */
export function countdown_s(depth_m: number, sinkRate_mps: number): number {
  if (!(sinkRate_mps > 0)) throw new RangeError(`a line that sinks at ${sinkRate_mps} m/s reaches no depth`);
  return Math.round(depth_m / sinkRate_mps);
}

/** A line's countdown table; a line that floats, or whose rate is not known, has none. */
export function lineOf({ name, kind, sinkRate_mps }: RigBox["lines"][number], units: UnitSystem): Line {
  return {
    name,
    kind,
    sinkRate_mps: sinkRate_mps ?? null,
    countdown:
      sinkRate_mps === undefined
        ? []
        : tableDepths_m(units).map((depth_m) => ({ depth_m, seconds: countdown_s(depth_m, sinkRate_mps) })),
  };
}
