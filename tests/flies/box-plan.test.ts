import { describe, expect, test } from "vitest";
import { boxPlan } from "../../build/flies/box-plan.ts";
import { apportion, fishedShares, lossesOf, poissonQuantile } from "../../build/flies/box-plan-demand.ts";
import { divide } from "../../build/flies/box-plan-tying.ts";
import { CHI_SQUARE_LOWER_TENTH, CHI_SQUARE_WITHIN, POISSON_NINE_IN_TEN } from "../reference/chi-square.ts";
import { lake, pattern, trip } from "./box-plan-fixture.ts";

const carried = (plan: ReturnType<typeof boxPlan>, slug: string): number =>
  plan.rows.filter((row) => row.pattern === slug).reduce((sum, { carry }) => sum + carry, 0);

describe("losses that nine trips in ten stay within", () => {
  test.each(CHI_SQUARE_LOWER_TENTH)(
    "step where NIST's chi-square table with $freedom degrees of freedom says",
    ({ freedom, point }) => {
      const k = freedom / 2 - 1;
      expect(poissonQuantile((point - CHI_SQUARE_WITHIN) / 2, 0.9)).toBe(k);
      expect(poissonQuantile((point + CHI_SQUARE_WITHIN) / 2, 0.9)).toBe(k + 1);
    },
  );

  test.each(POISSON_NINE_IN_TEN)("of a mean of $mean are $count, by scipy", ({ mean, count }) => {
    expect(poissonQuantile(mean, 0.9)).toBe(count);
  });

  test("a trip that loses none wants none; more than can be counted is refused", () => {
    expect(poissonQuantile(0, 0.9)).toBe(0);
    expect(() => poissonQuantile(1e9, 0.9)).toThrow(RangeError);
  });

  test("are about rods × days × flies a rod a day, three where the trip does not say (common practice, no source)", () => {
    expect(lossesOf(4, 3, 2).expected).toBe(24);
    expect(lossesOf(4, 3).expected).toBe(36);
  });
});

describe("which lake is fished (common practice, no source)", () => {
  test("the first as often as it is good, the fallback otherwise", () => {
    expect(fishedShares([0.75, 0.1])).toEqual([0.75, 0.25]);
    expect(fishedShares([0.2])).toEqual([1]);
  });

  test("others share a tenth of what the first leaves; a day is one day", () => {
    const shares = fishedShares([0.5, 0.9, 0.9, 0.9]);
    expect(shares.map((share) => Number(share.toFixed(9)))).toEqual([0.5, 0.45, 0.025, 0.025]);
  });
});

describe("largest remainder", () => {
  // Worked by hand: quotas of 7 by 5 : 3 : 2 are 3.5, 2.1, 1.4; floors sum to 6, and the largest remainder is .5.
  test("gives what is left to the largest remainders", () => {
    expect(apportion(7, [5, 3, 2])).toEqual([4, 2, 1]);
  });
});

describe("sizes and colours", () => {
  const rowsOf = (change: Parameters<typeof pattern>[1], carry: number) =>
    divide(pattern("pupa", change), carry).map(({ size, colour, carry: flies }) => [size, colour, flies]);

  test("those in stock go first, whatever their size", () => {
    const stock = [
      { size: 14, colour: "black", count: 0 },
      { size: 16, colour: "olive", count: 5 },
    ];
    expect(rowsOf({ stock }, 3)).toEqual([[16, "olive", 3]]);
  });

  test("with none in stock the middle size goes first, in the colour that is named first", () => {
    expect(rowsOf({}, 2)).toEqual([[14, "black", 2]]);
    expect(rowsOf({}, 4)).toEqual([
      [14, "black", 2],
      [14, "olive", 2],
    ]);
  });

  test("nothing is tied while the pattern has flies in stock", () => {
    const stock = [
      { size: 12, colour: "black", count: 1 },
      { size: 14, colour: "black", count: 4 },
    ];
    expect(rowsOf({ stock }, 5)).toEqual([
      [12, "black", 1],
      [14, "black", 4],
    ]);
  });

  test("a pattern without colours has rows by size alone", () => {
    expect(rowsOf({ colours: [] }, 2)).toEqual([[14, null, 2]]);
  });
});

