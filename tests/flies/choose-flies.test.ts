import { describe, expect, test } from "vitest";
import { chooseFlies } from "../../build/flies/rank-flies.ts";
import type { Pattern } from "../../build/model/club.ts";
import { pattern } from "./fly-fixture.ts";

const order = (patterns: Pattern[], water?: "marl" | "tea") =>
  chooseFlies(patterns, "ice-off", ["indicator still", "floating line"], water).map(
    (fly) => fly.pattern.slug,
  );

describe("which flies, in which order (common practice, no source)", () => {
  test("with nothing to tell them apart the order is the club's own", () => {
    expect(order([pattern("b"), pattern("a"), pattern("c")])).toEqual(["b", "a", "c"]);
  });

  test("a fly of another phase, way or water is left out", () => {
    const others = [
      pattern("late", { phases: ["post-turnover"] }),
      pattern("trolled", { ways: ["trolled"] }),
      pattern("for-tea", { waters: ["tea"] }),
    ];
    expect(order(others, "marl")).toEqual([]);
  });

  test("scuds take the colour of their water: one tied for it comes first", () => {
    expect(order([pattern("any"), pattern("pale", { waters: ["marl"] })], "marl")).toEqual(["pale", "any"]);
  });

  test("the way to start with comes before the second way", () => {
    expect(order([pattern("cast", { ways: ["floating line"] }), pattern("hung")])).toEqual(["hung", "cast"]);
  });

  test("a fly that is in the box comes before one that is not", () => {
    expect(order([pattern("none", { stock: [] }), pattern("some")])).toEqual(["some", "none"]);
  });

  test("a rank the club wrote comes before everything its entries say", () => {
    const flies = [
      pattern("tied", { waters: ["marl"] }),
      pattern("second", { rank: 2, stock: [] }),
      pattern("first", { rank: 1, ways: ["floating line"] }),
    ];
    expect(order(flies, "marl")).toEqual(["first", "second", "tied"]);
  });
});
