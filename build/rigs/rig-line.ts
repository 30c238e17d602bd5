import type { LineSegment, PointLoad, Stream } from "./hang.ts";
import { type LeaderMake, sectionsOf } from "./leaders/leader.ts";
import { tippetDiameter_mm } from "./leaders/tippet.ts";
import { sphereDrag_N } from "./physics/drag.ts";
import { sunkWeight_N, type Water } from "./physics/water-properties.ts";

/** The lighter of the usual leader materials, so the tables err toward more shot. NIST/ICRU material table. */
const NYLON_KGM3 = 1140;

/** Butt of a knotless tapered leader, 0.021 in. Common practice, from memory. */
const BUTT_M = 0.021 * 0.0254;

/** A small fly with a metal bead on a size 12 or 14 hook, with the drag of a 5 mm ball. From memory. */
export const USUAL_FLY = { mass_g: 0.2, density_kgm3: 4000, width_m: 0.005 } as const;

/** A tippet ring or the smallest swivel, of steel. From memory. */
const RING = { mass_g: 0.03, density_kgm3: 8000 } as const;

/** The usual fly in a stream. */
export const flyLoad = ({ speed_mps, water }: Stream): PointLoad => ({
  weight_N: sunkWeight_N(USUAL_FLY.mass_g, USUAL_FLY.density_kgm3, water),
  drag_N: sphereDrag_N(USUAL_FLY.width_m, speed_mps, water),
});

/** A leader's line between fly and indicator. */
export interface HungLine {
  /** Below the ring at the last join, where the shot goes. */
  readonly below: readonly LineSegment[];
  /** From there up to `set_m`. */
  readonly above: readonly LineSegment[];
}

/**
 * The line that hangs under an indicator set at `set_m`, or the whole leader where that is shorter. The taper is taken to thicken evenly from its end size to
 * its butt; real ones stay thin longer, so this errs toward more shot.
 */
export function hungLine(make: LeaderMake, set_m: number): HungLine {
  const segments: LineSegment[] = [];
  let left_m = set_m;
  for (const { part, length_m, size } of sectionsOf(make).reverse()) {
    const hung_m = Math.min(left_m, length_m);
    if (hung_m <= 0) break;
    const lowerDiameter_m = tippetDiameter_mm(size) / 1000;
    const upperDiameter_m =
      part === "taper"
        ? lowerDiameter_m + (Math.max(BUTT_M, lowerDiameter_m) - lowerDiameter_m) * (hung_m / length_m)
        : lowerDiameter_m;
    segments.push({ length_m: hung_m, lowerDiameter_m, upperDiameter_m, density_kgm3: NYLON_KGM3 });
    left_m -= hung_m;
  }
  return { below: segments.slice(0, 1), above: segments.slice(1) };
}

/** Weight in water of a stretch of line, N. */
export function segmentWeight_N(segment: LineSegment, water: Water): number {
  const { lowerDiameter_m: a, upperDiameter_m: b, length_m, density_kgm3 } = segment;
  const volume_m3 = (Math.PI / 12) * length_m * (a * a + a * b + b * b);
  return sunkWeight_N(1000 * density_kgm3 * volume_m3, density_kgm3, water);
}

/** Weight in water of the ring, N. */
export const ringWeight_N = (water: Water): number => sunkWeight_N(RING.mass_g, RING.density_kgm3, water);
