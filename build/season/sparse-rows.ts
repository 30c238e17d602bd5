import { wholeAt } from "./numbers.ts";

/** Weighted sums of a few unknowns each, row after row in flat arrays: row `t` spans `starts[t]` to `starts[t + 1]`. */
export interface SparseRows {
  readonly starts: Int32Array;
  readonly unknowns: Int32Array;
  readonly weights: Float64Array;
}

/** One row as it is written: unknown and weight, pair by pair. */
export type Row = readonly (readonly [unknown: number, weight: number])[];

/** Packs rows into flat arrays. */
export function rowsOf(rows: readonly Row[]): SparseRows {
  const starts = new Int32Array(rows.length + 1);
  rows.forEach((row, t) => {
    starts[t + 1] = wholeAt(starts, t) + row.length;
  });
  const pairs = rows.flat();
  return {
    starts,
    unknowns: Int32Array.from(pairs, ([unknown]) => unknown),
    weights: Float64Array.from(pairs, ([, weight]) => weight),
  };
}

export const countOf = ({ starts }: SparseRows): number => starts.length - 1;
