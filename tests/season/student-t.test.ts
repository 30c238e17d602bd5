import { expect, test } from "vitest";
import { t4Cdf, t4PartialMean } from "../../build/season/student-t.ts";
import { T4_QUANTILE } from "../reference/season-statistics.ts";

/** Density of a t with 4 degrees of freedom. Any statistics text. */
const density = (z: number): number => (3 / 8) * (1 + (z * z) / 4) ** -2.5;

test("t4Cdf: 97.5 % quantile, scipy", () => {
  expect(Math.abs(t4Cdf(T4_QUANTILE.z) - T4_QUANTILE.p)).toBeLessThan(1e-7);
  expect(Math.abs(t4Cdf(-T4_QUANTILE.z) - (1 - T4_QUANTILE.p))).toBeLessThan(1e-7);
});

test("t4Cdf keeps its polynomial tail: far out the chance falls with the fourth power", () => {
  expect(t4Cdf(-2000) / t4Cdf(-1000)).toBeCloseTo(1 / 16, 3);
});

test.each([-3, -0.7, 0, 1.2, 5])("t4PartialMean is the integral of z times the density up to %d", (z) => {
  const step = 1e-3;
  let sum = 0;
  for (let u = -400; u < z - step / 2; u += step) sum += (u + step / 2) * density(u + step / 2) * step;
  // what lies below -400 is -(1 + 400^2 / 4)^(-3/2) / 2, about -6e-8
  expect(Math.abs(t4PartialMean(z) - sum)).toBeLessThan(1e-5);
});
