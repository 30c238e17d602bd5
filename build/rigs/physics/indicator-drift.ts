import { type Current, FOAM_SHARE_OF_WIND } from "./current-profile.ts";
import { type Body, hang, type LinePoint, type LineSegment } from "./hanging-line.ts";
import { findRoot } from "./numeric.ts";
import type { Water } from "./water-properties.ts";

/** A rig under an indicator: the fly, and the line from the fly up. */
export interface HungRig {
  readonly fly: Body;
  readonly segments: readonly LineSegment[];
}

/** The current changes fast just below the surface, so the line is cut this far below the indicator, m. */
export const CUTS_BELOW_INDICATOR_M: readonly number[] = [0.6, 0.15, 0.04];

/** Length of line from the fly to the indicator, m. */
const rigLength_m = (segments: readonly LineSegment[]): number =>
  segments.reduce((sum, { length_m }) => sum + length_m, 0);

/** The fly's depth is found to this, m. */
const DEPTH_M = 1e-5;
const MOST_ROUNDS = 60;

/**
 * The rig hung from an indicator that moves at `indicator_mps`. The current past the line depends on the fly's depth,
 * which is found by the secant rule from the straight rig.
 */
function hangInCurrent(
  { fly, segments }: HungRig,
  current: Current,
  indicator_mps: number,
  water: Water,
  startDepth_m = rigLength_m(segments),
): LinePoint {
  const hungAt = (flyDepth_m: number): LinePoint =>
    hang(fly, segments, {
      speedAt_mps: (aboveFly_m) => current(flyDepth_m - aboveFly_m) - indicator_mps,
      water,
    });
  let depth_m = startDepth_m;
  let point = hungAt(depth_m);
  let miss_m = point.z_m - depth_m;
  let step_m = miss_m / 2;
  for (let i = 0; i < MOST_ROUNDS && Math.abs(step_m) > DEPTH_M; i++) {
    depth_m += step_m;
    const last_m = miss_m;
    point = hungAt(depth_m);
    miss_m = point.z_m - depth_m;
    const slope = (miss_m - last_m) / step_m;
    step_m = slope < -0.2 ? -miss_m / slope : miss_m / 2;
  }
  return point;
}

/** Drag coefficient of half a ball at the surface, in water and in air. Hoerner (1965), from memory. */
const BALL_DRAG = 0.5;
const AIR_KGM3 = 1.23;
/** Air at a ball's height, 1 cm, over the wind at 10 m. From memory. */
const AIR_SHARE_AT_INDICATOR = 0.4;

/** What pushes an indicator about at the surface. */
export interface SurfaceDrive {
  readonly foam_mps: number;
  /** Air at the indicator's height. */
  readonly air_mps: number;
  readonly indicatorDiameter_m: number;
}

/** The drive of an indicator while foam moves at `foam_mps`. */
export const windDrive = (foam_mps: number, indicatorDiameter_m: number): SurfaceDrive => ({
  foam_mps,
  air_mps: (AIR_SHARE_AT_INDICATOR * foam_mps) / FOAM_SHARE_OF_WIND,
  indicatorDiameter_m,
});

/** A rig that hangs, and how fast its indicator moves. */
export interface Drift {
  readonly point: LinePoint;
  readonly indicator_mps: number;
}

/**
 * Mended: the indicator rides free on slack line, its rig a sea anchor below; it moves at the speed where the pushes
 * of line, water and air cancel.
 */
export function mendedDrift(rig: HungRig, current: Current, drive: SurfaceDrive, water: Water): Drift {
  const { foam_mps, air_mps, indicatorDiameter_m } = drive;
  if (foam_mps === 0) return { point: hangInCurrent(rig, current, 0, water), indicator_mps: 0 };
  const halfArea_m2 = ((Math.PI / 4) * indicatorDiameter_m ** 2) / 2;
  const push_N = (density_kgm3: number, past_mps: number): number =>
    0.5 * density_kgm3 * BALL_DRAG * halfArea_m2 * past_mps * Math.abs(past_mps);
  let point: LinePoint | undefined;
  const net_N = (v_mps: number): number => {
    point = hangInCurrent(rig, current, v_mps, water, point?.z_m);
    return point.pullX_N + push_N(water.density_kgm3, foam_mps - v_mps) + push_N(AIR_KGM3, air_mps - v_mps);
  };
  const indicator_mps = findRoot(net_N, -0.5 * foam_mps, 1.5 * foam_mps, 1e-4 * foam_mps);
  return { point: hangInCurrent(rig, current, indicator_mps, water, point?.z_m), indicator_mps };
}

/** Held: the indicator stands still on a line straight downwind. */
export const heldDrift = (rig: HungRig, current: Current, water: Water): Drift => ({
  point: hangInCurrent(rig, current, 0, water),
  indicator_mps: 0,
});
