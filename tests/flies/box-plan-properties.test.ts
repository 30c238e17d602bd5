import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { boxPlan } from "../../build/flies/box-plan.ts";
import { poissonQuantile } from "../../build/flies/box-plan-demand.ts";
import { PHASES, stateOfPhase } from "../../build/model/phase.ts";
import { lake, pattern, trip } from "./box-plan-fixture.ts";

const SLUGS = ["a", "b", "c", "d", "e", "f"];

const anyStock = fc.array(
  fc.record({
    size: fc.constantFrom(8, 12, 14, 16),
    colour: fc.constantFrom("black", "olive", "red"),
    count: fc.nat(12),
  }),
  { maxLength: 4 },
);
const anyPatterns = fc
  .tuple(...SLUGS.map((slug) => anyStock.map((stock) => pattern(slug, { stock }))))
  .map((patterns) => [...patterns]);

/** Chances that sum to one, some of them none at all. */
const anyChances = fc
  .array(fc.nat(4), { minLength: 5, maxLength: 5 })
  .filter((parts) => parts.some((part) => part > 0))
  .map(([iced = 0, iceOff = 0, turnover = 0, postTurnover = 0, laterWeeks = 0]) => {
    const all = iced + iceOff + turnover + postTurnover + laterWeeks;
    return {
      iced: iced / all,
      iceOff: iceOff / all,
      turnover: turnover / all,
      postTurnover: postTurnover / all,
      laterWeeks: laterWeeks / all,
    };
  });
const anyList = fc.subarray(SLUGS).chain((slugs) => fc.shuffledSubarray(slugs, { minLength: slugs.length }));
const anyLake = fc
  .tuple(anyChances, anyList, anyList, anyList)
  .map(([chances, iceOff, turnover, late]) =>
    lake("Lake", chances, { "ice-off": iceOff, turnover, "post-turnover": late }),
  );
const anyLakes = fc.array(anyLake, { minLength: 1, maxLength: 4 });
const anyDays = fc.integer({ min: 1, max: 9 });
const anyRods = fc.integer({ min: 1, max: 9 });
const anyLoss = fc.option(fc.integer({ min: 0, max: 6 }), { nil: undefined });
const anyTrip = fc
  .tuple(anyDays, anyRods, anyLakes, anyLoss)
  .map(([days, rods, lakes, loss]) => ({ days, rods, lakes, loss }));

const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0);

describe("whatever the trip, its lakes and the club's box", () => {
  test("rows carry more than nothing, sum to the planned total, and what is to tie is what they lack", () => {
    fc.assert(
      fc.property(anyTrip, anyPatterns, ({ days, rods, lakes, loss }, patterns) => {
        const { rows, losses } = boxPlan(trip(days, rods, lakes, loss), patterns);
        expect(sum(rows.map(({ carry }) => carry))).toBe(losses.planned);
        for (const { pattern: slug, size, colour, carry, have, tie } of rows) {
          expect(carry).toBeGreaterThan(0);
          expect(tie).toBe(Math.max(0, carry - have));
          const stock = patterns.find((candidate) => candidate.slug === slug)?.stock ?? [];
          const kept = stock.filter((row) => row.size === size && row.colour === colour);
          expect(have).toBe(sum(kept.map(({ count }) => count)));
        }
      }),
    );
  });

  test("the total is what nine trips in ten lose and at least two spares a pattern", () => {
    fc.assert(
      fc.property(anyTrip, anyPatterns, ({ days, rods, lakes, loss }, patterns) => {
        const { rows, losses } = boxPlan(trip(days, rods, lakes, loss), patterns);
        const count = new Set(rows.map((row) => row.pattern)).size;
        const lost = poissonQuantile(losses.expected, 0.9);
        if (count === 0) expect(losses.planned).toBe(0);
        else {
          expect(losses.planned).toBeGreaterThanOrEqual(lost + 2 * count);
          expect(losses.planned).toBeLessThanOrEqual(lost + Math.max(2, rods) * count);
        }
      }),
    );
  });

  test("no pattern is carried that stands only on lists of phases the lakes cannot be in", () => {
    fc.assert(
      fc.property(anyTrip, anyPatterns, ({ days, rods, lakes, loss }, patterns) => {
        const possible = new Set(
          lakes.flatMap(({ daily, plan }) =>
            plan
              .filter(
                ({ phase }) => PHASES.includes(phase) && daily.some((row) => row[stateOfPhase(phase)] > 0),
              )
              .flatMap(({ flies }) => flies.map((fly) => fly.pattern)),
          ),
        );
        const { rows } = boxPlan(trip(days, rods, lakes, loss), patterns);
        expect(rows.filter((row) => !possible.has(row.pattern))).toEqual([]);
      }),
    );
  });

  test("more days or more rods never make the total smaller", () => {
    fc.assert(
      fc.property(anyTrip, anyPatterns, ({ days, rods, lakes, loss }, patterns) => {
        const total = (d: number, r: number): number =>
          boxPlan(trip(d, r, lakes, loss), patterns).losses.planned;
        expect(total(days + 1, rods)).toBeGreaterThanOrEqual(total(days, rods));
        expect(total(days, rods + 1)).toBeGreaterThanOrEqual(total(days, rods));
      }),
    );
  });

  test("the tying list holds all that the rows lack, and there is a hook for each of its flies", () => {
    fc.assert(
      fc.property(anyTrip, anyPatterns, ({ days, rods, lakes, loss }, patterns) => {
        const { rows, tying, materials } = boxPlan(trip(days, rods, lakes, loss), patterns);
        const toTie = sum(tying.flatMap(({ flies }) => flies.map(({ count }) => count)));
        expect(toTie).toBe(sum(rows.map(({ tie }) => tie)));
        const hooks = materials.filter(({ hookSize }) => hookSize !== null);
        expect(sum(hooks.map(({ flies }) => flies))).toBe(toTie);
      }),
    );
  });
});
