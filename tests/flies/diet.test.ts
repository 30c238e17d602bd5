import { describe, expect, test } from "vitest";
import {
  dietDistribution,
  EVEN_SHARE,
  expectedShare,
  gatherDiet,
  weightOfFish,
} from "../../build/flies/diet.ts";
import { lakePhaseDiet, relativeImportance } from "../../build/flies/lake-diet.ts";
import { CONSTRUCTED_DIET } from "../reference/catch-and-diet.ts";
import { throat, visit } from "./fly-fixture.ts";

describe("Index of Relative Importance: exact arithmetic on the definition of Pinkas et al. 1971", () => {
  const { foods, fishWithFood, expected, sum, byImportance, lumped } = CONSTRUCTED_DIET;
  const rows = relativeImportance(foods, fishWithFood).map((row, i) => ({
    ...row,
    food: foods[i]?.food ?? "",
  }));

  test.each(expected)("$food", ({ food, N, V, F, iri, iriPct }) => {
    const row = rows.find((one) => one.food === food);
    expect(row?.numberPct).toBeCloseTo(N, 3);
    expect(row?.amountPct).toBeCloseTo(V, 3);
    expect(row?.frequencyPct).toBeCloseTo(F, 3);
    expect(row?.iri).toBeCloseTo(iri, 2);
    expect(row?.iriPct).toBeCloseTo(iriPct, 3);
  });

  test("the sum and the order", () => {
    expect(rows.reduce((all, { iri }) => all + iri, 0)).toBeCloseTo(sum, 2);
    expect(rows.toSorted((a, b) => b.iri - a.iri).map(({ food }) => food)).toEqual(byImportance);
  });

  test("two foods taken as one have an index of their own", () => {
    const [merged] = relativeImportance([lumped, ...foods.slice(2)], fishWithFood);
    expect(merged?.iri).toBeCloseTo(lumped.iri, 2);
  });

  test("empty fish in the denominator scale the index, not its share (25 instead of 20: 0.8)", () => {
    const [withEmpty] = relativeImportance(foods, 25);
    expect(withEmpty?.iri).toBeCloseTo(0.8 * (rows[0]?.iri ?? 0), 6);
    expect(withEmpty?.iriPct).toBeCloseTo(rows[0]?.iriPct ?? 0, 6);
  });
});

/** Variance of a beta-binomial share, summed over its probabilities: alpha = beta = 1/2 is concentration 1, p = 1/2. */
function varianceOfShare(items: number): number {
  // P(x of n) for alpha = beta = 1/2 is C(2x, x) C(2n - 2x, n - x) / 4^n (the arcsine law, Feller).
  const choose = (n: number, k: number): number =>
    Array.from({ length: k }, (_, i) => (n - i) / (i + 1)).reduce((product, factor) => product * factor, 1);
  return Array.from({ length: items + 1 }, (_, x) => {
    const chance = (choose(2 * x, x) * choose(2 * (items - x), items - x)) / 4 ** items;
    return chance * (x / items - 0.5) ** 2;
  }).reduce((sum, part) => sum + part, 0);
}

test.each([1, 2, 5, 40])(
  "%i items of one fish say as much as independent items of the same variance (arcsine law, summed)",
  (items) => {
    expect(weightOfFish(throat({ scud: items })).all).toBeCloseTo(0.25 / varianceOfShare(items), 9);
  },
);

test("two hundred daphnia in one fish do not drown ten fish with three scuds each", () => {
  const samples = [throat({ daphnia: 200 }), ...Array.from({ length: 10 }, () => throat({ scud: 3 }))];
  const diet = lakePhaseDiet("ice-off", gatherDiet([visit("alder", { samples })])("alder", "ice-off"));
  expect(diet?.foods.map(({ food }) => food)).toEqual(["scud", "daphnia"]);
});

describe("shares expected, worked by hand: 6 before the lake's own fish, 12 before the club's", () => {
  const own = { samples: [throat({ scud: 1 }), throat({ scud: 3, leech: 1 }), throat({})] };
  const gathered = gatherDiet([
    visit("alder", own),
    visit("birch", { samples: [throat({ leech: 1 }), throat({ leech: 1 })] }),
    visit("birch", { samples: [throat({ daphnia: 1 })] }, "turnover"),
    visit("birch", { samples: [throat({ daphnia: 1 })] }, null),
  ]);
  const share = (lake: string, food: "scud" | "leech" | "daphnia") =>
    expectedShare(dietDistribution(gathered(lake, "ice-off")), food);

  test("a lake with its own fish", () => {
    // One item weighs 1, four weigh 4 x 2 / 5 = 1.6: scud 1 + 1.2, leech 0.4. Elsewhere: 2 of leech.
    expect(share("alder", "scud")).toBeCloseTo((6 * (12 / 11 / 14) + 2.2) / 8.6, 12);
    expect(share("alder", "leech")).toBeCloseTo((6 * ((12 / 11 + 2) / 14) + 0.4) / 8.6, 12);
  });

  test("a lake without takes the other lakes' share; a phase without stays even", () => {
    expect(share("cedar", "scud")).toBeCloseTo((12 / 11 + 2.2) / 16.6, 12);
    expect(expectedShare(dietDistribution(gathered("cedar", "post-turnover")), "scud")).toBeCloseTo(
      EVEN_SHARE,
      12,
    );
  });

  test("evidence in words; empty throats counted and left out", () => {
    const diet = lakePhaseDiet("ice-off", gathered("alder", "ice-off"));
    expect(diet?.words).toBe("2 samples here, 2 at 1 other lake, 1 empty throat left out");
    expect(diet).toMatchObject({ fish: 2, empty: 1, otherFish: 2, otherLakes: 1, weighedFish: 0 });
    expect(diet?.foods[0]).toMatchObject({ food: "scud", fish: 2, seen: 0.8462, importance: null });
  });

  test("nothing is told where no fish was sampled", () => {
    expect(lakePhaseDiet("ice-off", gathered("cedar", "ice-off"))).toBeNull();
  });

  test("the span of a share holds what is expected, and narrows with fish", () => {
    const spanOf = (fish: number) => {
      const samples = Array.from({ length: fish }, (_, i) =>
        throat(i % 2 === 0 ? { scud: 9 } : { leech: 9 }),
      );
      const row = lakePhaseDiet("ice-off", gatherDiet([visit("alder", { samples })])("alder", "ice-off"))
        ?.foods[0];
      if (row === undefined) throw new Error("no food");
      expect(row.low).toBeLessThan(row.share);
      expect(row.high).toBeGreaterThan(row.share);
      return row.high - row.low;
    };
    expect(spanOf(20)).toBeLessThan(spanOf(4));
  });
});

test("importance by weight counts only the fish whose every food was weighed", () => {
  const weighed = [
    { food: "scud", count: 12, mass_g: 0.3 },
    { food: "leech", count: 1, mass_g: 0.1 },
  ] as const;
  const samples = [weighed, [{ food: "scud", count: 5 } as const], []];
  const diet = lakePhaseDiet("ice-off", gatherDiet([visit("alder", { samples })])("alder", "ice-off"));
  expect(diet?.weighedFish).toBe(1);
  // (12/13 + 3/4) x 100 = 167.31 per cent, in every fish: 16,730.77; leech (1/13 + 1/4) x 10,000 = 3,269.23.
  expect(diet?.foods.find(({ food }) => food === "scud")?.importance).toEqual({
    numberPct: 92.31,
    weightPct: 75,
    frequencyPct: 100,
    iri: 16_730.77,
    iriPct: 83.65,
  });
});
