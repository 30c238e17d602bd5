import fc from "fast-check";
import { expect, test } from "vitest";
import type { DepthBand } from "../../build/model/club.ts";
import { overlap_m, subtract, union } from "../../build/rigs/leaders/interval-cover.ts";

/** Bands with ends on whole numbers, so that the middles of unit cells tell everything. */
const band = fc
  .tuple(fc.integer({ min: 0, max: 12 }), fc.integer({ min: 1, max: 5 }))
  .map(([from_m, length_m]): DepthBand => ({ from_m, to_m: from_m + length_m }));
const CELL_MIDDLES = Array.from({ length: 18 }, (_, i) => i + 0.5);
const cellsIn = (bands: readonly DepthBand[]): number[] =>
  CELL_MIDDLES.filter((middle) => bands.some(({ from_m, to_m }) => from_m < middle && middle < to_m));

test("union holds the same depths, in order and apart", () => {
  fc.assert(
    fc.property(fc.array(band, { maxLength: 6 }), (bands) => {
      const merged = union(bands);
      expect(cellsIn(merged)).toEqual(cellsIn(bands));
      for (const [i, { from_m }] of merged.entries())
        expect(from_m).toBeGreaterThan(merged[i - 1]?.to_m ?? -1);
    }),
  );
});

test("subtract leaves what no cover holds", () => {
  fc.assert(
    fc.property(band, fc.array(band, { maxLength: 5 }), (whole, covers) => {
      const covered = new Set(cellsIn(covers));
      expect(cellsIn(subtract(whole, covers))).toEqual(cellsIn([whole]).filter((cell) => !covered.has(cell)));
    }),
  );
});

test("overlap is the length in common", () => {
  fc.assert(
    fc.property(band, band, (a, b) => {
      const both = cellsIn([a]).filter((cell) => cellsIn([b]).includes(cell)).length;
      expect(Math.max(0, overlap_m(a, b))).toBe(both);
    }),
  );
});

test("one single depth is covered or left", () => {
  const depth = { from_m: 3, to_m: 3 };
  expect(subtract(depth, [{ from_m: 1, to_m: 3 }])).toEqual([]);
  expect(subtract(depth, [{ from_m: 4, to_m: 5 }])).toEqual([depth]);
});
