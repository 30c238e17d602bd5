import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { outingsOf, type PhasedReport } from "../../build/flies/catch-rates.ts";
import { dietDistribution, gatherDiet } from "../../build/flies/diet.ts";
import { chooseFlies, dietFactor, gatherCatches, rankFlies, whyFly } from "../../build/flies/rank-flies.ts";
import { FOODS, type FoundFood, type Report, type ThroatSample } from "../../build/model/club.ts";
import { pattern, throat, visit } from "./fly-fixture.ts";

const FLIES = chooseFlies(
  [
    pattern("leech", { imitates: "leech" }),
    pattern("pupa", { imitates: "chironomid pupa" }),
    pattern("scud"),
    pattern("blob", { imitates: "nothing in particular" }),
    pattern("other-scud"),
  ],
  "ice-off",
  ["indicator still"],
  undefined,
);
const SLUGS = FLIES.map((fly) => fly.pattern.slug);

const evidenceOf = (reports: readonly PhasedReport[]) => ({
  dietAt: gatherDiet(reports),
  catchesAt: gatherCatches(outingsOf(reports)),
});
const ranked = (reports: readonly PhasedReport[], lake = "alder") =>
  rankFlies(FLIES, lake, "ice-off", evidenceOf(reports));
const order = (reports: readonly PhasedReport[], lake?: string) =>
  ranked(reports, lake).map((fly) => fly.pattern.slug);
const scoreOf = (reports: readonly PhasedReport[], slug: string): number =>
  ranked(reports).find((fly) => fly.pattern.slug === slug)?.score ?? Number.NaN;

/** Whole numbers of hours: the order of adding them makes no difference. */
const anyCatch = fc.record({
  pattern: fc.constantFrom(...SLUGS),
  fish: fc.nat(12),
  rodHours: fc.integer({ min: 1, max: 12 }),
});
const anyThroat: fc.Arbitrary<ThroatSample> = fc.array(
  fc.record({
    food: fc.constantFrom(...FOODS.filter((food): food is FoundFood => food !== "nothing in particular")),
    count: fc.integer({ min: 1, max: 300 }),
  }),
  { maxLength: 3 },
);
const anyVisit: fc.Arbitrary<PhasedReport> = fc
  .record({
    lake: fc.constantFrom("alder", "birch", "cedar"),
    phase: fc.constantFrom("ice-off" as const, "post-turnover" as const, null),
    catches: fc.array(anyCatch, { maxLength: 3 }),
    samples: fc.array(anyThroat, { maxLength: 4 }),
  })
  .map(({ lake, phase, catches, samples }) => visit(lake, { catches, samples }, phase));
const anyVisits = fc.array(anyVisit, { maxLength: 12 });
const aSlug = fc.constantFrom(...SLUGS);

/** Rounding in the last of the nine digits that a score keeps. */
const ROUNDING = 2e-9;

const caught = (slug: string, fish: number, rodHours: number, lake = "alder"): PhasedReport =>
  visit(lake, { catches: [{ pattern: slug, fish, rodHours }] });
const ate = (samples: readonly ThroatSample[], lake = "alder"): PhasedReport => visit(lake, { samples });

/** The first row of catches of the first visit, changed. */
const withCatch = (reports: readonly PhasedReport[], change: Partial<Report["catches"][number]>) =>
  reports.map((one, i) =>
    i > 0
      ? one
      : {
          ...one,
          report: {
            ...one.report,
            catches: one.report.catches.map((row, j) => (j > 0 ? row : { ...row, ...change })),
          },
        },
  );

