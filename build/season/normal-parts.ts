import { addTo, at, wholeAt } from "./numbers.ts";
import { countOf, type SparseRows } from "./sparse-rows.ts";

/** What is known of each row's weighted sum, from a record or from a prior: `value`, give or take `1 / sqrt(precision)`. */
export interface Known {
  readonly rows: SparseRows;
  readonly value: Float64Array;
  readonly precision: Float64Array;
}

/** A run of unknowns in blocks of one or two, each block tied to the others only through the unknowns outside the run. */
export interface Blocks {
  /** First unknown of the run. */
  readonly first: number;
  readonly count: number;
  readonly width: 1 | 2;
}

/** The precision matrix in parts: among the kept unknowns, inside the blocks, and between the two. All row by row. */
export interface Parts {
  readonly n: number;
  readonly kept: Float64Array;
  readonly rhs: Float64Array;
  readonly inside: Float64Array;
  readonly insideRhs: Float64Array;
  readonly ties: Float64Array;
}

/** Place of an unknown among those of the blocks; negative for a kept one. */
export const placeInBlocks = ({ first, count, width }: Blocks, unknown: number): number =>
  unknown < first + count * width ? unknown - first : -1;

export const placeAmongKept = ({ first, count, width }: Blocks, unknown: number): number =>
  unknown < first ? unknown : unknown - count * width;

/** Sums all that is known into the precision matrix. */
export function assemble(known: readonly Known[], size: number, blocks: Blocks): Parts {
  const { count, width } = blocks;
  const n = size - count * width;
  const parts: Parts = {
    n,
    kept: new Float64Array(n * n),
    rhs: new Float64Array(n),
    inside: new Float64Array(count * width * width),
    insideRhs: new Float64Array(count * width),
    ties: new Float64Array(count * width * n),
  };
  for (const { rows, value, precision } of known)
    for (let t = 0; t < countOf(rows); t++)
      for (let i = wholeAt(rows.starts, t); i < wholeAt(rows.starts, t + 1); i++) {
        const pull = at(precision, t) * at(rows.weights, i);
        const row = placeInBlocks(blocks, wholeAt(rows.unknowns, i));
        const keptRow = placeAmongKept(blocks, wholeAt(rows.unknowns, i));
        if (row < 0) addTo(parts.rhs, keptRow, pull * at(value, t));
        else addTo(parts.insideRhs, row, pull * at(value, t));
        for (let j = wholeAt(rows.starts, t); j < wholeAt(rows.starts, t + 1); j++) {
          const amount = pull * at(rows.weights, j);
          const column = placeInBlocks(blocks, wholeAt(rows.unknowns, j));
          const keptColumn = placeAmongKept(blocks, wholeAt(rows.unknowns, j));
          if (row >= 0 && column >= 0) addTo(parts.inside, row * width + (column % width), amount);
          else if (row >= 0) addTo(parts.ties, row * n + keptColumn, amount);
          else if (column < 0) addTo(parts.kept, keptRow * n + keptColumn, amount);
        }
      }
  return parts;
}
