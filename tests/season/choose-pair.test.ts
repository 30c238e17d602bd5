import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { addDays, dateOfSeasonDay, daysFromTo } from "../../build/model/calendar.ts";
import { choosePair, type LakeInReach, POOL } from "../../build/season/choose-pair.ts";
import { scaleOf } from "../../build/season/lake-distribution.ts";
import { hemisphereOfLakes } from "../../build/season/records.ts";
import { clubSeason } from "../../build/season/region-season.ts";
import { forecastSeason } from "../../build/season/season.ts";
import { seeded } from "../seeded-random.ts";
import { clubOf, day, FOUR_LAKES, SEASON } from "./club.ts";
import { goodGivenIceOff, placeByWeight, studentT } from "./draws.ts";

const CLUB = clubOf("2026-03-01");
const forecast = forecastSeason(CLUB);
const reach = (slug: string, opens: string | null = null): LakeInReach => ({
  slug,
  opens: opens === null ? null : day(opens),
});
const ALL = FOUR_LAKES.map(({ slug }) => reach(slug));
const dayOf = (n: number) => dateOfSeasonDay(n, SEASON, "north");

const DRAWS = 40_000;

/** Springs drawn from the prior, all lakes sharing the season's point: each lake's chance of being good on a day, draw by draw. */
function drawnSprings(): ((slug: string, day: number) => number)[] {
  const [region] = clubSeason(CLUB, hemisphereOfLakes(CLUB.lakes)).regions;
  if (region === undefined) throw new Error("no region");
  const { grid, weights } = region.posterior;
  const points = grid.s.length;
  const random = seeded(11);
  const draw = placeByWeight(weights, random);
  const goodOf = new Map(region.lakes.map((lake) => [lake.lake.slug, goodGivenIceOff(lake)] as const));
  return Array.from({ length: DRAWS }, () => {
    const p = draw();
    const springs = new Map(
      region.lakes.map(({ lake, distribution: own }) => {
        const iceOff = Math.round(
          own.m +
            (grid.s[p % points] ?? 0) +
            own.x * (grid.k[p % points] ?? 0) +
            scaleOf(own, grid.scatter[Math.floor(p / points)] ?? 1) * studentT(random, 4),
        );
        return [lake.slug, iceOff] as const;
      }),
    );
    return (slug: string, on: number) => {
      const iceOff = springs.get(slug);
      return iceOff === undefined ? 0 : (goodOf.get(slug)?.(iceOff, on) ?? 0);
    };
  });
}

describe("the pair, against brute force: springs drawn from the prior, every pair counted", () => {
  const draws = drawnSprings();
  /** Share of days and draws on which one of the lakes is good. */
  const counted = (slugs: readonly string[], days: readonly number[]): number =>
    draws.reduce(
      (sum, good) =>
        days.reduce((all, on) => all + 1 - slugs.reduce((none, slug) => none * (1 - good(slug, on)), 1), sum),
      0,
    ) /
    (DRAWS * days.length);
  const slugs = ALL.map(({ slug }) => slug);
  const pairs = slugs.flatMap((a, i) => slugs.slice(i + 1).map((b) => [a, b]));

  test.each([[[100]], [[112, 113]], [[120, 121, 122]], [[136]]])("days %j", (days) => {
    const { best } = choosePair(forecast, ALL, days.map(dayOf));
    if (best === null || best.fallback === null) throw new Error("no pair");
    const chosen = counted([best.pick.slug, best.fallback.slug], days);
    const noise = 4.5 * Math.sqrt((chosen * (1 - chosen)) / DRAWS) + 1e-3;
    expect(Math.abs(best.either - chosen)).toBeLessThan(noise);
    expect(Math.abs(best.pick.good - counted([best.pick.slug], days))).toBeLessThan(noise + 0.01);
    for (const pair of pairs) expect(counted(pair, days)).toBeLessThan(chosen + 2 * noise);
    expect(best.pick.good).toBeGreaterThanOrEqual(best.fallback.good);
  });
});