describe("properties of the order", () => {
  test("with no reports it is the club's own", () => {
    expect(order([])).toEqual(SLUGS);
    expect(ranked([]).map(({ score }) => score)).toEqual([1, 0.9, 0.81, 0.729, 0.6561]);
  });

  test("what is eaten and caught goes up, what is fished in vain goes down", () => {
    expect(order([ate([throat({ scud: 9 }), throat({ scud: 9 })])]).slice(0, 2)).toEqual([
      "scud",
      "other-scud",
    ]);
    expect(order([caught("pupa", 6, 4)])[0]).toBe("pupa");
    expect(order([caught("leech", 0, 30)]).at(-1)).toBe("leech");
  });

  test("more scuds eaten never lower a scud, in score or place", () => {
    fc.assert(
      fc.property(anyVisits, anyThroat, fc.integer({ min: 1, max: 200 }), (others, sample, more) => {
        const before = [...others, ate([sample])];
        const after = [...others, ate([[...sample, { food: "scud", count: more }]])];
        expect(scoreOf(after, "scud")).toBeGreaterThanOrEqual(scoreOf(before, "scud") - ROUNDING);
        expect(order(after).indexOf("scud")).toBeLessThanOrEqual(order(before).indexOf("scud"));
      }),
    );
  });

  test("one more fish full of scuds never lowers a scud", () => {
    fc.assert(
      fc.property(anyVisits, fc.integer({ min: 1, max: 200 }), (others, scuds) => {
        const after = [...others, ate([throat({ scud: scuds })])];
        expect(scoreOf(after, "scud")).toBeGreaterThanOrEqual(scoreOf(others, "scud") - ROUNDING);
        expect(order(after).indexOf("scud")).toBeLessThanOrEqual(order(others).indexOf("scud"));
      }),
    );
  });

  test("more fish in the same hours never lower a pattern", () => {
    fc.assert(
      fc.property(
        anyVisits,
        aSlug,
        fc.nat(8),
        fc.integer({ min: 1, max: 9 }),
        (others, slug, fish, hours) => {
          const before = [caught(slug, fish, hours), ...others];
          const after = withCatch(before, { fish: fish + 1 });
          expect(scoreOf(after, slug)).toBeGreaterThan(scoreOf(before, slug));
          expect(order(after).indexOf(slug)).toBeLessThanOrEqual(order(before).indexOf(slug));
        },
      ),
    );
  });

  test("more hours without a fish never raise a pattern", () => {
    fc.assert(
      fc.property(anyVisits, aSlug, fc.integer({ min: 1, max: 30 }), (others, slug, hours) => {
        const after = [...others, caught(slug, 0, hours)];
        expect(scoreOf(after, slug)).toBeLessThan(scoreOf(others, slug));
        expect(order(after).indexOf(slug)).toBeGreaterThanOrEqual(order(others).indexOf(slug));
      }),
    );
  });

  test("the same first day of fishing moves a pattern less when it was on another lake", () => {
    fc.assert(
      fc.property(aSlug, fc.nat(12), fc.integer({ min: 1, max: 12 }), (slug, fish, hours) => {
        fc.pre(fish !== hours / 2); // as many as were to be expected
        const moved = (lake: string) =>
          Math.abs(scoreOf([caught(slug, fish, hours, lake)], slug) - scoreOf([], slug));
        expect(moved("birch")).toBeLessThan(moved("alder"));
        expect(moved("birch")).toBeGreaterThan(0);
      }),
    );
  });

  test("the same day more moves it less from another lake, also when both lakes have told the same before", () => {
    fc.assert(
      fc.property(fc.array(anyThroat, { minLength: 1, maxLength: 6 }), (samples) => {
        const before = [ate(samples, "alder"), ate(samples, "birch")];
        const after = (lake: string) => scoreOf([...before, ate([throat({ scud: 12 })], lake)], "scud");
        expect(after("birch") - scoreOf(before, "scud")).toBeLessThan(
          after("alder") - scoreOf(before, "scud"),
        );
      }),
    );
  });

  test("the order of the reports makes no difference", () => {
    fc.assert(
      fc.property(
        anyVisits.chain((visits) =>
          fc.tuple(fc.constant(visits), fc.shuffledSubarray(visits, { minLength: visits.length })),
        ),
        ([visits, shuffled]) => {
          const told = (reports: readonly PhasedReport[]) =>
            ranked(reports).map(({ pattern: { slug }, score, catches: { here, elsewhere } }) => ({
              slug,
              score,
              here,
              elsewhere,
            }));
          expect(told(shuffled)).toEqual(told(visits));
        },
      ),
    );
  });
});

