import simplify from "simplify-js";
import type { LonLat } from "../model/lake-shape.ts";
import { power } from "../model/power.ts";
import { ECCENTRICITY_2, EQUATOR_M } from "../model/wgs84.ts";
import type { Line } from "./water-schema.ts";

/** Metres east and north of a lake's middle. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A lake's own flat map. */
export interface Plane {
  readonly toPlane: (place: LonLat) => Point;
  readonly toLonLat: (point: Point) => LonLat;
}

const RADIAN = Math.PI / 180;

/** Radius of curvature across the meridian, m. */
const acrossRadius_m = (latitude: number): number =>
  EQUATOR_M / Math.sqrt(1 - ECCENTRICITY_2 * Math.sin(latitude) ** 2);

/** Radius of curvature along the meridian, m. */
const alongRadius_m = (latitude: number): number =>
  power(acrossRadius_m(latitude), 3) * ((1 - ECCENTRICITY_2) / EQUATOR_M ** 2);

/** The inverse converges by a factor of thousands a round on lakes of tens of kilometres. */
const ROUNDS = 4;

/**
 * A transverse Mercator map to its second order about `middle`: within 20 km lengths are true to 1 in 25,000 up to 70
 * degrees of latitude. Snyder (1987), USGS Professional Paper 1395, equations 8-9 and 8-10.
 */
export function planeAbout([lon0, lat0]: LonLat): Plane {
  const along = alongRadius_m(lat0 * RADIAN);
  return {
    toPlane: ([lon, lat]) => {
      const latitude = lat * RADIAN;
      const across = acrossRadius_m(latitude);
      const a = (lon - lon0) * RADIAN * Math.cos(latitude);
      return {
        x: across * a,
        y: along * (lat - lat0) * RADIAN + (across * Math.tan(latitude) * a * a) / 2,
      };
    },
    toLonLat: ({ x, y }) => {
      let latitude = lat0 * RADIAN + y / along;
      for (let round = 0; round < ROUNDS; round++) {
        const across = acrossRadius_m(latitude);
        latitude = lat0 * RADIAN + (y - (Math.tan(latitude) * x * x) / (2 * across)) / along;
      }
      return [lon0 + x / (acrossRadius_m(latitude) * Math.cos(latitude)) / RADIAN, latitude / RADIAN];
    },
  };
}

/** A number cut to `digits` decimals, so that the exported data carries no false precision. */
export const toDecimals = (value: number, digits: number): number => Number(value.toFixed(digits));

/** Six decimals of a degree are at most 0.11 m. */
const POSITION_DIGITS = 6;

/** A line as the exported data holds it. */
export const roundedLine = (line: readonly LonLat[]): Line =>
  line.map(([lon, lat]) => [toDecimals(lon, POSITION_DIGITS), toDecimals(lat, POSITION_DIGITS)]);

/**
 * A line's points at most `most_m` and, except for its last one, at least `least_m` apart.
 */
export function resampleLine(line: readonly Point[], least_m: number, most_m: number): Point[] {
  const points: Point[] = [];
  for (const [i, point] of line.entries()) {
    const before = points.at(-1);
    if (before === undefined) {
      points.push(point);
      continue;
    }
    const [dx, dy] = [point.x - before.x, point.y - before.y];
    const length = Math.hypot(dx, dy);
    if (length < least_m && i < line.length - 1) continue;
    const steps = Math.max(1, Math.ceil(length / most_m));
    for (let step = 1; step <= steps; step++)
      points.push({ x: before.x + (dx * step) / steps, y: before.y + (dy * step) / steps });
  }
  return points;
}

/** A line or ring with fewer points, nowhere farther than `tolerance_m` from the true one. Douglas & Peucker (1973). */
export const simplifiedLine = (line: readonly Point[], tolerance_m: number): Point[] =>
  simplify([...line], tolerance_m, true);

/**
 * Lines with at most `most` points in all, as true as that allows. Rings too small to draw are left out, the first never.
 */
export function simplifiedLines(
  lines: readonly (readonly Point[])[],
  tolerance_m: number,
  most: number,
): Point[][] {
  const drawn = lines
    .map((line) => simplifiedLine(line, tolerance_m))
    .filter((line, i) => i === 0 || line.length >= 4 || line[0] !== line.at(-1));
  return drawn.length < most && drawn.reduce((sum, line) => sum + line.length, 0) > most
    ? simplifiedLines(lines, tolerance_m * 1.5, most)
    : drawn;
}
