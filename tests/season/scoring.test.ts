import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { crps, forecastOfChances, quantile, shareBelow } from "../../build/season/backtest/scoring.ts";
import { CRPS_OF_NORMAL, FAIR_CRPS_OF_ENSEMBLE } from "../reference/season-statistics.ts";
import { normalCdf } from "./normal-cdf.ts";

/** A normal as a day-by-day forecast: day d holds what falls between d - 0.5 and d + 0.5. */
function normalForecast(mean: number, sd: number) {
  const firstDay = Math.floor(mean - 9 * sd);
  return forecastOfChances(
    Float64Array.from(
      { length: Math.ceil(18 * sd) + 1 },
      (_, i) => normalCdf((firstDay + i + 0.5 - mean) / sd) - normalCdf((firstDay + i - 0.5 - mean) / sd),
    ),
    firstDay,
  );
}

const certain = (day: number) => forecastOfChances(Float64Array.of(1), day);

describe("crps", () => {
  test.each(CRPS_OF_NORMAL)(
    "Gneiting et al. (2005): N($mean, $sd) at $observed",
    ({ mean, sd, observed, crps: published }) => {
      // in whole steps of about a hundredth of a standard deviation, then back to the printed unit
      const fine = Math.round(100 / sd);
      expect(crps(normalForecast(mean * fine, sd * fine), observed * fine) / fine).toBeCloseTo(published, 4);
    },
  );

  test("five equally likely days, by definition", () => {
    const { members, observed, fair } = FAIR_CRPS_OF_ENSEMBLE;
    const first = Math.min(...members);
    const chances = new Float64Array(Math.max(...members) - first + 1);
    for (const day of members) chances[day - first] = 1 / members.length;
    const error = members.reduce((sum, day) => sum + Math.abs(day - observed), 0) / members.length;
    // the fair form divides by n (n - 1), the score of the distribution itself by n squared
    const expected = error - ((error - fair) * (members.length - 1)) / members.length;
    expect(crps(forecastOfChances(chances, first), observed)).toBeCloseTo(expected, 12);
  });

  test("of a single day it is the absolute error", () => {
    expect(crps(certain(110), 104)).toBe(6);
    expect(crps(certain(110), 113)).toBe(3);
    expect(crps(certain(110), 110)).toBe(0);
  });
});

describe("shareBelow", () => {
  test("splits the observed day at the chance named", () => {
    const even = forecastOfChances(Float64Array.of(0.25, 0.25, 0.25, 0.25), 10);
    expect(shareBelow(even, 11, 0.2)).toBe(0);
    expect(shareBelow(even, 11, 0.4)).toBeCloseTo(0.6, 12);
    expect(shareBelow(even, 11, 0.5)).toBe(1);
  });

  test("a forecast that is right in the mean is called right: dates drawn from it come as often as said", () => {
    const chances = Float64Array.of(0.1, 0.3, 0.4, 0.15, 0.05);
    const forecast = forecastOfChances(chances, 100);
    for (const said of [0.1, 0.25, 0.5, 0.77, 0.9]) {
      const came = chances.reduce((sum, chance, i) => sum + chance * shareBelow(forecast, 100 + i, said), 0);
      expect(came).toBeCloseTo(said, 12);
    }
  });
});

test("quantile is the first day that has come with the chance", () => {
  fc.assert(
    fc.property(
      fc
        .array(fc.integer({ min: 0, max: 20 }), { minLength: 1, maxLength: 12 })
        .filter((a) => a.some((v) => v > 0)),
      fc.integer({ min: 1, max: 99 }),
      (weights, percent) => {
        const forecast = forecastOfChances(Float64Array.from(weights), 50);
        const day = quantile(forecast, percent / 100);
        const sum = (until: number) => weights.slice(0, until - 50 + 1).reduce((a, b) => a + b, 0);
        const all = sum(50 + weights.length);
        expect(sum(day) / all).toBeGreaterThanOrEqual(percent / 100 - 1e-12);
        expect(sum(day - 1) / all).toBeLessThan(percent / 100);
      },
    ),
  );
});
