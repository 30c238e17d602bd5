import { describe, expect, test } from "vitest";
import { fitPastSeasons } from "../../build/season/fit/fit-past-seasons.ts";
import { intervalMoment, truncatedNormal } from "../../build/season/fit/interval-moments.ts";

describe("truncatedNormal", () => {
  test("half of a standard normal has mean sqrt(2 / pi) and variance 1 - 2 / pi (half-normal distribution)", () => {
    const half = truncatedNormal(0, 1, 0, Number.POSITIVE_INFINITY);
    expect(half.mean).toBeCloseTo(Math.sqrt(2 / Math.PI), 3);
    expect(half.variance).toBeCloseTo(1 - 2 / Math.PI, 3);
  });

  test("far in the tail it is an exponential: mean excess 1 / z (Mills ratio)", () => {
    const tail = truncatedNormal(0, 1, 30, Number.POSITIVE_INFINITY);
    expect((tail.mean - 30) * 30).toBeCloseTo(1, 1);
    expect(tail.variance).toBeGreaterThan(0);
  });

  test("a narrow interval is a uniform: variance of width squared over 12", () => {
    const narrow = truncatedNormal(3, 100, 4, 5);
    expect(narrow.mean).toBeCloseTo(4.5, 2);
    expect(narrow.variance).toBeCloseTo(1 / 12, 3);
  });
});

test("an interval that holds everything says nothing", () => {
  expect(intervalMoment(110, 9, Number.NEGATIVE_INFINITY, 300).variance).toBe(Number.POSITIVE_INFINITY);
});

test("joined to what was expected, an interval's sight gives the truncated mean and variance", () => {
  const [mean, variance] = [110, 36];
  const sight = intervalMoment(mean, variance, 112, 119);
  const precision = 1 / variance + 1 / sight.variance;
  const kept = truncatedNormal(mean, variance, 112, 119);
  expect((mean / variance + sight.value / sight.variance) / precision).toBeCloseTo(kept.mean, 9);
  expect(1 / precision).toBeCloseTo(kept.variance, 9);
});

describe("intervals in the fit", () => {
  const days = [108, 99, 95, 113, 104, 101];
  const fitOf = (unsure: { from: number; to: number }[]) =>
    fitPastSeasons({
      regions: [0, 0],
      covariates: [],
      seasons: days.length,
      records: days.flatMap((day, season) => [
        { lake: 0, season, from: day, to: day },
        { lake: 1, season, ...(unsure[season] ?? { from: day + 9, to: day + 9 }) },
      ]),
      levelWithoutRecords: { day: 110, sd: 25 },
    });
  const exact = fitOf([]);

  test("an interval about the day gives nearly what the day gives, and a little more doubt", () => {
    const about = fitOf(days.map((day) => ({ from: day + 7.5, to: day + 10.5 })));
    expect(about.m[1]).toBeCloseTo(exact.m[1] ?? 0, 0);
    expect(about.v[1]).toBeGreaterThan(exact.v[1] ?? 0);
  });

  test("an interval that only ends moves the lake no later, and one that only begins no earlier", () => {
    const early = fitOf([{ from: Number.NEGATIVE_INFINITY, to: 108 + 3.5 }]);
    const late = fitOf([{ from: 108 + 14.5, to: Number.POSITIVE_INFINITY }]);
    expect(early.m[1]).toBeLessThan(exact.m[1] ?? 0);
    expect(late.m[1]).toBeGreaterThan(exact.m[1] ?? 0);
  });
});
