import { expect, test } from "vitest";
import { power } from "../../build/model/power.ts";

test.each([
  [2, 10, 1024],
  [10, -2, 0.01],
  [7, 0, 1],
  [-3, 3, -27],
  [0, 0.5, 0],
])("%d to the power of %d is %d", (base, exponent, expected) => {
  expect(power(base, exponent)).toBe(expected);
});

test("fractions agree with the engine's own power to its last digits", () => {
  for (const base of [1e-6, 0.3, 1, 2.5, 4e5])
    for (const exponent of [-3.3, -0.5, 0.687, 1 / 3, 1.5, 7.25])
      expect(power(base, exponent) / base ** exponent).toBeCloseTo(1, 12);
});