describe("all pairs are compared, not the best lake's alone", () => {
  // By hand: a and b are good in the same half of all springs, c and d each in one of two halves that exclude each other.
  const single = { a: 0.6, b: 0.55, c: 0.5, d: 0.5 } as Readonly<Record<string, number>>;
  const made = {
    good: (slug: string) => single[slug] ?? 0,
    anyGood: (slugs: readonly string[]) =>
      slugs.includes("c") && slugs.includes("d")
        ? 1
        : Math.max(...slugs.map((slug) => single[slug] ?? 0)) + (slugs.length > 1 ? 0.1 : 0),
  };
  const choice = choosePair(
    made,
    ["a", "b", "c", "d"].map((slug) => reach(slug)),
    [day("2026-05-16")],
  );

  test("the best pair need not hold the lake best alone", () => {
    expect([choice.best?.pick.slug, choice.best?.fallback?.slug]).toEqual(["c", "d"]);
    expect(choice.best?.either).toBe(1);
    expect(choice.alone?.slug).toBe("a");
    expect(choice.pairs).toBe(6);
  });

  test("among pairs with the same chance the one of the better lakes comes first", () => {
    expect([choice.next?.pick.slug, choice.next?.fallback?.slug]).toEqual(["a", "b"]);
  });
});

describe("properties", () => {
  const days = fc
    .tuple(fc.integer({ min: 85, max: 160 }), fc.integer({ min: 0, max: 3 }))
    .map(([from, more]) => daysFromTo(dayOf(from), addDays(dayOf(from), more)));
  const some = fc.subarray(ALL, { minLength: 1 });

  test("the pair is at least as likely as either of its lakes, and every chance is one", () => {
    fc.assert(
      fc.property(some, days, (lakes, when) => {
        const { best } = choosePair(forecast, lakes, when);
        if (best === null) throw new Error("no lake");
        expect(best.either).toBeGreaterThanOrEqual(best.pick.good - 1e-12);
        expect(best.pick.good).toBeGreaterThanOrEqual(best.fallback?.good ?? 0);
        expect(best.either).toBeLessThanOrEqual(1);
      }),
      { numRuns: 40 },
    );
  });

  test("another lake never lowers it", () => {
    fc.assert(
      fc.property(some, fc.constantFrom(...ALL), days, (lakes, more, when) => {
        const without = choosePair(forecast, lakes, when).best?.either ?? 0;
        const rest = lakes.filter(({ slug }) => slug !== more.slug);
        const withMore = choosePair(forecast, [...rest, more], when).best?.either ?? 0;
        expect(withMore).toBeGreaterThanOrEqual(without - 2e-9);
      }),
      { numRuns: 40 },
    );
  });
});

describe("roads", () => {
  const when = [dayOf(112), dayOf(113)];
  test("a lake whose road opens after the days is out", () => {
    const late = addDays(dayOf(113), 1);
    const { best, pairs } = choosePair(forecast, [reach("alder", late), reach("birch")], when);
    expect(best).toMatchObject({ pick: { slug: "birch" }, fallback: null });
    expect(pairs).toBe(0);
    expect(choosePair(forecast, [reach("alder", late)], when).best).toBeNull();
  });

  test("a day before the road opens counts as no chance", () => {
    const half = choosePair(forecast, [reach("alder", dayOf(113))], when).best;
    expect(half?.either).toBeCloseTo(forecast.good("alder", dayOf(113)) / 2, 12);
  });
});

test(`of very many lakes only the ${POOL} best alone are paired`, () => {
  const many = Array.from({ length: 60 }, (_, i) => reach(`lake-${i}`));
  const asked = new Set<string>();
  const made = {
    good: (slug: string) => Number(slug.slice(5)) / 60,
    anyGood: (slugs: readonly string[]) => {
      for (const slug of slugs) asked.add(slug);
      return Math.max(...slugs.map((slug) => Number(slug.slice(5)) / 60));
    },
  };
  const { pairs } = choosePair(made, many, [day("2026-05-16")]);
  expect(pairs).toBe((POOL * (POOL - 1)) / 2);
  expect(Math.min(...[...asked].map((slug) => Number(slug.slice(5))))).toBe(60 - POOL);
});
