import { describe, expect, test } from "vitest";
import { chooseFlies } from "../../build/flies/choose-flies.ts";
import type { Pattern } from "../../build/model/club.ts";

const pattern = (slug: string, over: Partial<Pattern> = {}): Pattern => ({
  slug,
  name: slug,
  imitates: "scud",
  sizes: [14],
  colours: ["olive"],
  phases: ["ice-off"],
  ways: ["indicator still"],
  waters: [],
  stock: [{ size: 14, colour: "olive", count: 3 }],
  dressing: [],
  ...over,
});
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

  test("each place says why", () => {
    const [fly] = chooseFlies(
      [pattern("pale", { waters: ["marl"] })],
      "ice-off",
      ["indicator still"],
      "marl",
    );
    expect(fly?.why).toBe("for scud, tied for pale marl water, 3 in the box");
  });
});
