import fc from "fast-check";
import { expect, test } from "vitest";
import { clipPolygons, type PlanePolygon, pointInRing } from "../../build/water/isobands.ts";
import type { Point } from "../../build/water/plane.ts";
import { circle } from "./shapes.ts";

const isIn = (polygons: readonly PlanePolygon[], point: Point): boolean =>
  polygons.flat().filter((ring) => pointInRing(ring, point)).length % 2 === 1;

/** A closed ring about a point. */
function round(radius: number, x = 0, y = 0): Point[] {
  const ring = circle(radius).map((point) => ({ x: point.x + x, y: point.y + y }));
  return [...ring, ...ring.slice(0, 1)];
}

/** A round lake of 100 m with an island of 20 m in its middle. */
const SHORE: PlanePolygon[] = [[round(100), round(20).toReversed()]];

test("what is left is what lies both in the polygon and in the lake, and not on its island", () => {
  const within = fc.double({ min: -150, max: 150, noNaN: true });
  fc.assert(
    fc.property(within, within, fc.double({ min: 5, max: 150, noNaN: true }), (x, y, radius) => {
      const zone: PlanePolygon[] = [[round(radius, x, y)]];
      const left = clipPolygons(SHORE, zone);
      for (let east = -150.3; east < 150; east += 7.1)
        for (let north = -150.7; north < 150; north += 6.7) {
          const point = { x: east, y: north };
          expect(isIn(left, point)).toBe(isIn(SHORE, point) && isIn(zone, point));
        }
    }),
    { numRuns: 60 },
  );
});

test("an island that lies whole in the polygon is cut out of it", () => {
  const left = clipPolygons(SHORE, [[round(60)]]);
  expect(isIn(left, { x: 0, y: 0 })).toBe(false);
  expect(isIn(left, { x: 40, y: 0 })).toBe(true);
});
