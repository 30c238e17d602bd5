import { describe, expect, test } from "vitest";
import { parseCalendarDate } from "../../build/model/calendar.ts";
import type { Lake } from "../../build/model/club.ts";
import type { LakeShape } from "../../build/model/lake-shape.ts";
import { composeWater } from "../../build/water/water.ts";
import { lakeWaterSchema } from "../../build/water/water-schema.ts";
import { CRATER_LAKE, CRATER_LAKE_FIGURES } from "../reference/crater-lake.ts";
import { circle, LAKE, OPTIONS, rectangle, shapeOf } from "./shapes.ts";

const DAY = parseCalendarDate("2026-05-16");
const options = { ...OPTIONS, days: DAY === undefined ? [] : [DAY] };

describe("a lake without a shape", () => {
  const { water, problems } = composeWater(LAKE, undefined, options);

  test("still has its light, its oxygen and the rule for warm water", () => {
    expect(problems).toEqual([]);
    expect(water).toMatchObject({ map: null, size: null, depths: null, zones: [], wind: null, mixing: null });
    expect(water.light).toMatchObject([{ date: "2026-05-16", sun: "day and night" }]);
    expect(water.oxygen?.saturation).toHaveLength(21);
    expect(water.warmWater.rule).toMatch(/18 °C/);
  });

  test("takes the Osgood index from the club's own figures: 6 m over 1 km2 is 6", () => {
    const figures = { ...LAKE, area_ha: 100, meanDepth_m: 6 };
    expect(composeWater(figures, undefined, options).water.mixing).toMatchObject({
      osgood_mpkm: 6,
      by: "club",
    });
  });

  test.each([
    [3.9, /mixed to the bottom by wind/],
    [6, /in between/],
    [9.1, /stay in layers/],
  ])("an index of %f is told as a tendency", (index, words) => {
    const { mixing } = composeWater({ ...LAKE, area_ha: 100, meanDepth_m: index }, undefined, options).water;
    expect(mixing?.words).toMatch(words);
  });
});

describe("what goes out", () => {
  test.each([
    ["no shape", undefined],
    ["a shoreline alone", shapeOf(circle(300), { marks: [{ mark: "launch", x: 0, y: 300 }] })],
    ["contours", shapeOf(circle(300), { islands: [circle(40)], contours: [[3, circle(200)]] })],
    ["soundings", shapeOf(rectangle(800, 300), { soundings: [{ x: 10, y: 20, depth_m: 4 }] })],
  ])("%s fits the schema, in plain JSON", (_, shape) => {
    const bands = [{ phase: "ice-off" as const, band: { from_m: 0.5, to_m: 2 } }];
    const { water } = composeWater(LAKE, shape, { ...options, bands });
    expect(lakeWaterSchema.parse(JSON.parse(JSON.stringify(water)))).toEqual(water);
  });

  test("a shoreline alone has a size and a wind, but no depths and no zones", () => {
    const bands = [{ phase: "ice-off" as const, band: { from_m: 0.5, to_m: 2 } }];
    const { water } = composeWater(LAKE, shapeOf(circle(300)), { ...options, bands });
    expect(water.size?.area_ha).toBeCloseTo(28.3, 1);
    expect(water.wind?.directions).toHaveLength(16);
    expect(water).toMatchObject({ depths: null, zones: [], map: { contours: [], contoursBy: null } });
  });

  test("the same input gives the same output, to the last digit", () => {
    const shape = shapeOf(circle(300), {
      soundings: [
        { x: 30, y: -50, depth_m: 4 },
        { x: -90, y: 10, depth_m: 7 },
      ],
    });
    expect(JSON.stringify(composeWater(LAKE, shape, options))).toBe(
      JSON.stringify(composeWater(LAKE, shape, options)),
    );
  });

  test("a lake of several basins keeps them all", () => {
    const one = shapeOf(circle(200));
    const two = shapeOf(circle(100).map(({ x, y }) => ({ x: x + 500, y })));
    const both: LakeShape = { ...one, shoreline: [...one.shoreline, ...two.shoreline] };
    const { size, map, wind } = composeWater(LAKE, both, options).water;
    expect(map?.shoreline).toHaveLength(2);
    expect((size?.area_ha ?? 0) * 10_000).toBeCloseTo(Math.PI * (200 ** 2 + 100 ** 2), -2);
    // The land between them stops the waves.
    expect(wind?.longest.fetch_m).toBe(400);
  });
});

describe("a real lake, drawn by hand", () => {
  const lake: Lake = { ...LAKE, position: { lat: 42.944, lon: -122.106 }, elevation_m: 1883, area_ha: 5340 };
  const shape: LakeShape = {
    ...shapeOf(circle(1)),
    shoreline: [[[...CRATER_LAKE.shore], [...CRATER_LAKE.island]]],
  };
  const { water, problems } = composeWater(lake, shape, options);

  test("its area is the published one to a tenth, and nothing is reported", () => {
    expect(Math.abs((water.size?.area_ha ?? 0) / CRATER_LAKE_FIGURES.area_ha - 1)).toBeLessThan(0.1);
    expect(problems).toEqual([]);
  });

  test("its fetches lie between the published distances across, to a tenth", () => {
    const fetches = water.wind?.directions.map(({ fetch_m }) => fetch_m) ?? [];
    const [least, most] = CRATER_LAKE_FIGURES.across_m;
    expect(Math.abs(Math.min(...fetches) / least - 1)).toBeLessThan(0.1);
    expect(Math.abs(Math.max(...fetches) / most - 1)).toBeLessThan(0.1);
  });
});
