import geographiclib from "geographiclib-geodesic";
import type { LonLat, Ring } from "./lake-shape.ts";

const { Geodesic } = geographiclib;
const WGS_84 = Geodesic.WGS84;

/** Shortest way between two places on the WGS 84 ellipsoid, m. Karney (2013), J. Geodesy 87:43. */
export const distance_m = ([lon, lat]: LonLat, [toLon, toLat]: LonLat): number =>
  WGS_84.Inverse(lat, lon, toLat, toLon, Geodesic.DISTANCE).s12 ?? Number.NaN;

export interface RingMeasure {
  /** Area, positive where the ring runs counter-clockwise. */
  readonly area_m2: number;
  readonly length_m: number;
}

/** Area and length of a closed ring of geodesics on the WGS 84 ellipsoid. Karney (2013), J. Geodesy 87:43. */
export function measureRing(ring: Ring): RingMeasure {
  const polygon = WGS_84.Polygon(false);
  for (const [lon, lat] of ring.slice(0, -1)) polygon.AddPoint(lat, lon);
  const { area, perimeter } = polygon.Compute(false, true);
  return { area_m2: area ?? Number.NaN, length_m: perimeter };
}
