import { describe, expect, test } from "vitest";
import {
  betaQuantile,
  catchesWithHours,
  catchRate,
  gammaQuantile,
  lakeCatches,
  outingsOf,
  poissonInterval,
  pooled,
  shrunkenRate,
  visitTally,
} from "../../build/flies/catch-rates.ts";
import {
  AUTO_CLAIMS,
  BETA_QUANTILES,
  EIGHT_SITES,
  GAMMA_QUANTILES,
  GARWOOD,
  POSTERIOR_RATES,
} from "../reference/catch-and-diet.ts";
import { reportOf } from "../season/club.ts";
import { visit } from "./fly-fixture.ts";

describe("against published and independent values", () => {
  test.each(GARWOOD)("Garwood 1936, 95 % interval of a count of $count", ({ count, low, high }) => {
    const interval = poissonInterval(count);
    expect(interval.low).toBeCloseTo(low, 4);
    expect(interval.high).toBeCloseTo(high, 4);
  });

  test.each(GAMMA_QUANTILES)(
    "scipy gamma quantiles, shape $shape, rate $rate",
    ({ shape, rate, low, high }) => {
      expect(gammaQuantile(0.05, shape, rate)).toBeCloseTo(low, 5);
      expect(gammaQuantile(0.95, shape, rate)).toBeCloseTo(high, 5);
    },
  );

  test.each(BETA_QUANTILES)(
    "scipy beta quantile $chance of ($alpha, $beta)",
    ({ chance, alpha, beta, value }) => {
      expect(betaQuantile(chance, alpha, beta)).toBeCloseTo(value, 7);
    },
  );

  test.each(POSTERIOR_RATES)(
    "gamma-Poisson closed form: $fish fish in $rodHours h",
    ({ shape, rate, fish, rodHours, mean }) => {
      expect(shrunkenRate({ mean: shape / rate, rodHours: rate }, { fish, rodHours })).toBeCloseTo(mean, 6);
    },
  );

  test.each(AUTO_CLAIMS.expected)("Efron & Hastie, table 6.1: after $claims claims", ({ claims, mean }) => {
    const { nu, sigma } = AUTO_CLAIMS;
    const expected = shrunkenRate({ mean: nu * sigma, rodHours: 1 / sigma }, { fish: claims, rodHours: 1 });
    expect(Math.abs(expected - mean)).toBeLessThanOrEqual(0.002);
  });

  test("the ratio of the totals, not the mean of the ratios", () => {
    const sites = EIGHT_SITES.fish.map((fish, i) => ({ fish, rodHours: EIGHT_SITES.rodHours[i] ?? 0 }));
    expect(catchRate(pooled(sites))?.mean).toBeCloseTo(EIGHT_SITES.pooled, 6);
  });
});

test("nothing caught in 10 rod-hours still leaves 0.369 fish a rod-hour open (3.689 / 10)", () => {
  expect(catchRate({ fish: 0, rodHours: 10 })).toMatchObject({ mean: 0, low: 0 });
  expect(catchRate({ fish: 0, rodHours: 10 })?.high).toBeCloseTo(0.36889, 5);
  expect(catchRate({ fish: 0, rodHours: 0 })).toBeNull();
});

describe("rod-hours of a row of catches", () => {
  const row = (pattern: string, fish: number, rodHours?: number) => ({
    pattern,
    fish,
    ...(rodHours === undefined ? {} : { rodHours }),
  });
  const hoursOf = (...[seen]: [Parameters<typeof reportOf>[2]]) =>
    catchesWithHours(reportOf("alder", "2026-05-01", seen)).map(({ rodHours }) => rodHours);

  test("what the visit leaves is shared by the rows that do not say", () => {
    const catches = [row("a", 2, 4), row("b", 0), row("c", 1)];
    expect(hoursOf({ rods: 2, hours: 5, catches })).toEqual([4, 3, 3]);
  });

  test("nobody knows them without rods and hours, or when nothing is left", () => {
    expect(hoursOf({ catches: [row("a", 2, 4), row("b", 1)] })).toEqual([4, undefined]);
    expect(hoursOf({ rods: 1, hours: 4, catches: [row("a", 2, 4), row("b", 1)] })).toEqual([4, undefined]);
  });

  test("a row of no fish is an outing; a row without hours is none", () => {
    const outings = outingsOf([visit("alder", { catches: [row("a", 0, 4), row("b", 3)] })]);
    expect(outings).toEqual([{ lake: "alder", phase: "ice-off", pattern: "a", fish: 0, rodHours: 4 }]);
  });

  test("a visit without rows says nothing of its catch; one with rows counts its whole time", () => {
    const tally = (seen: Parameters<typeof reportOf>[2]) => visitTally(reportOf("alder", "2026-05-01", seen));
    expect(tally({ rods: 2, hours: 5 })).toBeNull();
    expect(tally({ rods: 2, hours: 5, catches: [row("a", 3, 4)] })).toEqual({ fish: 3, rodHours: 10 });
    expect(tally({ catches: [row("a", 3, 4), row("b", 2)] })).toBeNull();
    expect(tally({ catches: [row("a", 3, 4), row("b", 0, 2)] })).toEqual({ fish: 3, rodHours: 6 });
  });
});

test("a lake's rates: this season, all seasons, and phase by phase without the visits of no known phase", () => {
  const catches = (fish: number) => [{ pattern: "a", fish, rodHours: 4 }];
  const rates = lakeCatches(
    [
      visit("alder", { catches: catches(2) }),
      visit("alder", { catches: catches(0) }, "turnover"),
      visit("alder", { catches: catches(4), notes: "last year" }, null),
    ],
    ({ notes }) => notes === undefined,
  );
  expect(rates.season).toMatchObject({ fish: 2, rodHours: 8, mean: 0.25 });
  expect(rates.all).toMatchObject({ fish: 6, rodHours: 12, mean: 0.5 });
  expect(rates.phases.map(({ phase, rate }) => [phase, rate.fish, rate.rodHours])).toEqual([
    ["ice-off", 2, 4],
    ["turnover", 0, 4],
  ]);
});
