import type { LonLat } from "../model/lake-shape.ts";

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

/** WGS 84 (NIMA TR8350.2): equatorial radius and first eccentricity squared. */
const EQUATOR_M = 6_378_137;
const ECCENTRICITY_2 = 0.00669437999014;

const RADIAN = Math.PI / 180;

/** Radius of curvature across the meridian, m. */
const acrossRadius_m = (latitude: number): number =>
  EQUATOR_M / Math.sqrt(1 - ECCENTRICITY_2 * Math.sin(latitude) ** 2);

/** Radius of curvature along the meridian, m. */
const alongRadius_m = (latitude: number): number =>
  acrossRadius_m(latitude) ** 3 * ((1 - ECCENTRICITY_2) / EQUATOR_M ** 2);

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
