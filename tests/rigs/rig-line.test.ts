import { describe, expect, test } from "vitest";
import { hungLine } from "../../build/rigs/leaders/leader-line.ts";
import { box, FT, leader } from "./box-fixture.ts";

const usual = leader("Long", [12, 3], [6, 4], [3, 5]);

describe("hungLine, the usual long leader set at 15 ft, by hand", () => {
  const { below, above } = hungLine(usual, 15 * FT);
  const [middle, taper] = above;
  test("3 ft of 5X below the ring, 6 ft of 4X and 6 ft of the taper above", () => {
    expect(below.map(({ length_m }) => length_m)).toEqual([3 * FT]);
    expect(middle?.length_m).toBeCloseTo(6 * FT, 9);
    expect(taper?.length_m).toBeCloseTo(6 * FT, 9);
    expect(above).toHaveLength(2);
  });
  test("tippet and middle are level, 0.006 and 0.007 in", () => {
    for (const [segment, inch] of [
      [below[0], 0.006],
      [middle, 0.007],
    ] as const) {
      expect(segment?.lowerDiameter_m).toBeCloseTo(inch * 0.0254, 9);
      expect(segment?.upperDiameter_m).toBeCloseTo(inch * 0.0254, 9);
    }
  });
  test("half of a 12 ft taper from 0.008 in is half way to its 0.021 in butt: 0.0145 in", () => {
    expect(taper?.lowerDiameter_m).toBeCloseTo(0.008 * 0.0254, 9);
    expect(taper?.upperDiameter_m).toBeCloseTo(0.0145 * 0.0254, 9);
  });
});

test("a set within the tippet hangs on tippet alone", () => {
  const { below, above } = hungLine(usual, 2 * FT);
  expect(below.map(({ length_m }) => length_m)).toEqual([2 * FT]);
  expect(above).toEqual([]);
});

test("the whole set hangs, whatever its length", () => {
  for (const set_m of [0.3, 1, 2.5, 3.3])
    for (const one of box.leaders) {
      const { below, above } = hungLine(one, set_m);
      expect([...below, ...above].reduce((sum, { length_m }) => sum + length_m, 0)).toBeCloseTo(set_m, 9);
    }
});
