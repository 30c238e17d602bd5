import type { Lake } from "../../build/model/club.ts";
import { USUAL_TURNOVER } from "../../build/model/club.ts";
import type { Contour, LakeShape, LonLat, Ring, ShapeMark, Sounding } from "../../build/model/lake-shape.ts";
import { type Plane, type Point, planeAbout } from "../../build/water/plane.ts";
import type { WaterOptions } from "../../build/water/water.ts";

const MIDDLE: LonLat = [-106.291, 41.312];
export const PLANE: Plane = planeAbout(MIDDLE);
const WHERE = { file: "lakes/ember.geojson", line: 1, column: 1 };

export const LAKE: Lake = {
  slug: "ember",
  name: "Ember Lake",
  position: { lon: MIDDLE[0], lat: MIDDLE[1] },
  elevation_m: 2580,
  hazards: [],
  places: [],
  depthBands: {},
  iceOff: [],
  turnover: [],
  lastGood: [],
  turnoverRule: USUAL_TURNOVER,
};

export const OPTIONS: WaterOptions = {
  units: "metric",
  timezone: "America/Denver",
  days: [],
  bands: [],
  reports: [],
};

/** Points of the plane, metres east and north of the middle, as a ring on the earth. */
const ringOf = (points: readonly Point[]): Ring => {
  const ring = points.map(PLANE.toLonLat);
  return [...ring, ...ring.slice(0, 1)];
};

/** A circle, counter-clockwise. */
export const circle = (radius_m: number, points = 360): Point[] =>
  Array.from({ length: points }, (_, i) => {
    const angle = (2 * Math.PI * i) / points;
    return { x: radius_m * Math.cos(angle), y: radius_m * Math.sin(angle) };
  });

/** A rectangle about the middle, its long side turned by `turn_deg` clockwise from east. */
export const rectangle = (long_m: number, wide_m: number, turn_deg = 0): Point[] => {
  const turn = (-turn_deg * Math.PI) / 180;
  return [
    { x: -long_m / 2, y: -wide_m / 2 },
    { x: long_m / 2, y: -wide_m / 2 },
    { x: long_m / 2, y: wide_m / 2 },
    { x: -long_m / 2, y: wide_m / 2 },
  ].map(({ x, y }) => ({
    x: x * Math.cos(turn) - y * Math.sin(turn),
    y: x * Math.sin(turn) + y * Math.cos(turn),
  }));
};

export const shapeOf = (
  shore: readonly Point[],
  parts: {
    readonly islands?: readonly (readonly Point[])[];
    readonly contours?: readonly (readonly [depth_m: number, line: readonly Point[]])[];
    readonly soundings?: readonly (Point & { readonly depth_m: number })[];
    readonly marks?: readonly (Point & Pick<ShapeMark, "mark">)[];
  } = {},
): LakeShape => ({
  where: WHERE,
  shoreline: [[ringOf(shore), ...(parts.islands ?? []).map((island) => ringOf(island).toReversed())]],
  contours: (parts.contours ?? []).map(
    ([depth_m, line]): Contour => ({ depth_m, line: ringOf(line), where: WHERE }),
  ),
  soundings: (parts.soundings ?? []).map(
    ({ depth_m, ...at }): Sounding => ({ at: PLANE.toLonLat(at), depth_m, where: WHERE }),
  ),
  marks: (parts.marks ?? []).map(
    ({ mark, ...at }): ShapeMark => ({ mark, at: PLANE.toLonLat(at), where: WHERE }),
  ),
  figures: {},
});
