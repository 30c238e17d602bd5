import type { Guide, GuideLake } from "../guide/guide-schema.ts";
import { cutLine, cutPolygons, withinTurn } from "./antimeridian.ts";

type LakeMap = NonNullable<GuideLake["place"]["map"]>;

const feature = (properties: object, type: string, coordinates: unknown): object => ({
  type: "Feature",
  properties,
  geometry: { type, coordinates },
});

/**
 * A lake's shoreline, contours and marks as a GeoJSON FeatureCollection (RFC 7946), with the properties of a club's own
 * file, `lakes/NAME.geojson`; `depth_m` is the same depth as a number, for programs that label or colour by it.
 */
export function mapGeojson({ club }: Guide, lake: GuideLake, map: LakeMap): string {
  const collection = {
    type: "FeatureCollection",
    ...(club.notice === null ? {} : { description: club.notice }),
    features: [
      feature({ kind: "shoreline", name: lake.name }, "MultiPolygon", cutPolygons(map.shoreline)),
      ...map.contours.map(({ depth_m, lines }) =>
        feature(
          { kind: "contour", depth: `${depth_m} m`, depth_m },
          "MultiLineString",
          lines.flatMap(cutLine),
        ),
      ),
      ...map.marks.map(({ mark, name, lon, lat }) =>
        feature({ kind: "mark", mark, ...(name === null ? {} : { name }) }, "Point", [withinTurn(lon), lat]),
      ),
    ],
  };
  return `${JSON.stringify(collection)}\n`;
}
