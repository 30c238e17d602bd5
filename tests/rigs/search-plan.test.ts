import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type SearchCell,
  type SearchPlace,
  type SearchRung,
  type SearchTimes,
  searchPlan,
  shareMinutes,
} from "../../build/rigs/search-plan.ts";
import { expectWithin } from "./near.ts";
import { WORKED_LAKE, WORKED_TIMES } from "./worked-lake.ts";

/** Marsaglia's xorshift of 32 bits: the same chances on every run. */
function seededChance(seed: number): () => number {
  let x = seed;
  return () => {
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    return (x >>> 0) / 2 ** 32;
  };
}

/**
 * Share of days on which a plan finds taking fish: each day they are at one cell, or with the rest of the chance at
 * none, and take there at `rate_h` an hour for each rod.
 */
function daysFound<Cell extends SearchCell>(
  places: readonly SearchPlace<Cell>[],
  plan: readonly SearchRung<Cell>[],
  rate_h: number,
  days: number,
  chance: () => number,
): number {
  const cells = places.flatMap((place) => place.cells);
  let sum = 0;
  const upTo = cells.map((cell) => {
    sum += cell.chance;
    return sum;
  });
  let found = 0;
  for (let day = 0; day < days; day++) {
    const drawn = chance();
    const taking = cells.find((_, i) => drawn < (upTo[i] ?? 0));
    const minutes = plan
      .filter(({ cell }) => cell === taking)
      .reduce((total, { from_min, to_min }) => total + to_min - from_min, 0);
    if (taking !== undefined && -Math.log(1 - chance()) < (rate_h * minutes) / 60) found++;
  }
  return found / days;
}

/** The same places and costs, every cell given the same minutes. */
function equalPlan(places: typeof WORKED_LAKE, times: SearchTimes) {
  const even = places.map((place) => ({
    ...place,
    cells: place.cells.map((cell) => ({ cell, chance: 0.1 })),
  }));
  return searchPlan(even, times).map(({ cell, ...rung }) => ({ ...rung, cell: cell.cell }));
}

describe("the search plan against equal minutes, the worked lake, 20,000 days", () => {
  const DAYS = 20_000;
  /** Four times the standard error of a share near a half. */
  const SLACK = 4 * Math.sqrt(0.25 / DAYS);
  // From the reference simulation, each to 0.004. Where takes are quick, equal minutes do as well or better.
  test.each([
    { rods: 2, rate_h: 2, plan: 0.737, equal: 0.706 },
    { rods: 1, rate_h: 2, plan: 0.533, equal: 0.466 },
    { rods: 2, rate_h: 0.7, plan: 0.417, equal: 0.375 },
    { rods: 2, rate_h: 6, plan: 0.887, equal: 0.888 },
    { rods: 1, rate_h: 0.7, plan: 0.256, equal: 0.2 },
    { rods: 1, rate_h: 6, plan: 0.774, equal: 0.802 },
  ])("$rods rods, $rate_h takes an hour", ({ rods, rate_h, plan, equal }) => {
    const times = { ...WORKED_TIMES, rods };
    const found = daysFound(WORKED_LAKE, searchPlan(WORKED_LAKE, times), rate_h, DAYS, seededChance(2024));
    const even = daysFound(WORKED_LAKE, equalPlan(WORKED_LAKE, times), rate_h, DAYS, seededChance(2024));
    expectWithin(found, plan, SLACK);
    expectWithin(even, equal, SLACK);
  });
  test.each([1, 2])("with %d rods and 2 takes an hour it finds fish on more days", (rods) => {
    const times = { ...WORKED_TIMES, rods };
    const found = daysFound(WORKED_LAKE, searchPlan(WORKED_LAKE, times), 2, DAYS, seededChance(7));
    const even = daysFound(WORKED_LAKE, equalPlan(WORKED_LAKE, times), 2, DAYS, seededChance(7));
    expect(found - even).toBeGreaterThan(SLACK);
  });
});

const FREE = { rods: 1, day_min: 100, change_min: 0, move_min: 0, least_min: 0 };
const minutesFor = (chances: readonly number[], times: SearchTimes = FREE): number[] =>
  shareMinutes([{ name: "a", cells: chances.map((chance) => ({ chance })) }], times).flatMap(({ cells }) =>
    cells.map(({ minutes }) => minutes),
  );

test("equal chances get equal minutes, four times the chance twice the minutes", () => {
  for (const minutes of minutesFor([0.2, 0.2])) expectWithin(minutes, 50, 1e-9);
  const [often = 0, seldom = 0] = minutesFor([0.4, 0.1]);
  expectWithin(often / seldom, 2, 1e-12);
});

test("of two equally unlikely cells the later is left out", () => {
  // 100 min for three: 100 x sqrt(.04)/(sqrt(.64) + 2 sqrt(.04)) = 16.7, under 20; for two 20 and 80.
  const places = [
    { name: "a", cells: [{ chance: 0.04, is: "first" }, { chance: 0.64 }, { chance: 0.04, is: "last" }] },
  ];
  const [kept] = shareMinutes(places, { ...FREE, least_min: 20 });
  expect(kept?.cells.map(({ cell }) => cell)).toEqual([{ chance: 0.04, is: "first" }, { chance: 0.64 }]);
});

test("nothing to try is no plan; a single cell is kept however short the day", () => {
  expect(searchPlan([], WORKED_TIMES)).toEqual([]);
  expect(searchPlan([{ name: "a", cells: [] }], WORKED_TIMES)).toEqual([]);
  expect(minutesFor([0.9], { ...FREE, day_min: 10, least_min: 20 })).toEqual([10]);
});

const lakes = fc.array(
  fc.array(fc.double({ min: 0.001, max: 0.05, noNaN: true }), { minLength: 1, maxLength: 5 }),
  {
    minLength: 1,
    maxLength: 4,
  },
);

test("whatever the lake: rods never overlap, leave a place together, and are done by the end of the day", () => {
  fc.assert(
    fc.property(lakes, fc.integer({ min: 1, max: 6 }), (chances, rods) => {
      const times = { ...WORKED_TIMES, rods };
      const places = chances.map((cells, i) => ({
        name: `${i}`,
        cells: cells.map((chance) => ({ chance })),
      }));
      const plan = searchPlan(places, times);
      for (let rod = 1; rod <= rods; rod++) {
        const own = plan.filter((rung) => rung.rod === rod);
        for (const [i, rung] of own.entries()) {
          expect(rung.to_min).toBeGreaterThan(rung.from_min);
          const before = own[i - 1];
          if (before === undefined) continue;
          const cost_min = before.place === rung.place ? times.change_min : times.move_min;
          expectWithin(rung.from_min - before.to_min, cost_min, 1e-6);
        }
        expectWithin(Math.max(...own.map(({ to_min }) => to_min)), times.day_min, 1e-6);
      }
      for (const name of new Set(plan.map(({ place }) => place))) {
        const ends = Array.from({ length: rods }, (_, i) =>
          Math.max(
            ...plan.filter((rung) => rung.place === name && rung.rod === i + 1).map(({ to_min }) => to_min),
          ),
        );
        expectWithin(Math.max(...ends), Math.min(...ends), 1e-6);
      }
    }),
    { seed: 1 },
  );
});
