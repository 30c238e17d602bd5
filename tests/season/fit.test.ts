import { describe, expect, test } from "vitest";
import type { PastRecord } from "../../build/season/fit/fit-input.ts";
import { type Fit, fitPastSeasons } from "../../build/season/fit/fit-past-seasons.ts";
import { seeded } from "../seeded-random.ts";
import { normal } from "./draws.ts";

interface Drawn {
  readonly m: readonly number[];
  readonly records: readonly PastRecord[];
}

/** Lakes, springs and errors drawn as the model says, without slopes. */
function drawn(lakes: number, seasons: number, random: () => number): Drawn {
  const springs = Array.from({ length: seasons }, () => 8 * normal(random));
  const m = Array.from({ length: lakes }, () => 115 + 7 * normal(random));
  return {
    m,
    records: m.flatMap((middle, lake) =>
      springs.map((spring, season) => {
        const day = Math.round(middle + spring + 2 * normal(random));
        return { lake, season, from: day, to: day };
      }),
    ),
  };
}

const fitOf = ({ m, records }: Drawn, seasons: number): Fit =>
  fitPastSeasons({
    regions: m.map(() => 0),
    covariates: [],
    seasons,
    records,
    levelWithoutRecords: { day: 110, sd: 25 },
  });

const spreadOf = (values: ArrayLike<number>): number => {
  const all = Array.from(values);
  const mean = all.reduce((sum, value) => sum + value, 0) / all.length;
  return Math.sqrt(all.reduce((sum, value) => sum + (value - mean) ** 2, 0) / all.length);
};

describe("a fit to drawn springs", () => {
  test.each([
    [8, 30],
    [40, 12],
    [400, 4],
    [600, 1],
  ])("%d lakes over %d seasons: the lakes keep their distances", (lakes, seasons) => {
    const truth = drawn(lakes, seasons, seeded(17));
    const fit = fitOf(truth, seasons);
    // a lake's mean of so many seasons is off by 2 / sqrt(seasons) days, before it is drawn to the others and its slope is doubted
    expect(spreadOf(fit.m.map((value, lake) => value - (truth.m[lake] ?? 0)))).toBeLessThan(
      1.4 * (2 / Math.sqrt(seasons)),
    );
    expect(Math.abs(spreadOf(fit.m) / spreadOf(truth.m) - 1)).toBeLessThan(0.12);
  });

  test("finds the spread of springs and of errors that was drawn", () => {
    const fit = fitOf(drawn(12, 60, seeded(23)), 60);
    expect(Math.abs(Math.sqrt(fit.omega.ss) / 8 - 1)).toBeLessThan(0.25);
    // a t scale of 4 degrees of freedom lies a little under the standard deviation of normal errors
    const sigma = fit.sigma.reduce((sum, value) => sum + value, 0) / fit.sigma.length;
    expect(sigma).toBeGreaterThan(1.4);
    expect(sigma).toBeLessThan(2.1);
  });
});
