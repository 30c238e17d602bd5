import { describe, expect, test } from "vitest";
import type { GuideLake } from "../../build/guide/guide-schema.ts";
import { heatLines, heatRule } from "../../build/guide/heat-words.ts";
import { day } from "../lake-fixture.ts";

const HEAT: GuideLake["heat"] = [
  { date: day("2026-06-01"), takeCare: 0.6, stop: 0.3 },
  { date: day("2026-06-10"), takeCare: 0.04, stop: 0.002 },
  { date: day("2026-06-20"), takeCare: 0.11, stop: 0.02 },
  { date: day("2026-07-26"), takeCare: 0.53, stop: 0.09 },
  { date: day("2026-08-20"), takeCare: 0.4, stop: 0.05 },
];
const low = { heat: HEAT, elevation_m: 300 };

describe("the heat guard", () => {
  test("says today's chance, the first day of one in ten, and the highest of the days to come", () => {
    expect(heatLines(low, day("2026-06-10"), "imperial")).toEqual([
      "Take care at 64 °F and over: 4 % today; 1 in 10 from 20 Jun; highest on 26 Jul, 53 %.",
      "Stop at 68 °F and over: under 1 % today; highest on 26 Jul, 9 %.",
    ]);
  });

  test("says “at least” above 1,500 m, and not at 1,500 m or where the height is not known", () => {
    const of = (elevation_m: number | null): string =>
      heatLines({ heat: HEAT, elevation_m }, day("2026-06-11"), "metric").join(" ");
    expect(of(1501)).toBe(
      "Take care at 18 °C and over: at least 1 in 10 from 20 Jun; highest on 26 Jul, at least 53 %. " +
        "Stop at 20 °C and over: highest on 26 Jul, at least 9 %.",
    );
    for (const elevation_m of [1500, null]) expect(of(elevation_m)).not.toContain("at least");
  });

  test("says so where no day to come is likely to be warm", () => {
    const [care, stop] = heatLines(low, day("2026-08-21"), "metric");
    expect(care).toBe("Take care at 18 °C and over: under 1 % on every day to come.");
    expect(stop).toBe("Stop at 20 °C and over: under 1 % on every day to come.");
  });

  test("names the limits in the club's units: 18 °C is 64.4 °F, 20 °C is 68 °F", () => {
    expect(heatRule("imperial")).toBe("Take care at 64 °F and over; stop at 68 °F and over.");
    expect(heatRule("metric")).toBe("Take care at 18 °C and over; stop at 20 °C and over.");
  });
});
