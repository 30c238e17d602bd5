import { describe, expect, test } from "vitest";
import {
  bridgingSizes,
  isTippetSize,
  suggestedTippet,
  TIPPET_SIZES,
  tippetDiameter_mm,
  tippetSizeText,
  WIDEST_STEP,
} from "../../build/rigs/leaders/tippet.ts";
import { PRINTED_TIPPET_TABLE, TIPPET_TABLE } from "../reference/leaders.ts";
import { expectWithin } from "./near.ts";

for (const { citation, rows, tolerance_mm } of [TIPPET_TABLE, PRINTED_TIPPET_TABLE])
  describe(`tippetDiameter_mm: ${citation}`, () => {
    for (const { size, diameter_mm } of rows)
      test(`${size}X is ${diameter_mm} mm`, () =>
        expectWithin(tippetDiameter_mm(size), diameter_mm, tolerance_mm));
  });

test.each([-1, 8.5, 4.25, Number.NaN])("%d X is no size", (size) => {
  expect(isTippetSize(size)).toBe(false);
  expect(() => tippetDiameter_mm(size)).toThrow(RangeError);
});

test("half sizes are written with their half", () => expect(tippetSizeText(4.5)).toBe("4.5X"));

test("3X to 6X is bridged by 4.5X, 3X to 5X needs nothing", () => {
  expect(bridgingSizes(3, 6)).toEqual([4.5]);
  expect(bridgingSizes(3, 5)).toEqual([]);
});

test("between any two sizes the bridges are few enough and close enough", () => {
  for (const upper of TIPPET_SIZES)
    for (const lower of TIPPET_SIZES.filter((size) => size >= upper)) {
      const chain = [upper, ...bridgingSizes(upper, lower), lower];
      const steps = chain.slice(1).map((size, i) => size - (chain[i] ?? Number.NaN));
      expect(Math.max(...steps), chain.join()).toBeLessThanOrEqual(WIDEST_STEP);
      expect(chain.every((size) => isTippetSize(size))).toBe(true);
      // Fewest: one bridge fewer could not span it even in steps of the widest.
      expect((chain.length - 2) * WIDEST_STEP, chain.join()).toBeLessThan(Math.max(lower - upper, 0.5));
    }
});

describe("suggestedTippet: a third of the hook's number, common practice, no source", () => {
  test.each([
    [12, undefined, 4],
    [16, undefined, 5],
    [12, 5, 5],
    [12, 1, 3],
    [6, 1, 2],
    [24, 6, 6],
  ])("hook %d in water of %s m gets %dX", (hook, clarity_m, size) =>
    expect(suggestedTippet(hook, clarity_m)).toBe(size),
  );
});
