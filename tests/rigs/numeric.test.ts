import { expect, test } from "vitest";
import { findRoot, gaussLegendre } from "../../build/rigs/physics/numeric.ts";
import { expectWithin } from "./near.ts";

test("roots with closed forms: cube root of 2, pi, and one that a straight secant creeps to", () => {
  expectWithin(
    findRoot((x) => x ** 3 - 2, 0, 2, 1e-12),
    Math.cbrt(2),
    1e-11,
  );
  expectWithin(findRoot(Math.sin, 2, 4, 1e-12), Math.PI, 1e-11);
  expectWithin(
    findRoot((x) => x ** 9, -0.5, 1.5, 1e-9),
    0,
    0.05,
  );
  expectWithin(
    findRoot((x) => Math.exp(x) - 10, -20, 5, 1e-12),
    Math.log(10),
    1e-11,
  );
});

test("a root at either end is found, and no change of sign is an error", () => {
  expect(findRoot((x) => x, 0, 1, 1e-9)).toBe(0);
  expect(findRoot((x) => x - 1, 0, 1, 1e-9)).toBe(1);
  expect(() => findRoot((x) => x * x + 1, -1, 1, 1e-9)).toThrow(RangeError);
});

test("24 points integrate a polynomial of degree 47 exactly", () => {
  expectWithin(
    gaussLegendre((x) => x ** 47, 0, 1),
    1 / 48,
    1e-14,
  );
  expectWithin(
    gaussLegendre((x) => 3 * x * x, -1, 2),
    9,
    1e-13,
  );
});
