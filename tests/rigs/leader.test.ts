import { describe, expect, test } from "vitest";
import { doubtfulSteps, leaderOf, servedRange } from "../../build/rigs/leaders/leader.ts";
import { leaderSchema } from "../../build/rigs/rig-schemas.ts";
import { FT, leader } from "./box-fixture.ts";

/** Common practice, no source: 12 ft to 3X, 6 ft of 4X, 3 ft of 5X. */
const usual = leader("Long", [12, 3], [6, 4], [3, 5], 2);

describe("the usual long leader", () => {
  const worked = leaderOf(usual, 0.15, "imperial");
  test("keeps its schema", () => expect(leaderSchema.parse(worked)).toEqual(worked));
  test("sums by hand: 21 ft in all, 9 ft knotted", () => {
    expect(worked.total_m).toBeCloseTo(21 * FT, 3);
    expect(worked.knotted_m).toBeCloseTo(9 * FT, 3);
  });
  test("serves knotted + margin to whole - margin", () => {
    expect(worked.serves?.from_m).toBeCloseTo(9 * FT + 0.15, 3);
    expect(worked.serves?.to_m).toBeCloseTo(21 * FT - 0.15, 3);
  });
  test("has no doubtful join", () => expect(worked.warnings).toEqual([]));
  test("its board says what it is made of and what it is for", () =>
    expect(worked.label).toEqual([
      "Long",
      "12 ft taper to 3X",
      "6 ft of 4X",
      "3 ft of 5X",
      "Sets 9.5–20.5 ft",
    ]));
  test("in metres too", () => expect(leaderOf(usual, 0.15, "metric").label.at(-1)).toBe("Sets 2.9–6.3 m"));
});

describe("doubtful joins", () => {
  test("3X to 6X is too big: 4.5X bridges it", () => {
    const [step, ...others] = doubtfulSteps(leader("Gap", [9, 3], [2, 6], [2, 7]));
    expect(others).toEqual([]);
    expect(step?.kind).toBe("too big");
    expect(step?.remedy).toContain("4.5X");
  });
  test("3X then 2X gets thicker", () =>
    expect(doubtfulSteps(leader("Odd", [9, 3], [2, 2], [2, 4])).map(({ kind }) => kind)).toEqual([
      "thicker",
    ]));
  test("two sizes finer, 0.002 in, is still good", () =>
    expect(doubtfulSteps(leader("Good", [9, 3], [2, 5], [2, 7]))).toEqual([]));
  test("a section of no length is no section", () =>
    expect(doubtfulSteps(leader("Two", [9, 3], [0, 8], [2, 5]))).toEqual([]));
});

test("a taper shorter than both margins serves nothing, and says so", () => {
  const stub = leader("Stub", [0.5, 3], [1, 4], [1, 5]);
  expect(servedRange(stub, 0.15)).toBeUndefined();
  const worked = leaderOf(stub, 0.15, "imperial");
  expect(worked.serves).toBeNull();
  expect(worked.label).toContain("Not for an indicator");
});
