import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { LakeShape } from "../../build/model/lake-shape.ts";
import { measureRing } from "../../build/model/lake-shape.ts";
import { roundDepths_m, volume_m3 } from "../../build/water/depths.ts";
import type { Point } from "../../build/water/plane.ts";
import { composeWater } from "../../build/water/water.ts";
import type { LakeWater, MultiPolygon } from "../../build/water/water-schema.ts";
import { HYPSOGRAPHIC_VOLUMES } from "../reference/lake-geometry.ts";
import { circle, LAKE, OPTIONS, PLANE, rectangle, shapeOf } from "./shapes.ts";

const RADIUS_M = 500;
const DEEPEST_M = 10;
const FEET_M = 0.3048;

/** A lake whose bottom is known by a formula: depth by distance from the middle, as a share of the radius. */
interface Bowl {
  readonly name: string;
  readonly depthAt: (out: number) => number;
  /** How far out a depth lies. */
  readonly outAt: (depth_m: number) => number;
  /** Mean depth by the greatest: closed form. */
  readonly mean_m: number;
}

const BOWLS: readonly Bowl[] = [
  {
    name: "cone",
    depthAt: (out) => DEEPEST_M * (1 - out),
    outAt: (depth_m) => 1 - depth_m / DEEPEST_M,
    mean_m: DEEPEST_M / 3,
  },
  {
    name: "paraboloid",
    depthAt: (out) => DEEPEST_M * (1 - out ** 2),
    outAt: (depth_m) => Math.sqrt(1 - depth_m / DEEPEST_M),
    mean_m: DEEPEST_M / 2,
  },
  {
    name: "frustum of a cone, flat from half way in",
    depthAt: (out) => Math.min(DEEPEST_M, 2 * DEEPEST_M * (1 - out)),
    outAt: (depth_m) => 1 - depth_m / (2 * DEEPEST_M),
    // h/3 (A1 + A2 + sqrt(A1 A2)) with A2 a quarter of A1.
    mean_m: (DEEPEST_M / 3) * (1 + 1 / 4 + 1 / 2),
  },
];

/** Places spread evenly over a disc: Vogel's sunflower. */
const sunflower = (count: number): { x: number; y: number; out: number }[] =>
  Array.from({ length: count }, (_, i) => {
    const out = 0.98 * Math.sqrt((i + 0.5) / count);
    const angle = i * Math.PI * (3 - Math.sqrt(5));
    return { x: out * RADIUS_M * Math.cos(angle), y: out * RADIUS_M * Math.sin(angle), out };
  });

const contoursOf = ({ outAt }: Bowl, depths_m: readonly number[]) =>
  depths_m.map((depth_m): [number, Point[]] => [depth_m, circle(RADIUS_M * outAt(depth_m))]);

const soundedBowl = ({ depthAt }: Bowl, count: number): LakeShape =>
  shapeOf(circle(RADIUS_M), {
    soundings: sunflower(count).map(({ x, y, out }) => ({ x, y, depth_m: depthAt(out) })),
  });

const water = (shape: LakeShape, lake = LAKE, options = OPTIONS): LakeWater =>
  composeWater(lake, shape, options).water;

/** Area of GeoJSON polygons on the ellipsoid, holes taken off, m2. */
const areaOf = (polygons: MultiPolygon): number =>
  polygons.flat().reduce((sum, ring) => sum + measureRing(ring).area_m2, 0);

describe("volume under a hypsographic curve", () => {
  test.each(HYPSOGRAPHIC_VOLUMES)("$name", ({ depths_m, areas_m2, volume_m3: expected, tolerance_m3 }) => {
    const rows = depths_m.map((depth_m, i) => ({ depth_m, area_m2: areas_m2[i] ?? 0 }));
    expect(Math.abs(volume_m3(rows) - expected)).toBeLessThan(tolerance_m3);
  });
});