describe("the rate against the other patterns, worked by hand", () => {
  const ratioOf = (reports: readonly PhasedReport[], slug = "scud", lake = "alder") =>
    gatherCatches(outingsOf(reports))(slug, lake, "ice-off").ratio;

  test("a first day here: 4 fish in 4 h where 0.5 an hour was to be expected: (3 + 4) / (3 + 2)", () => {
    expect(ratioOf([caught("scud", 4, 4)])).toBeCloseTo(7 / 5, 12);
  });

  test("the same day on another lake starts from (6 + 4) / (6 + 2)", () => {
    expect(ratioOf([caught("scud", 4, 4, "birch")])).toBeCloseTo(10 / 8, 12);
  });

  test("a fly is not praised for a good day: the others caught 10 in 10 h there", () => {
    // Club without it (10 x 0.5 + 10) / 20 = 0.75; the place (10 x 0.75 + 10) / 20 = 0.875; expected 3.5 in 4 h.
    expect(ratioOf([caught("leech", 10, 10), caught("scud", 4, 4)])).toBeCloseTo(7 / 6.5, 12);
  });

  test("a pattern nobody told of is as good as any", () => {
    expect(ratioOf([caught("leech", 10, 10)])).toBe(1);
  });
});

test("what fish eat: half of the takes ask for it; a fly for nothing in particular keeps 1", () => {
  const law = dietDistribution(gatherDiet([ate([throat({ scud: 1 })])])("alder", "ice-off"));
  // Share (6/11 + 1) / 7 = 17/77; a half and a half of 11 times that.
  expect(dietFactor(law, "scud")).toBeCloseTo(0.5 + (0.5 * 11 * 17) / 77, 12);
  expect(dietFactor(law, "leech")).toBeCloseTo(0.5 + (0.5 * 6) / 7, 12);
  expect(dietFactor(law, "nothing in particular")).toBe(1);
});

describe("each place says why", () => {
  const why = (slug: string, reports: readonly PhasedReport[], lake = "alder"): string => {
    const evidence = evidenceOf(reports);
    const fly = rankFlies(FLIES, lake, "ice-off", evidence).find((one) => one.pattern.slug === slug);
    return fly === undefined ? "" : whyFly(fly, evidence.dietAt(lake, "ice-off"));
  };

  test("with nothing told: the club's own entry", () => {
    expect(why("scud", [])).toBe("for scud; any water; 3 in the box");
    expect(why("blob", [])).toBe("imitates nothing in particular; any water; 3 in the box");
    const tied = chooseFlies(
      [pattern("pale", { waters: ["marl"], stock: [] })],
      "ice-off",
      ["indicator still"],
      "marl",
    );
    const [fly] = rankFlies(tied, "alder", "ice-off", evidenceOf([]));
    expect(fly && whyFly(fly, gatherDiet([])("alder", "ice-off"))).toBe(
      "for scud; tied for pale marl water; none in the box",
    );
  });

  test("with fish sampled and caught here", () => {
    const reports = [ate([throat({ scud: 3 }), throat({ leech: 3 })]), caught("scud", 11, 14)];
    expect(why("scud", reports)).toBe(
      "for scud: 50 % of what 2 fish here had eaten; 0.8 fish a rod-hour over 14 rod-hours; any water; 3 in the box",
    );
    expect(why("pupa", reports)).toBe("for chironomid pupa: none in 2 fish here; any water; 3 in the box");
  });

  test("with fish sampled and caught elsewhere only", () => {
    const reports = [ate([throat({ scud: 3 })], "birch"), caught("scud", 0, 6, "birch")];
    expect(why("scud", reports)).toBe(
      "for scud: 100 % of what 1 fish at 1 other lake had eaten; no fish in 6 rod-hours at other places or times; any water; 3 in the box",
    );
  });
});
