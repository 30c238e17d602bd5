import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { LonLat } from "../../build/model/lake-shape.ts";
import { distance_m, measureRing } from "../../build/model/lake-shape.ts";
import { measureOutline, osgoodIndex, shorelineDevelopment } from "../../build/water/morphometry.ts";
import { planeAbout } from "../../build/water/plane.ts";
import { KARNEY_POLYGONS, MEASURED_LAKE, OSGOOD_INDEX } from "../reference/lake-geometry.ts";

const closed = (corners: readonly LonLat[]): LonLat[] => [...corners, ...corners.slice(0, 1)];

describe("area and length on the ellipsoid", () => {
  test.each(KARNEY_POLYGONS)("GeographicLib's test $name", (polygon) => {
    const { area_m2, length_m } = measureRing(closed(polygon.corners));
    if (polygon.area_m2 !== undefined)
      expect(Math.abs(area_m2 - polygon.area_m2)).toBeLessThanOrEqual(polygon.areaTolerance_m2 ?? 0);
    if (polygon.length_m !== undefined)
      expect(Math.abs(length_m - polygon.length_m)).toBeLessThanOrEqual(polygon.lengthTolerance_m ?? 0);
  });

  test(`a lake with an island: ${MEASURED_LAKE.citation}`, () => {
    const { shore, island, tolerance_m2 } = MEASURED_LAKE;
    // Listed clockwise, as an island runs.
    expect(measureRing(closed(island)).area_m2).toBeCloseTo(-MEASURED_LAKE.island_m2, 1);
    const outline = measureOutline({ shoreline: [[closed(shore), closed(island)]] });
    expect(Math.abs(outline.area_m2 - MEASURED_LAKE.water_m2)).toBeLessThan(tolerance_m2);
    expect(Math.abs(outline.enclosed_m2 - MEASURED_LAKE.enclosed_m2)).toBeLessThan(tolerance_m2);
    expect(outline.shoreline_m - outline.outerShoreline_m).toBeCloseTo(MEASURED_LAKE.islandShore_m, 2);
    expect(outline.islands).toBe(1);
    expect(shorelineDevelopment(outline.outerShoreline_m, outline.enclosed_m2)).toBeCloseTo(
      MEASURED_LAKE.development,
      3,
    );
  });

  test.each(OSGOOD_INDEX)("Osgood index $index", ({ meanDepth_m, area_km2, index }) => {
    expect(osgoodIndex(meanDepth_m, area_km2)).toBeCloseTo(index, 4);
  });
});

describe("the flat map of a lake", () => {
  const place = fc.record({
    x: fc.double({ min: -2e4, max: 2e4, noNaN: true }),
    y: fc.double({ min: -2e4, max: 2e4, noNaN: true }),
  });

  test("lengths are true to 1 in 25,000 of Karney's geodesic within 20 km, up to 70 degrees", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -70, max: 70, noNaN: true }),
        place,
        fc.double({ min: 0, max: 7, noNaN: true }),
        (lat, at, turn) => {
          const { toLonLat } = planeAbout([170, lat]);
          const to = { x: at.x + 500 * Math.cos(turn), y: at.y + 500 * Math.sin(turn) };
          expect(Math.abs(distance_m(toLonLat(at), toLonLat(to)) / 500 - 1)).toBeLessThan(1 / 25_000);
        },
      ),
    );
  });

  test("there and back is the same place", () => {
    fc.assert(
      fc.property(fc.double({ min: -70, max: 70, noNaN: true }), place, (lat, at) => {
        const { toLonLat, toPlane } = planeAbout([-106, lat]);
        const back = toPlane(toLonLat(at));
        expect(Math.hypot(back.x - at.x, back.y - at.y)).toBeLessThan(1e-5);
      }),
    );
  });

  test("north is up and east is right", () => {
    const { toPlane } = planeAbout([-106, 41]);
    const { x, y } = toPlane([-105.99, 41.01]);
    expect(x).toBeGreaterThan(0);
    expect(y).toBeGreaterThan(0);
  });
});