describe.each(BOWLS)("$name", (bowl) => {
  test("contours: mean depth by the closed form, to 3 %", () => {
    const shape = shapeOf(circle(RADIUS_M), {
      contours: contoursOf(
        bowl,
        [1, 2, 3, 4, 5, 6, 7, 8, 9, 10].filter((d) => bowl.outAt(d) > 0.05),
      ),
    });
    const { depths } = water(shape, { ...LAKE, maxDepth_m: DEEPEST_M });
    expect(Math.abs((depths?.mean_m ?? 0) / bowl.mean_m - 1)).toBeLessThan(0.03);
    expect(depths?.volume_m3).toBeCloseTo((depths?.mean_m ?? 0) * Math.PI * RADIUS_M ** 2, -5);
  });

  test("300 soundings: mean depth by the closed form, to 3 %", () => {
    expect(Math.abs((water(soundedBowl(bowl, 300)).depths?.mean_m ?? 0) / bowl.mean_m - 1)).toBeLessThan(
      0.03,
    );
  });

  test("the lines drawn from soundings lie where the formula puts them, to a fiftieth of the radius", () => {
    const { map } = water(soundedBowl(bowl, 300));
    expect(map?.contoursBy).toBe("soundings");
    for (const { depth_m, lines } of map?.contours.filter((one) => one.depth_m < 8) ?? [])
      for (const [lon, lat] of lines.flat()) {
        const { x, y } = PLANE.toPlane([lon, lat]);
        expect(Math.abs(Math.hypot(x, y) / RADIUS_M - bowl.outAt(depth_m))).toBeLessThan(0.02);
      }
  });
});

describe("zones", () => {
  const [cone] = BOWLS;
  if (cone === undefined) throw new Error("no cone");
  const lake = { ...LAKE, maxDepth_m: DEEPEST_M };
  const shape = shapeOf(circle(RADIUS_M), { contours: contoursOf(cone, [1, 2, 3, 4, 5, 6, 7, 8, 9]) });
  const zonesOf = (...bands: (readonly [number, number])[]) =>
    water(shape, lake, {
      ...OPTIONS,
      bands: bands.map(([from_m, to_m]) => ({ phase: "post-turnover" as const, band: { from_m, to_m } })),
    }).zones;

  test.each([
    [0, 2],
    [1.5, 3.5],
    [3, 6],
    [8, 12],
  ])("from %f to %f m: a ring of the cone, its share and its polygon", (from_m, to_m) => {
    const [zone] = zonesOf([from_m, to_m]);
    // A(z)/A0 = (1 - z/zmax)^2, closed form.
    const share = cone.outAt(from_m) ** 2 - Math.max(0, cone.outAt(to_m)) ** 2;
    expect(Math.abs((zone?.share ?? 0) - share)).toBeLessThan(0.01);
    expect(Math.abs(areaOf(zone?.polygons ?? []) / (Math.PI * RADIUS_M ** 2) - share)).toBeLessThan(0.01);
  });

  test("outer rings run counter-clockwise, holes clockwise (RFC 7946, 3.1.6)", () => {
    const [zone] = zonesOf([3, 6]);
    expect(zone?.polygons).toHaveLength(1);
    for (const [outer = [], ...holes] of zone?.polygons ?? []) {
      expect(measureRing(outer).area_m2).toBeGreaterThan(0);
      expect(holes).toHaveLength(1);
      for (const hole of holes) expect(measureRing(hole).area_m2).toBeLessThan(0);
      for (const ring of [outer, ...holes]) expect(ring[0]).toEqual(ring.at(-1));
    }
  });

  test("a shoal is left out of the deep zone and is a part of its own in the shallow one", () => {
    const shoal = circle(60).map(({ x, y }) => ({ x: x + 150, y }));
    const flat = shapeOf(rectangle(1000, 600), {
      contours: [
        [3, rectangle(800, 400)],
        [5, rectangle(700, 300)],
        [3, shoal],
        [2, circle(30).map(({ x, y }) => ({ x: x + 150, y }))],
      ],
    });
    const zones = water(flat, LAKE, {
      ...OPTIONS,
      bands: [
        { phase: "ice-off", band: { from_m: 0, to_m: 3 } },
        { phase: "post-turnover", band: { from_m: 3, to_m: 6 } },
      ],
    }).zones;
    const [shallow, deep] = [zones[0]?.polygons ?? [], zones[1]?.polygons ?? []];
    expect(shallow).toHaveLength(2);
    expect(deep).toHaveLength(1);
    expect(deep[0]).toHaveLength(2);
    expect(
      Math.abs(Math.min(...shallow.map((polygon) => areaOf([polygon]))) / (Math.PI * 60 ** 2) - 1),
    ).toBeLessThan(0.1);
    expect((zones[0]?.share ?? 0) + (zones[1]?.share ?? 0)).toBeCloseTo(1, 3);
  });

  test("a band below the bottom, or without height, is no zone", () => {
    expect(zonesOf([11, 13], [4, 4])).toEqual([]);
  });
});

