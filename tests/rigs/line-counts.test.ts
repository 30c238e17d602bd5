import { describe, expect, test } from "vitest";
import { lineCount, slowestInTime } from "../../build/rigs/tables/line-counts.ts";
import { FT, where } from "./box-fixture.ts";

const IN = 0.0254;
const sinking = { name: "S", kind: "sinking", sinkRate_mps: 3 * IN, where } as const;
const tip = { name: "T", kind: "sink tip", sinkRate_mps: 3 * IN, where } as const;

describe("counts, by hand: 3 in/s is 1 ft in 4 s", () => {
  test.each([
    [9, { seconds: 36, long: false }],
    [15, { seconds: 60, long: false }],
    [18, { seconds: 72, long: true }],
    [22.5, { seconds: 90, long: true }],
    [23, { seconds: null, reason: "too slow" }],
  ])("%d ft", (ft, count) => expect(lineCount(sinking, ft * FT, 60)).toEqual(count));
});

describe("a line without a count says why", () => {
  test("a tip of unknown length", () =>
    expect(lineCount(tip, FT, 60)).toEqual({ seconds: null, reason: "no tip length" }));
  test("a tip shorter than the depth", () =>
    expect(lineCount({ ...tip, tip_m: 15 * FT }, 18 * FT, 60)).toEqual({
      seconds: null,
      reason: "too short a tip",
    }));
  test("a floating line", () =>
    expect(lineCount({ name: "F", kind: "floating", where }, FT, 60)).toEqual({
      seconds: null,
      reason: "floats",
    }));
  test("a sinking line nobody has timed", () =>
    expect(lineCount({ name: "F", kind: "sinking", where }, FT, 60)).toEqual({
      seconds: null,
      reason: "no rate",
    }));
});

test("the slowest in time is taken, whatever the order", () => {
  const fast = { ...sinking, name: "Fast", sinkRate_mps: 6 * IN };
  expect(slowestInTime([fast, sinking], 9 * FT, 60)?.name).toBe("S");
  expect(slowestInTime([fast, sinking], 20 * FT, 60)?.name).toBe("Fast");
});
