import type { GuideLake } from "../guide/guide-schema.ts";
import { distance_m } from "../model/geodesy.ts";
import { tenth } from "./numbers.ts";

export type DrawnMap = NonNullable<GuideLake["place"]["map"]>;
type LonLat = readonly [lon_deg: number, lat_deg: number];

/** A point of a drawing; y counts downwards. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** How places of one lake come to stand in its drawing, north up. */
export interface MapFrame {
  readonly toSpot: (place: LonLat) => Spot;
  /** The drawing's units to a metre. */
  readonly perMetre: number;
  readonly height: number;
}

/** Height of a map by its width at the most, where nothing else is said. */
export const TALLEST = 1.25;

/** Half a degree about the middle is measured; shorter would lose digits. */
const HALF_DEG = 0.005;

interface Most {
  readonly width: number;
  readonly height: number;
}

/**
 * Places evenly by longitude and latitude, each with its own scale on the ellipsoid at the lake's middle. On a lake of
 * 20 km at 60 degrees of latitude the edges are out by 3 in 1,000, less than a drawing shows.
 */
export function mapFrame(map: DrawnMap, most: Most, margin: number): MapFrame {
  const places: LonLat[] = [...map.shoreline.flat(2), ...map.marks.map(({ lon, lat }): LonLat => [lon, lat])];
  const lons = places.map(([lon]) => lon);
  const lats = places.map(([, lat]) => lat);
  const [west, east] = [Math.min(...lons), Math.max(...lons)];
  const [south, north] = [Math.min(...lats), Math.max(...lats)];
  const [lon, lat] = [(west + east) / 2, (south + north) / 2];
  const lon_m = distance_m([lon - HALF_DEG, lat], [lon + HALF_DEG, lat]) / (2 * HALF_DEG);
  const lat_m = distance_m([lon, lat - HALF_DEG], [lon, lat + HALF_DEG]) / (2 * HALF_DEG);
  const [wide_m, tall_m] = [(east - west) * lon_m, (north - south) * lat_m];
  const perMetre = Math.min((most.width - 2 * margin) / wide_m, (most.height - 2 * margin) / tall_m);
  return {
    perMetre,
    height: tall_m * perMetre + 2 * margin,
    toSpot: ([x, y]) => ({
      x: most.width / 2 + (x - lon) * lon_m * perMetre,
      y: margin + (north - y) * lat_m * perMetre,
    }),
  };
}

/** A line as a path to the tenth of a unit, points that fall together once; closed when it ends where it began. */
export function linePath(line: readonly Spot[]): string {
  const spots = line.map(({ x, y }) => `${tenth(x)} ${tenth(y)}`);
  const distinct = spots.filter((spot, i) => spot !== spots[i - 1]);
  if (distinct.length < 2) return "";
  return distinct.length > 2 && distinct[0] === distinct.at(-1)
    ? `M${distinct.slice(0, -1).join("L")}Z`
    : `M${distinct.join("L")}`;
}
