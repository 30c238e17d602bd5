import { type Body, cutLine, type LineSegment } from "../physics/hanging-line.ts";
import { CUTS_BELOW_INDICATOR_M, type HungRig } from "../physics/indicator-drift.ts";
import { sunkWeight_N, type Water } from "../physics/water-properties.ts";
import { type LeaderMake, sectionsOf } from "./leader.ts";
import { tippetDiameter_mm } from "./tippet.ts";

/** The lighter of the usual leader materials, so the tables err toward more shot. NIST/ICRU material table. */
const NYLON_KGM3 = 1140;

/** Butt of a knotless tapered leader, 0.021 in. Common practice, from memory. */
const BUTT_M = 0.021 * 0.0254;

/** A tippet ring or the smallest swivel, of steel. From memory. */
const RING = { mass_g: 0.03, density_kgm3: 8000 } as const;

/** Weight in water of the ring, N. */
export const ringWeight_N = (water: Water): number => sunkWeight_N(RING.mass_g, RING.density_kgm3, water);

/** Shot stands this far above the fly, or at the tippet's upper end where that is nearer, m. Common practice, no source. */
const SHOT_ABOVE_FLY_M = 0.4572;

/** Where the shot is pinched on, from the fly, m. */
export const shotAboveFly_m = ({ tippet }: LeaderMake): number => Math.min(SHOT_ABOVE_FLY_M, tippet.length_m);

/**
 * The leader's line from the fly up, `length_m` of it or all where it is shorter. The taper is taken to thicken evenly
 * from its end size to its butt; real ones stay thin longer, so this errs toward more shot.
 */
export function leaderLine(make: LeaderMake, length_m: number): LineSegment[] {
  const segments: LineSegment[] = [];
  let left_m = length_m;
  for (const { part, length_m: whole_m, size } of sectionsOf(make).reverse()) {
    const hung_m = Math.min(left_m, whole_m);
    if (hung_m <= 0) break;
    const lowerDiameter_m = tippetDiameter_mm(size) / 1000;
    const upperDiameter_m =
      part === "taper"
        ? lowerDiameter_m + (Math.max(BUTT_M, lowerDiameter_m) - lowerDiameter_m) * (hung_m / whole_m)
        : lowerDiameter_m;
    segments.push({ length_m: hung_m, lowerDiameter_m, upperDiameter_m, density_kgm3: NYLON_KGM3 });
    left_m -= hung_m;
  }
  return segments;
}

/** A leader set under an indicator, cut where the current changes fast, with shot pinched on. */
export function hungRig(
  make: LeaderMake,
  set_m: number,
  fly: Body,
  shot: Body,
  shotAt_m = shotAboveFly_m(make),
): HungRig {
  const cuts = [
    { at_m: Math.min(shotAt_m, set_m), body: shot },
    ...CUTS_BELOW_INDICATOR_M.map((below_m) => ({ at_m: set_m - below_m })),
  ];
  return { fly, segments: cutLine(leaderLine(make, set_m), cuts) };
}
