import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { DepthBand } from "../../build/model/club.ts";
import { type Coverable, cover } from "../../build/rigs/leaders/interval-cover.ts";

const band = fc
  .tuple(fc.integer({ min: 0, max: 10 }), fc.integer({ min: 1, max: 6 }))
  .map(([from_m, length_m]): DepthBand => ({ from_m, to_m: from_m + length_m }));
const candidate: fc.Arbitrary<Coverable> = fc.record({
  serves: band,
  alreadyTied: fc.boolean(),
  knots: fc.integer({ min: 1, max: 3 }),
  material_m: fc.integer({ min: 1, max: 4 }),
});

/** Middles of unit cells: with whole-number ends a band is covered when all of its cells are. */
const CELLS = Array.from({ length: 17 }, (_, i) => i + 0.5);
const holds = ({ from_m, to_m }: DepthBand, depth_m: number): boolean => from_m < depth_m && depth_m < to_m;
const cellsOf = (bands: readonly DepthBand[]): number[] =>
  CELLS.filter((cell) => bands.some((one) => holds(one, cell)));

type Cost = [number, number, number, number];
const costOf = (chosen: readonly Coverable[]): Cost => [
  chosen.filter(({ alreadyTied }) => !alreadyTied).length,
  chosen.length,
  chosen.reduce((sum, { knots }) => sum + knots, 0),
  chosen.reduce((sum, { material_m }) => sum + material_m, 0),
];
function compare(a: Cost, b: Cost): number {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return (a[i] ?? 0) - (b[i] ?? 0);
  return 0;
}

/** The cheapest of all subsets that cover every cell any candidate covers. */
function bruteForce(sets: readonly DepthBand[], candidates: readonly Coverable[]): Cost {
  const reachable = new Set(cellsOf(candidates.map(({ serves }) => serves)));
  const needed = cellsOf(sets).filter((cell) => reachable.has(cell));
  let best: Cost | undefined;
  for (let subset = 0; subset < 2 ** candidates.length; subset++) {
    const chosen = candidates.filter((_, i) => (subset >> i) & 1);
    if (!needed.every((cell) => chosen.some(({ serves }) => holds(serves, cell)))) continue;
    const cost = costOf(chosen);
    if (best === undefined || compare(cost, best) < 0) best = cost;
  }
  return best ?? [0, 0, 0, 0];
}

describe("cover against every subset", () => {
  test("is never dearer, covers all that can be, names the rest", () => {
    fc.assert(
      fc.property(
        fc.array(band, { maxLength: 3 }),
        fc.array(candidate, { maxLength: 9 }),
        (sets, candidates) => {
          const { chosen, uncovered } = cover(sets, candidates);
          const reachable = new Set(cellsOf(candidates.map(({ serves }) => serves)));
          const served = cellsOf(chosen.map(({ serves }) => serves));
          for (const cell of cellsOf(sets).filter((one) => reachable.has(one)))
            expect(served).toContain(cell);
          expect(cellsOf(uncovered)).toEqual(cellsOf(sets).filter((cell) => !reachable.has(cell)));
          expect(costOf(chosen)).toEqual(bruteForce(sets, candidates));
        },
      ),
      { numRuns: 2000, seed: 1 },
    );
  });
});

const leader = (from_m: number, to_m: number, more: Partial<Coverable> = {}): Coverable => ({
  serves: { from_m, to_m },
  alreadyTied: false,
  knots: 2,
  material_m: to_m,
  ...more,
});

describe("cover by hand", () => {
  test("two that fit exactly beat three that a greedy hand would take", () => {
    const halves = [leader(0, 3), leader(3, 6)];
    const wide = leader(1, 5.5);
    expect(cover([{ from_m: 0, to_m: 6 }], [wide, leader(0, 1), leader(5, 6), ...halves]).chosen).toEqual(
      halves,
    );
  });
  test("two already on boards beat one still to be tied", () => {
    const tied = [leader(0, 3, { alreadyTied: true }), leader(3, 6, { alreadyTied: true })];
    expect(cover([{ from_m: 0, to_m: 6 }], [leader(0, 6), ...tied]).chosen).toEqual(tied);
  });
  test("one leader may serve two bands, and nothing is tied for the gap between", () => {
    const both = leader(1, 6);
    const bands = [
      { from_m: 1, to_m: 2 },
      { from_m: 5, to_m: 6 },
    ];
    expect(cover(bands, [leader(1, 2), leader(5, 6), both]).chosen).toEqual([both]);
    expect(cover(bands, [leader(1, 2), leader(5, 6)]).chosen).toHaveLength(2);
  });
  test("nothing to cover needs nothing; nothing to cover with leaves all", () => {
    expect(cover([], [leader(0, 3)])).toEqual({ chosen: [], uncovered: [] });
    const whole = { from_m: 1, to_m: 2 };
    expect(cover([whole], [])).toEqual({ chosen: [], uncovered: [whole] });
  });
  test("a single depth is covered by a leader that only just reaches it", () => {
    const only = leader(1, 4);
    expect(cover([{ from_m: 4, to_m: 4 }], [only]).chosen).toEqual([only]);
  });
});
