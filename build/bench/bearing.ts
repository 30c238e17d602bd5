import type { Point } from "../water/plane.ts";

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
