import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { loadClub } from "../../build/input/load-club.ts";
import { composeWater } from "../../build/water/water.ts";
import { demoShapes } from "../bench/demo-shapes.ts";
import { OPTIONS } from "./shapes.ts";

const { club, problems } = await loadClub("demo-data");
const lakes = club?.lakes ?? [];

test("the demo's shapes are what the tool makes, and none is wrong", async () => {
  expect(problems).toEqual([]);
  const made = await demoShapes();
  expect(made.size).toBe(13);
  for (const [file, text] of made) expect(readFileSync(file, "utf8")).toBe(text);
});

test("every demo lake has a shape; two are sounded", () => {
  expect(lakes).toHaveLength(12);
  expect(lakes.filter(({ shape }) => shape === undefined)).toEqual([]);
  expect(lakes.filter(({ shape }) => (shape?.soundings.length ?? 0) > 0).map(({ slug }) => slug)).toEqual([
    "peatkettle",
    "thimblerig",
  ]);
});

test.each(lakes.map((lake) => [lake.slug, lake] as const))(
  "%s: area and depths of its own file, to 5 %%",
  (_, lake) => {
    const { water, problems: doubts } = composeWater(lake, lake.shape, { ...OPTIONS, units: "imperial" });
    expect(doubts).toEqual([]);
    expect(Math.abs((water.size?.area_ha ?? 0) / (lake.area_ha ?? 1) - 1)).toBeLessThan(0.05);
    if (lake.maxDepth_m === undefined || lake.meanDepth_m === undefined) {
      expect(water.depths).toBeNull();
      return;
    }
    const sounded = lake.shape?.soundings.map(({ depth_m }) => depth_m) ?? [];
    const drawn = lake.shape?.contours.map(({ depth_m }) => depth_m) ?? [];
    if (sounded.length > 0) expect(Math.abs(Math.max(...sounded) / lake.maxDepth_m - 1)).toBeLessThan(0.05);
    else expect(Math.max(...drawn)).toBeLessThan(lake.maxDepth_m);
    expect(Math.abs((water.depths?.mean_m ?? 0) / lake.meanDepth_m - 1)).toBeLessThan(0.05);
  },
);

test("the reservoir has two miles of fetch to its straight dam, and Quern its three shoals", () => {
  const of = (slug: string) => {
    const lake = lakes.find((one) => one.slug === slug);
    if (lake === undefined) throw new Error(slug);
    return composeWater(lake, lake.shape, { ...OPTIONS, units: "imperial" }).water;
  };
  const { wind, map } = of("oxbar");
  expect((wind?.longest.fetch_m ?? 0) / 1609.344).toBeCloseTo(2, 0);
  expect(wind?.longest.along).toEqual(["E", "W"]);
  expect(map?.marks.map(({ mark }) => mark)).toContain("dam");
  const fiveFeet = of("quern").map?.contours.find(({ depth_m }) => Math.abs(depth_m - 1.524) < 0.001);
  // The shore's own line, the island's, and one about each shoal that comes within ten feet.
  expect(of("quern").map?.marks.filter(({ mark }) => mark === "shoal")).toHaveLength(3);
  expect(fiveFeet?.lines.length).toBeGreaterThanOrEqual(2);
});
