import { ECCENTRICITY_2, EQUATOR_M } from "../../model/wgs84.ts";

type LonLat = readonly [lon_deg: number, lat_deg: number];
type Vector = readonly [x_m: number, y_m: number, z_m: number];

const radians = (angle_deg: number): number => (angle_deg * Math.PI) / 180;

/** Earth-centred, earth-fixed coordinates of a place at height 0. */
function earthFixed([lon_deg, lat_deg]: LonLat): Vector {
  const [lon, lat] = [radians(lon_deg), radians(lat_deg)];
  const normal_m = EQUATOR_M / Math.sqrt(1 - ECCENTRICITY_2 * Math.sin(lat) ** 2);
  return [
    normal_m * Math.cos(lat) * Math.cos(lon),
    normal_m * Math.cos(lat) * Math.sin(lon),
    normal_m * (1 - ECCENTRICITY_2) * Math.sin(lat),
  ];
}

/**
 * Places of one basin on the plane that touches the ellipsoid in their middle, metres east and north of it: an orthographic
 * projection (Snyder 1987, USGS Professional Paper 1395, chapter 20). A distance d that ends r from the middle is short by about
 * (r/R)²/2 of it: 3 in 10,000 at 150 km.
 */
export function basinProjection(places: readonly LonLat[]): (place: LonLat) => { x_m: number; y_m: number } {
  const spots = places.map(earthFixed);
  const mean = (axis: 0 | 1 | 2): number =>
    spots.reduce((sum, spot) => sum + spot[axis], 0) / Math.max(1, spots.length);
  const [x, y, z] = [mean(0), mean(1), mean(2)];
  const lon = Math.atan2(y, x);
  const lat = Math.atan2(z, (1 - ECCENTRICITY_2) * Math.sqrt(x * x + y * y));
  const [sinLon, cosLon, sinLat, cosLat] = [Math.sin(lon), Math.cos(lon), Math.sin(lat), Math.cos(lat)];
  return (place) => {
    const spot = earthFixed(place);
    const [dx, dy, dz] = [spot[0] - x, spot[1] - y, spot[2] - z];
    return {
      x_m: -sinLon * dx + cosLon * dy,
      y_m: -sinLat * cosLon * dx - sinLat * sinLon * dy + cosLat * dz,
    };
  };
}
