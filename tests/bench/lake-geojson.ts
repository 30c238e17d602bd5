import type { MarkKind } from "../../build/model/lake-shape.ts";
import { toBase } from "../../build/model/units.ts";
import { roundDepths_m } from "../../build/water/depths.ts";
import { isobathPolygons } from "../../build/water/isobands.ts";
import type { Plane, Point } from "../../build/water/plane.ts";
import { roundedLine } from "../../build/water/plane.ts";
import type { LakeLike } from "./invented-lake.ts";
import type { Polar } from "./lake-look.ts";

const FOOT_M = toBase(1, "ft", "length");

/** Feet, to the half. */
export const inFeet = (depth_m: number): number => Math.round((depth_m / FOOT_M) * 2) / 2;

export interface Contour {
  readonly depth_m: number;
  /** Closed, metres on the lake's plane. */
  readonly ring: readonly Point[];
}

export type Mark = Polar & { readonly mark: MarkKind; readonly name?: string };

/** Contours of an invented lake at round depths in feet; none without a bottom. */
export const contoursOf = ({ bottom }: LakeLike, maxDepth_m: number): Contour[] =>
  bottom === undefined
    ? []
    : roundDepths_m(maxDepth_m, "imperial").flatMap((depth_m) =>
        isobathPolygons(bottom.field, bottom.grid, depth_m)
          .flat()
          .map((ring) => ({ depth_m, ring })),
      );

const feature = (geometry: object, properties: object): string =>
  JSON.stringify({ type: "Feature", properties, geometry });

/** What is written of a lake's shape. */
export interface Drawn extends Pick<LakeLike, "rings" | "placeOf"> {
  readonly plane: Plane;
}

/** `lakes/NAME.geojson` of an invented lake. */
export function geojsonOf(
  { plane, rings, placeOf }: Drawn,
  contours: readonly Contour[],
  marks: readonly Mark[],
  notice: string,
): string {
  const line = (points: readonly Point[]) => roundedLine(points.map(plane.toLonLat));
  const features = [
    feature({ type: "Polygon", coordinates: rings.map(line) }, { kind: "shoreline" }),
    ...contours.map(({ depth_m, ring }) =>
      feature(
        { type: "LineString", coordinates: line(ring) },
        { kind: "contour", depth: `${inFeet(depth_m)} ft` },
      ),
    ),
    ...marks.map(({ mark, name, ...polar }) =>
      feature(
        { type: "Point", coordinates: line([placeOf(polar)])[0] },
        { kind: "mark", mark, ...(name === undefined ? {} : { name }) },
      ),
    ),
  ];
  return `{ "type": "FeatureCollection", "description": ${JSON.stringify(notice)}, "features": [\n${features.join(",\n")}\n] }\n`;
}