describe("a box", () => {
  const pick = lake("Pick", { postTurnover: 0.8, laterWeeks: 0.2 }, { "post-turnover": ["pupa", "leech"] });
  const fallback = lake(
    "Fallback",
    { iceOff: 0.9, turnover: 0.1 },
    { "ice-off": ["scud"], turnover: ["blob"] },
  );
  const patterns = ["pupa", "leech", "scud", "blob"].map((slug) => pattern(slug));

  // By hand: weights of the lists are .8 × .8, .2 × .9, .2 × .1; of .84 in all. 4 rods × 2 days: the turnover list is
  // fished 8 × .02 / .84 = .19 rod-days, the scud 1.71, the pupa two thirds of 6.10, the leech one third.
  test("shares the losses by how much each pattern is fished, and adds the spares", () => {
    const plan = boxPlan(trip(2, 4, [pick, fallback], 5), patterns);
    const { count: covered } = { count: poissonQuantile(40, 0.9) };
    const share = (use: number): number => (covered * use) / 8;
    for (const [slug, use, spares] of [
      ["pupa", (8 * 0.64 * 2) / 3 / 0.84, 4],
      ["leech", (8 * 0.64) / 3 / 0.84, 2],
      ["scud", (8 * 0.18) / 0.84, 4],
      ["blob", (8 * 0.02) / 0.84, 4],
    ] as const)
      expect(Math.abs(carried(plan, slug) - spares - share(use)), slug).toBeLessThan(1);
    expect(plan.losses).toMatchObject({ expected: 40, planned: covered + 14 });
  });

  test("the phase fished most is on top, its first choice first; rows are numbered from 1", () => {
    const { rows } = boxPlan(trip(2, 4, [pick, fallback]), patterns);
    expect([...new Set(rows.map((row) => row.pattern))]).toEqual(["pupa", "leech", "scud", "blob"]);
    expect(rows.map(({ row }) => row)).toEqual(rows.map((_, i) => i + 1));
    expect(rows[0]?.why).toBe("First choice at Pick, best weeks");
  });

  test("a pattern that one rod would fish for less than an hour stays at home", () => {
    const rare = lake(
      "Fallback",
      { iceOff: 0.995, turnover: 0.005 },
      { "ice-off": ["scud"], turnover: ["blob"] },
    );
    const plan = boxPlan(trip(2, 4, [pick, rare]), patterns);
    expect([carried(plan, "scud") > 0, carried(plan, "blob")]).toEqual([true, 0]);
  });

  test("of lakes under ice, or without lists, it is empty and says so", () => {
    const iced = lake("Iced", { iced: 1 }, { "ice-off": ["scud"] });
    const listless = lake("Listless", { iceOff: 1 }, {});
    for (const lakes of [[iced], [listless], [iced, listless]]) {
      const plan = boxPlan(trip(2, 4, lakes), patterns);
      expect([plan.rows, plan.tying, plan.materials, plan.losses.planned]).toEqual([[], [], [], 0]);
      expect(plan.losses.words).toContain("nothing is reckoned");
    }
  });
});

describe("what to tie and from what", () => {
  const lakes = [lake("Pick", { iceOff: 1 }, { "ice-off": ["scud", "leech"] })];
  const planOf = (scud: Parameters<typeof pattern>[1], leech: Parameters<typeof pattern>[1]) =>
    boxPlan(trip(1, 1, lakes), [pattern("scud", scud), pattern("leech", leech)]);

  test("identical materials of two patterns are one, whatever their capitals and spaces; hooks stay apart by size", () => {
    const { rows, tying, materials } = planOf(
      {
        sizes: [12],
        colours: [],
        dressing: [
          { part: "Hook", material: "curved  hook" },
          { part: "body", material: "Pale grey dubbing" },
          { part: "head", material: "pale grey dubbing" },
        ],
      },
      {
        sizes: [10],
        colours: [],
        dressing: [
          { part: "hook", material: "Curved hook" },
          { part: "body", material: " pale  grey dubbing " },
        ],
      },
    );
    const [scud = 0, leech = 0] = rows.map(({ tie }) => tie);
    expect(scud).toBeGreaterThan(0);
    expect(materials.map(({ text }) => text)).toEqual([
      `Curved hook, size 10: ${leech}`,
      `curved hook, size 12: ${scud}`,
      `Pale grey dubbing: ${scud + leech} flies`,
    ]);
    expect(tying.map(({ name, flies }) => [name, flies])).toEqual([
      ["scud", [{ size: 12, colour: null, count: scud }]],
      ["leech", [{ size: 10, colour: null, count: leech }]],
    ]);
  });

  test("a dressing that names no hook still wants one", () => {
    const { materials } = planOf(
      { stock: [{ size: 14, colour: "black", count: 99 }] },
      { sizes: [8], colours: [], stock: [{ size: 8, colour: "black", count: 99 }], dressing: [] },
    );
    expect(materials).toEqual([]);
    const short = planOf(
      { stock: [{ size: 14, colour: "black", count: 99 }] },
      { sizes: [8], colours: [], dressing: [{ part: "tail", material: "marabou" }] },
    );
    expect(short.materials.map(({ material }) => material)).toEqual(["hook for leech", "marabou"]);
  });
});
