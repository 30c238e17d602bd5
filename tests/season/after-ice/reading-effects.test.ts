import { expect, test } from "vitest";
import { readingEffects } from "../../../build/season/after-ice/reading-effects.ts";
import { clocksOf, lawOf, readingsOf } from "./reference-cases.ts";

test("water still mixed at two depths delays the best weeks, warm water brings their end, and each alone says so", () => {
  const clocks = clocksOf({ lat: 41.2, elevation_m: 2700, area_ha: 20, max_depth_m: 12, usual: 145 });
  const law = lawOf(["t4", 145, 4]);
  const readings = readingsOf([
    { t: 175, surface: 10, deep: 10, z: 5 },
    { t: 190, surface: 19 },
  ]);
  const [mixed, warm] = readingEffects(clocks, law, readings);
  expect(mixed?.bestWeeks_d).toBeGreaterThan(1);
  expect(warm?.laterWeeks_d).toBeLessThan(-3);
  const [alone] = readingEffects(clocks, law, readings.slice(0, 1));
  expect(alone?.reading).toBe(readings[0]);
});
