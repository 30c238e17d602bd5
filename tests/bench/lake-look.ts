import type { Point } from "../../build/water/plane.ts";

/** Degrees to radians. */
export const RADIAN = Math.PI / 180;

/** 1 at an angle of nothing, falling off over `width_deg` to both sides. */
export const bell = (angle_deg: number, width_deg: number): number => {
  const turn = ((((angle_deg + 180) % 360) + 360) % 360) - 180;
  return Math.exp(-((turn / width_deg) ** 2));
};

/** The point at a bearing and a distance from the middle. */
export const pointAt = (bearing_deg: number, radius: number): Point => ({
  x: radius * Math.sin(bearing_deg * RADIAN),
  y: radius * Math.cos(bearing_deg * RADIAN),
});

/** A place by its bearing from the middle of the lake and how far out it lies: 0 the middle, 1 the shore. */
export interface Polar {
  readonly bearing_deg: number;
  readonly out: number;
}

/** How an invented lake is to look. Lengths are shares of its mean radius unless they name a unit. */
export interface LakeLook {
  readonly seed: number;
  /** Bearing of the long axis, and how many times longer than wide the lake is. */
  readonly axis_deg: number;
  readonly stretch: number;
  /** How far the long axis is bent sideways, -0.5 to 0.5; none with a dam. */
  readonly bend?: number;
  /** How ragged the shore is, 0 to about 1. */
  readonly rough: number;
  /** Bays (positive) and points (negative): bearing, how far they reach, how wide they are. */
  readonly bays?: readonly {
    readonly bearing_deg: number;
    readonly reach: number;
    readonly width_deg: number;
  }[];
  /** A straight dam across this bearing, so far out. */
  readonly dam?: Polar;
  readonly islands?: readonly (Polar & { readonly size: number })[];
  /** Depth as a share of the greatest, by the share of the way out to the most open water; a straight line unless said. */
  readonly profile?: readonly (readonly [way: number, depth: number])[];
  /** Places that rise to `top_m` below the surface. */
  readonly shoals?: readonly (Polar & { readonly top_m: number; readonly size: number })[];
  /** Stretches of shore along which the bottom stays above `floor_m` until `reach_m` out. */
  readonly benches?: readonly {
    readonly bearing_deg: number;
    readonly width_deg: number;
    readonly floor_m: number;
    readonly reach_m: number;
  }[];
}

/** Figures the invented lake has to meet. */
export interface LakeFigures {
  readonly position: { readonly lat: number; readonly lon: number };
  readonly area_m2: number;
  readonly maxDepth_m?: number;
  readonly meanDepth_m?: number;
}
