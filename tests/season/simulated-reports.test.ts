import { describe, expect, test } from "vitest";
import { REPORTING_MODES, simulatedLake, uniformOf } from "../../build/season/backtest/simulated-reports.ts";

test("the two drawn numbers that a prototype in another language gives for the same texts", () => {
  expect(uniformOf(2005, "sunapee-lake", "silent")).toBeCloseTo(0.644150812, 9);
  expect(uniformOf(1998, "trout-lake", "delay")).toBeCloseTo(0.126691729, 9);
});

const OPENED = 110;
const lakes = Array.from({ length: 2000 }, (_, i) => `lake-${i}`);
const simulated = (mode: (typeof REPORTING_MODES)[number]) =>
  lakes.map((slug) => simulatedLake(mode, 2020, slug, OPENED));

describe.each(REPORTING_MODES)("%s", (mode) => {
  test("no report says anything untrue, or anything of a later day", () => {
    for (const lake of simulated(mode))
      for (const today of [95, 105, 109, 110, 112, 118, 140])
        for (const { ice, day } of lake.knownBy(today)) {
          expect(day).toBeLessThanOrEqual(today);
          if (ice === "on") expect(day).toBeLessThan(OPENED);
          else expect(day).toBeGreaterThanOrEqual(OPENED);
        }
  });

  test("the opening is known from the day it is reported on, and not before", () => {
    for (const { reportedOpen, knownBy } of simulated(mode)) {
      const isKnown = (today: number): boolean => knownBy(today).some(({ ice }) => ice !== "on");
      if (reportedOpen === undefined) expect(knownBy(300)).toEqual([]);
      else expect([isKnown(reportedOpen - 1), isKnown(reportedOpen)]).toEqual([false, true]);
    }
  });
});

test("three lakes in ten are silent, where some are: binomial, within four standard deviations", () => {
  const silent = (mode: (typeof REPORTING_MODES)[number]): number =>
    simulated(mode).filter(({ reportedOpen }) => reportedOpen === undefined).length;
  expect([silent("perfect"), silent("offonly")]).toEqual([0, 0]);
  for (const mode of ["dates4", "delay4"] as const)
    expect(Math.abs(silent(mode) - 600)).toBeLessThan(4 * Math.sqrt(2000 * 0.3 * 0.7));
});

test("delays are whole days of an exponential with mean 4: geometric, mean 1 / (e^(1/4) - 1)", () => {
  const delays = simulated("offonly").map(({ reportedOpen }) => (reportedOpen ?? 0) - OPENED);
  const mean = delays.reduce((sum, days) => sum + days, 0) / delays.length;
  expect(Math.abs(mean - 1 / (Math.exp(1 / 4) - 1))).toBeLessThan((4 * 4) / Math.sqrt(2000));
});
