import { describe, expect, test } from "vitest";
import { hungRig, leaderLine, shotAboveFly_m } from "../../build/rigs/leaders/leader-line.ts";
import { NO_BODY } from "../../build/rigs/physics/hanging-line.ts";
import { box, FT, leader } from "./box-fixture.ts";

const usual = leader("Long", [12, 3], [6, 4], [3, 5]);

describe("leaderLine, the usual long leader set at 15 ft, by hand", () => {
  const [tippet, middle, taper] = leaderLine(usual, 15 * FT);
  test("3 ft of 5X, 6 ft of 4X and 6 ft of the taper, from the fly up", () => {
    for (const [segment, feet] of [
      [tippet, 3],
      [middle, 6],
      [taper, 6],
    ] as const)
      expect(segment?.length_m).toBeCloseTo(feet * FT, 9);
  });
  test("tippet and middle are level, 0.006 and 0.007 in", () => {
    for (const [segment, inch] of [
      [tippet, 0.006],
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

test("the whole set hangs, whatever its length, shot 18 in above the fly or at a shorter tippet's top", () => {
  const shot = { ...NO_BODY, weight_N: 1 };
  for (const set_m of [0.3, 1, 2.5, 3.3])
    for (const one of box.leaders) {
      const { segments } = hungRig(one, set_m, NO_BODY, shot);
      expect(segments.reduce((sum, { length_m }) => sum + length_m, 0)).toBeCloseTo(set_m, 9);
      const at = segments.findIndex(({ top }) => top === shot);
      const shotAt_m = segments.slice(0, at + 1).reduce((sum, { length_m }) => sum + length_m, 0);
      expect(shotAt_m).toBeCloseTo(Math.min(18 * 0.0254, set_m), 9);
    }
  expect(shotAboveFly_m(leader("Short", [9, 3], [1, 4], [1, 5]))).toBeCloseTo(FT, 9);
});