describe("depth bands", () => {
  test("shares sum to 1 and follow the closed form of the cone, in round feet", () => {
    const [cone] = BOWLS;
    const shape = soundedBowl(cone ?? { name: "", depthAt: () => 0, outAt: () => 0, mean_m: 0 }, 400);
    const { depths } = water(shape, LAKE, { ...OPTIONS, units: "imperial" });
    const bands = depths?.bands ?? [];
    expect(bands.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 3);
    expect(bands.slice(0, -1).map(({ to_m }) => Math.round(to_m / FEET_M))).toEqual([5, 10, 15, 20, 25, 30]);
    for (const { from_m, to_m, share } of bands) {
      const expected = (1 - from_m / DEEPEST_M) ** 2 - (1 - Math.min(DEEPEST_M, to_m) / DEEPEST_M) ** 2;
      expect(Math.abs(share - expected)).toBeLessThan(0.015);
    }
  });

  test.each([
    [2.6, "imperial", [1, 2, 3, 4, 5, 6, 7, 8].map((feet) => feet * FEET_M)],
    [8.8, "metric", [1, 2, 3, 4, 5, 6, 7, 8]],
    [10, "metric", [1, 2, 3, 4, 5, 6, 7, 8, 9]],
    [594, "metric", [100, 200, 300, 400, 500]],
  ] as const)("round depths of a lake %f m deep, %s", (deepest_m, units, expected) => {
    const found = roundDepths_m(deepest_m, units);
    expect(found).toHaveLength(expected.length);
    for (const [i, depth_m] of found.entries()) expect(depth_m).toBeCloseTo(expected[i] ?? 0, 9);
  });
});

test("off a steep shore the shallow lines stay on the water", () => {
  const wall = rectangle(1000, 600);
  const soundings = Array.from({ length: 60 }, (_, i) => ({ x: -498, y: -295 + 10 * i, depth_m: 10 }));
  const { map } = water(shapeOf(wall, { soundings: [...soundings, { x: 0, y: 0, depth_m: 10 }] }));
  const west = map?.contours.find(({ depth_m }) => depth_m === 1)?.lines.flat() ?? [];
  expect(Math.min(...west.map(([lon, lat]) => PLANE.toPlane([lon, lat]).x))).toBeGreaterThanOrEqual(-500);
});

