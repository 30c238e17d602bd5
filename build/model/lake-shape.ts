import geographiclib from "geographiclib-geodesic";
import type { SourceSpot } from "./diagnostic.ts";

/** Longitude first (RFC 7946), WGS 84 degrees. A lake across the antimeridian goes on past 180 or before -180. */
export type LonLat = readonly [lon_deg: number, lat_deg: number];

/** Positions of a closed ring; the last is the first again. Outer rings run counter-clockwise, islands clockwise. */
export type Ring = readonly LonLat[];

export const MARK_KINDS = ["launch", "inflow", "outflow", "shoal", "weed", "hazard", "dam"] as const;
export type MarkKind = (typeof MARK_KINDS)[number];

/** One line of equal depth; closed when its last position is its first. */
export interface Contour {
  readonly depth_m: number;
  readonly line: readonly LonLat[];
  readonly where: SourceSpot;
}

/** One depth plumbed at a place. */
export interface Sounding {
  readonly at: LonLat;
  readonly depth_m: number;
  readonly where: SourceSpot;
}

export interface ShapeMark {
  readonly mark: MarkKind;
  readonly name?: string;
  readonly at: LonLat;
  readonly where: SourceSpot;
}

/** A lake's figures that the shape can be held against. */
export type FigureName = "area" | "maxDepth" | "meanDepth";

/** What a club drew or plumbed of one lake: rings closed, none crossing itself or another. */
export interface LakeShape {
  /** The file that holds the shoreline. */
  readonly where: SourceSpot;
  /** One polygon a basin: its outer ring, then its islands. */
  readonly shoreline: readonly (readonly Ring[])[];
  readonly contours: readonly Contour[];
  readonly soundings: readonly Sounding[];
  readonly marks: readonly ShapeMark[];
  /** Where the lake's own file gives each figure. */
  readonly figures: Partial<Readonly<Record<FigureName, SourceSpot>>>;
}

/** A shape without its lake's own file. */
export type DrawnShape = Omit<LakeShape, "figures">;

const { Geodesic } = geographiclib;
const WGS_84 = Geodesic.WGS84;

/** Shortest way between two places on the WGS 84 ellipsoid, m. Karney (2013), J. Geodesy 87:43. */
export const distance_m = ([lon, lat]: LonLat, [toLon, toLat]: LonLat): number =>
  WGS_84.Inverse(lat, lon, toLat, toLon, Geodesic.DISTANCE).s12 ?? Number.NaN;

interface RingMeasure {
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
