import { describe, expect, test } from "vitest";
import { z } from "zod";
import { mapGeojson } from "../../build/feeds/geojson-gpx.ts";
import { mappedLake } from "../mapped-lake.ts";

const position = z.tuple([z.number().min(-180).max(180), z.number().min(-90).max(90)]);
const line = z.array(position).min(2);
/** RFC 7946, 3.1.6: four or more positions, the last the same as the first. */
const ring = z
  .array(position)
  .min(4)
  .refine((places) => String(places.at(0)) === String(places.at(-1)), "not closed");
const featureOf = (kind: string, type: string, coordinates: z.ZodType, properties: z.ZodRawShape) =>
  z.strictObject({
    type: z.literal("Feature"),
    properties: z.strictObject({ kind: z.literal(kind), ...properties }),
    geometry: z.strictObject({ type: z.literal(type), coordinates }),
  });
const shoreline = z.strictObject({
  type: z.literal("Feature"),
  properties: z.strictObject({ kind: z.literal("shoreline"), name: z.string() }),
  geometry: z.strictObject({ type: z.literal("MultiPolygon"), coordinates: z.array(z.array(ring).min(1)) }),
});
/** What RFC 7946 asks of a collection, with the properties of a club's own file. */
const collection = z.strictObject({
  type: z.literal("FeatureCollection"),
  description: z.string(),
  features: z.tuple([
    shoreline,
    featureOf("contour", "MultiLineString", z.array(line), {
      depth: z.literal("3 m"),
      depth_m: z.literal(3),
    }),
    featureOf("mark", "Point", position, { mark: z.literal("launch"), name: z.string() }),
    featureOf("mark", "Point", position, { mark: z.literal("shoal") }),
  ]),
});

const written = (west: number) => {
  const { guide, lake, map } = mappedLake(west);
  return collection.parse(JSON.parse(mapGeojson(guide, lake, map)));
};

/** Shoelace formula: positive when counter-clockwise. */
const signedArea = (places: readonly (readonly [number, number])[]): number =>
  places.slice(1).reduce((sum, [x, y], i) => {
    const [fromX, fromY] = places[i] ?? [x, y];
    return sum + (fromX * y - x * fromY) / 2;
  }, 0);

/** 180 lies 0.02 into the lake: on its shore's and its island's middle. Then whole lakes just short of it and past it. */
const PLACES: readonly (readonly [string, number, number])[] = [
  ["in the middle of a hemisphere", -106.3, 1],
  ["across the antimeridian from the west", 179.98, 2],
  ["across the antimeridian from the east", -180.02, 2],
  ["up to the antimeridian", 179.96, 1],
  ["from the antimeridian on", 180, 1],
];

describe.each(PLACES)("a lake %s", (_where, west, parts) => {
  const { features } = written(west);
  const polygons = features[0].geometry.coordinates;

  test("is in one part, or cut in two (RFC 7946, 3.1.9)", () => {
    expect(polygons).toHaveLength(parts);
    expect(features[1].geometry.coordinates).toHaveLength(parts);
  });

  test("outer rings run counter-clockwise, islands clockwise (RFC 7946, 3.1.6), and no water is lost", () => {
    for (const [outer, ...islands] of polygons) {
      expect(signedArea(outer ?? [])).toBeGreaterThan(0);
      for (const island of islands) expect(signedArea(island)).toBeLessThan(0);
    }
    const water = polygons.flat().reduce((sum, one) => sum + signedArea(one), 0);
    expect(water).toBeCloseTo(0.04 * 0.02 - 0.02 * 0.01, 9);
  });

  test("no part reaches round the world", () => {
    for (const [outer] of polygons) {
      const lons = (outer ?? []).map(([lon]) => lon);
      expect(Math.max(...lons) - Math.min(...lons)).toBeLessThan(0.05);
    }
  });
});

test("the contour is cut where it crosses: half-way along, at half its rise", () => {
  const [, contour] = written(179.98).features;
  expect(contour.geometry.coordinates).toEqual([
    [
      [expect.closeTo(179.981, 6), 51.202],
      [180, expect.closeTo(51.203, 9)],
    ],
    [
      [-180, expect.closeTo(51.203, 9)],
      [expect.closeTo(-179.981, 6), 51.204],
    ],
  ]);
});

test("names are kept as they are", () => {
  const [, , launch] = written(-106.3).features;
  expect(launch.properties).toHaveProperty("name", `Tom & Jo's <"old"> ramp\u0007`);
});