describe("what no depth reaches", () => {
  test("a bay is shallower than the nearest contour, but not dry", () => {
    const shore = [
      { x: -500, y: -300 },
      { x: 500, y: -300 },
      { x: 500, y: 300 },
      { x: 150, y: 300 },
      { x: 150, y: 700 },
      { x: -150, y: 700 },
      { x: -150, y: 300 },
      { x: -500, y: 300 },
    ];
    const { depths } = water(shapeOf(shore, { contours: [[4, rectangle(800, 400)]] }));
    // The bay is 12 ha of 72; it is wide enough to hold deep water by itself, but the contour says that it does not.
    const shallow = depths?.hypsography[0]?.area_ha ?? 0;
    expect(shallow).toBeCloseTo(72, 1);
    const deep = depths?.hypsography.at(-1);
    expect(deep?.depth_m).toBe(4);
    expect(Math.abs((deep?.area_ha ?? 0) / 32 - 1)).toBeLessThan(0.02);
    const band = water(shapeOf(shore, { contours: [[4, rectangle(800, 400)]] }), LAKE, {
      ...OPTIONS,
      bands: [{ phase: "ice-off", band: { from_m: 0.5, to_m: 3.9 } }],
    }).zones[0];
    const inBay = (band?.polygons ?? []).flat(2).some(([lon, lat]) => PLANE.toPlane([lon, lat]).y > 500);
    expect(inBay).toBe(true);
  });

  test("one sounding by the shore says nothing of deep water beyond it", () => {
    const shape = shapeOf(rectangle(1000, 600), { soundings: [{ x: -480, y: 0, depth_m: 4 }] });
    const [zone] = water(shape, LAKE, {
      ...OPTIONS,
      bands: [{ phase: "ice-off", band: { from_m: 3.8, to_m: 9 } }],
    }).zones;
    expect(zone?.share).toBeLessThan(0.03);
  });

  test("the club's greatest depth lies inside the deepest contour, not in the notch of it", () => {
    const horseshoe = [
      { x: -400, y: -250 },
      { x: 400, y: -250 },
      { x: 400, y: 250 },
      { x: 150, y: 250 },
      { x: 150, y: -50 },
      { x: -150, y: -50 },
      { x: -150, y: 250 },
      { x: -400, y: 250 },
    ];
    const shape = shapeOf(rectangle(1000, 700), { contours: [[5, horseshoe]] });
    const bands = [{ phase: "post-turnover" as const, band: { from_m: 5.1, to_m: 30 } }];
    const { zones, depths } = water(shape, { ...LAKE, maxDepth_m: 12 }, { ...OPTIONS, bands });
    expect(depths?.deepest_m).toBe(12);
    expect(zones[0]?.share).toBeGreaterThan(0.2);
    for (const [lon, lat] of zones[0]?.polygons.flat(2) ?? []) {
      const { x, y } = PLANE.toPlane([lon, lat]);
      expect(Math.abs(x) < 140 && y > -40).toBe(false);
    }
  });

  test("a flat bottom at the deepest contour belongs to the band that ends there", () => {
    const shape = shapeOf(rectangle(1000, 600), { contours: [[4, rectangle(800, 400)]] });
    const bands = [{ phase: "post-turnover" as const, band: { from_m: 3.9, to_m: 4 } }];
    expect(water(shape, LAKE, { ...OPTIONS, bands }).zones[0]?.share).toBeGreaterThan(0.5);
  });

  test("nothing is deeper than the deepest place known", () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            x: fc.double({ min: -300, max: 300, noNaN: true }),
            y: fc.double({ min: -300, max: 300, noNaN: true }),
            depth_m: fc.double({ min: 0.5, max: 30, noNaN: true }),
          }),
          { minLength: 1, maxLength: 25 },
        ),
        (soundings) => {
          const deepest = Math.max(...soundings.map(({ depth_m }) => depth_m));
          const { depths } = water(shapeOf(circle(RADIUS_M), { soundings }));
          expect(depths?.deepest_m).toBeCloseTo(deepest, 2);
          expect(depths?.mean_m).toBeLessThan(deepest);
          expect(depths?.mean_m).toBeGreaterThan(0);
          const areas = depths?.hypsography.map(({ area_ha }) => area_ha) ?? [];
          for (const [i, area] of areas.entries())
            expect(area).toBeLessThanOrEqual(areas[i - 1] ?? Number.POSITIVE_INFINITY);
        },
      ),
      { numRuns: 15 },
    );
  });
});

test("a lake twice as long and twice as wide has four times the area, the same shape and the same bands", () => {
  const shore = (scale: number): Point[] =>
    circle(1).map(({ x, y }, i) => {
      const radius = scale * RADIUS_M * (1 + 0.2 * Math.sin((i * 2 * Math.PI) / 72));
      return { x: x * radius, y: y * radius };
    });
  const of = (scale: number) =>
    water(shapeOf(shore(scale), { contours: [[4, shore(scale / 2)]] }), { ...LAKE, maxDepth_m: 6 });
  const [one, two] = [of(1), of(2)];
  expect((two.size?.area_ha ?? 0) / (one.size?.area_ha ?? 1)).toBeCloseTo(4, 3);
  expect((two.size?.shoreline_km ?? 0) / (one.size?.shoreline_km ?? 1)).toBeCloseTo(2, 3);
  expect(two.size?.development).toBe(one.size?.development);
  for (const [i, { share }] of (two.depths?.bands ?? []).entries())
    expect(Math.abs(share - (one.depths?.bands[i]?.share ?? 0))).toBeLessThan(0.005);
  // The same mean depth on four times the area: half the index.
  expect(Math.abs((two.mixing?.osgood_mpkm ?? 0) / (one.mixing?.osgood_mpkm ?? 1) - 0.5)).toBeLessThan(0.01);
});
