import fc from "fast-check";
import { expect, test } from "vitest";
import type { Band } from "../../build/draw/hatching.ts";
import { intersectIntervals, intervalsInBand, intervalsInRings } from "../../build/draw/hatching.ts";

/** A triangle with corners (0, 0), (10, 10) and (10, 0): under the level y = 0, over the line y = x. */
const TRIANGLE: Band = { xs: [0, 10], upper: [0, 0], lower: [0, 10] };

test("a level line enters a triangle where its slanting side stands", () => {
  expect(intervalsInBand(TRIANGLE, 4, 0)).toEqual([[4, 10]]);
});

test("a line of slope 1 that starts at y = -4 enters where it meets the level side", () => {
  expect(intervalsInBand(TRIANGLE, -4, 1)).toEqual([[4, 10]]);
});

test("a line outside has no stretch", () => {
  expect(intervalsInBand(TRIANGLE, 11, 0)).toEqual([]);
});

const edge = fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 6, maxLength: 6 });

/** Height of a broken line over the places 0, 10, .. 50. */
const at = (ys: readonly number[], x: number): number => {
  const i = Math.min(4, Math.floor(x / 10));
  const [a = 0, b = 0] = [ys[i], ys[i + 1]];
  return a + ((b - a) * (x - 10 * i)) / 10;
};

test("points of a hatching line are within its stretches exactly where they are within the band", () => {
  const level = fc.integer({ min: -60, max: 160 });
  fc.assert(
    fc.property(edge, edge, level, fc.constantFrom(0, 1), (a, b, y0, slope) => {
      const upper = a.map((y, i) => Math.min(y, b[i] ?? 0));
      const lower = a.map((y, i) => Math.max(y, b[i] ?? 0));
      const stretches = intervalsInBand({ xs: [0, 10, 20, 30, 40, 50], upper, lower }, y0, slope);
      for (let x = 0.37; x < 50; x += 0.731) {
        const y = y0 + slope * x;
        const clearance = Math.min(y - at(upper, x), at(lower, x) - y);
        if (Math.abs(clearance) < 0.01) continue;
        expect(stretches.some(([from, to]) => from <= x && x <= to)).toBe(clearance > 0);
      }
    }),
  );
});

const square = (from: number, to: number) => [
  { x: from, y: from },
  { x: to, y: from },
  { x: to, y: to },
  { x: from, y: to },
  { x: from, y: from },
];

test("a line through a ring with an island has two stretches, whichever way the rings run", () => {
  const [shore, island] = [square(0, 10), square(4, 6)];
  const parts = [
    [0, 4],
    [6, 10],
  ];
  expect(intervalsInRings([shore, island], 5, 0)).toEqual(parts);
  expect(intervalsInRings([shore, island.toReversed()], 5, 0)).toEqual(parts);
  // y = x - 1 misses no corner of the shore and cuts the island from (5, 4) to (6, 5).
  expect(intervalsInRings([shore, island], -1, 1)).toEqual([
    [1, 5],
    [6, 10],
  ]);
  expect(intervalsInRings([shore, island], 12, 0)).toEqual([]);
});

test("a place lies in what two lists of stretches have in common exactly where it lies in both", () => {
  const stretches = fc
    .uniqueArray(fc.integer({ min: 0, max: 100 }), { minLength: 2, maxLength: 8 })
    .map((ends) => ends.toSorted((a, b) => a - b))
    .map((ends) =>
      ends.flatMap((from, i) =>
        i % 2 === 0 && ends[i + 1] !== undefined ? [[from, ends[i + 1] ?? 0] as const] : [],
      ),
    );
  const isOn = (some: readonly (readonly [number, number])[], at: number): boolean =>
    some.some(([from, to]) => from < at && at < to);
  fc.assert(
    fc.property(stretches, stretches, (some, others) => {
      const common = intersectIntervals(some, others);
      for (let at = 0.5; at < 100; at++) expect(isOn(common, at)).toBe(isOn(some, at) && isOn(others, at));
    }),
  );
});
