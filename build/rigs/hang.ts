import { cylinderDragCoefficient } from "./physics/drag.ts";
import { GRAVITY_MPS2, type Water } from "./physics/water-properties.ts";

/** What a fly or a shot does to the line: its weight in water and its drag. */
export interface PointLoad {
  readonly weight_N: number;
  readonly drag_N: number;
}

/** A piece of line, and what is pinched on at its upper end. */
export interface LineSegment {
  readonly length_m: number;
  readonly lowerDiameter_m: number;
  readonly upperDiameter_m: number;
  readonly density_kgm3: number;
  readonly top?: PointLoad;
}

/** The line at one point, seen from the fly: how far away, and how hard it pulls. */
export interface LinePoint {
  /** Along the line from the fly. */
  readonly length_m: number;
  /** Sideways, against the drift. */
  readonly x_m: number;
  /** Straight up. */
  readonly z_m: number;
  readonly pullX_N: number;
  readonly pullZ_N: number;
}

export interface Stream {
  /** Speed of the water past the rig, 0 or more. */
  readonly speed_mps: number;
  readonly water: Water;
}

/** How the line's drag follows from its Reynolds number. */
export type LineDragLaw = (reynolds: number) => number;

/** Steps across one segment: with 24 the lift is right to far less than a millimetre in drifts that can be fished. */
const STEPS = 24;

/** The free end: only the fly pulls. */
export const atFly = ({ weight_N, drag_N }: PointLoad): LinePoint => ({
  length_m: 0,
  x_m: 0,
  z_m: 0,
  pullX_N: drag_N,
  pullZ_N: weight_N,
});

const pinch = (point: LinePoint, load: PointLoad): LinePoint => ({
  ...point,
  pullX_N: point.pullX_N + load.drag_N,
  pullZ_N: point.pullZ_N + load.weight_N,
});

/**
 * The line's upper end, marched up one segment by the classical fourth-order Runge-Kutta rule. The line carries
 * tension only; drag works across it (its part along the line is small and left out); the water's speed is the same
 * at every depth.
 */
export function marchUp(
  from: LinePoint,
  segment: LineSegment,
  { speed_mps, water }: Stream,
  steps = STEPS,
  dragLaw: LineDragLaw = cylinderDragCoefficient,
): LinePoint {
  const { length_m, lowerDiameter_m, upperDiameter_m, density_kgm3, top } = segment;
  const h = length_m / steps;
  const taper = (upperDiameter_m - lowerDiameter_m) / length_m;
  const weightPerArea = (density_kgm3 - water.density_kgm3) * GRAVITY_MPS2 * (Math.PI / 4);
  const slope = { x: 0, z: 0, pullX: 0, pullZ: 0 };
  const sum = { x: 0, z: 0, pullX: 0, pullZ: 0 };

  const addSlope = (s_m: number, pullX_N: number, pullZ_N: number, share: number): void => {
    const diameter_m = lowerDiameter_m + taper * s_m;
    const pull_N = Math.sqrt(pullX_N * pullX_N + pullZ_N * pullZ_N);
    const [sin, cos] = pull_N === 0 ? [0, 1] : [pullX_N / pull_N, pullZ_N / pull_N];
    const across_mps = speed_mps * cos;
    const reynolds = (Math.abs(across_mps) * diameter_m) / water.viscosity_m2s;
    const drag_Npm =
      reynolds === 0
        ? 0
        : 0.5 * water.density_kgm3 * dragLaw(reynolds) * diameter_m * across_mps * Math.abs(across_mps);
    slope.x = sin;
    slope.z = cos;
    slope.pullX = drag_Npm * cos;
    slope.pullZ = weightPerArea * diameter_m * diameter_m - drag_Npm * sin;
    sum.x += share * slope.x;
    sum.z += share * slope.z;
    sum.pullX += share * slope.pullX;
    sum.pullZ += share * slope.pullZ;
  };

  let { x_m, z_m, pullX_N, pullZ_N } = from;
  for (let i = 0; i < steps; i++) {
    const s_m = i * h;
    sum.x = sum.z = sum.pullX = sum.pullZ = 0;
    addSlope(s_m, pullX_N, pullZ_N, 1);
    addSlope(s_m + h / 2, pullX_N + (h / 2) * slope.pullX, pullZ_N + (h / 2) * slope.pullZ, 2);
    addSlope(s_m + h / 2, pullX_N + (h / 2) * slope.pullX, pullZ_N + (h / 2) * slope.pullZ, 2);
    addSlope(s_m + h, pullX_N + h * slope.pullX, pullZ_N + h * slope.pullZ, 1);
    x_m += (h / 6) * sum.x;
    z_m += (h / 6) * sum.z;
    pullX_N += (h / 6) * sum.pullX;
    pullZ_N += (h / 6) * sum.pullZ;
  }
  const end = { length_m: from.length_m + length_m, x_m, z_m, pullX_N, pullZ_N };
  return top === undefined ? end : pinch(end, top);
}

/** The line at the indicator: the fly at the free end, then the segments from the fly up. */
export const hang = (
  fly: PointLoad,
  segments: readonly LineSegment[],
  stream: Stream,
  steps = STEPS,
  dragLaw: LineDragLaw = cylinderDragCoefficient,
): LinePoint =>
  segments.reduce((point, segment) => marchUp(point, segment, stream, steps, dragLaw), atFly(fly));

/** How much higher the fly hangs than straight below, m; a line is never longer than itself, so never below 0. */
export const lift_m = ({ length_m, z_m }: LinePoint): number => Math.max(0, length_m - z_m);

/** Lean of the line from the vertical, degrees. */
export const lean_deg = ({ pullX_N, pullZ_N }: LinePoint): number =>
  (Math.atan2(pullX_N, pullZ_N) * 180) / Math.PI;
