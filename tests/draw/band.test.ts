import { describe, expect, test } from "vitest";
import { type Band, tallestBoxInBand } from "../../build/draw/hatching.ts";

describe("room for a word", () => {
  /** A ramp from (0, 50) up to (50, 0), then level to 80, over a floor at 50. */
  const band: Band = { xs: [0, 50, 80], upper: [50, 0, 0], lower: [50, 50, 50] };

  test("the roomiest box stands where the band is highest over its whole width", () => {
    const box = tallestBoxInBand(band, 20, -10);
    expect(box?.height).toBe(50);
    expect(box?.x).toBeGreaterThanOrEqual(60);
    expect(box?.x).toBeLessThanOrEqual(70);
  });

  test("it keeps clear of a place: on the ramp, 20 wide and ending 4 before 70, its left end is at 46", () => {
    expect(tallestBoxInBand(band, 20, 70)).toEqual({ x: 56, y: 27, height: 46 });
  });

  test("there is none in a narrower band", () => {
    expect(tallestBoxInBand(band, 90, -10)).toBeUndefined();
  });
});
