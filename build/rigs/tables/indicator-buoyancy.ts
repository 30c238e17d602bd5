import type { RigBox } from "../../model/club.ts";
import { power } from "../../model/power.ts";
import { GRAVITY_MPS2, type Water } from "../physics/water-properties.ts";

type Indicator = RigBox["indicators"][number];
/** A ball by its size and what it is made of. */
type Ball = Pick<Indicator, "diameter_m" | "density_kgm3">;

const volume_m3 = (diameter_m: number): number => (Math.PI / 6) * power(diameter_m, 3);

/** The load that just sinks an indicator, N: `(rho - rho_indicator) g pi/6 D^3`. Negative for one that sinks by itself. */
export const indicatorLift_N = ({ diameter_m, density_kgm3 }: Ball, water: Water): number =>
  (water.density_kgm3 - density_kgm3) * GRAVITY_MPS2 * volume_m3(diameter_m);

/** Share of an indicator's volume above the water under a load, 0 when it is pulled under. */
export const dryShare = (indicator: Ball, load_N: number, water: Water): number =>
  Math.max(
    0,
    (indicatorLift_N(indicator, water) - load_N) /
      (water.density_kgm3 * GRAVITY_MPS2 * volume_m3(indicator.diameter_m)),
  );

/** The smallest indicator carried that keeps `share` of its volume dry under a load; `undefined` when none does. */
export const smallestIndicator = (
  load_N: number,
  share: number,
  indicators: readonly Indicator[],
  water: Water,
): Indicator | undefined =>
  indicators
    .filter((indicator) => indicator.carried > 0 && dryShare(indicator, load_N, water) >= share)
    .sort((a, b) => a.diameter_m - b.diameter_m)[0];

/** Diameter of the ball that keeps exactly `share` dry under a load, m; `undefined` when its stuff alone wets more. */
export function leastIndicatorDiameter_m(
  load_N: number,
  share: number,
  density_kgm3: number,
  water: Water,
): number | undefined {
  const spare_kgm3 = water.density_kgm3 * (1 - share) - density_kgm3;
  return spare_kgm3 > 0 ? Math.cbrt((6 * load_N) / (Math.PI * GRAVITY_MPS2 * spare_kgm3)) : undefined;
}
