import { CholeskyDecomposition, Matrix } from "ml-matrix";
import { addTo, at, wholeAt } from "../numbers.ts";

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
interface Parts {
  readonly n: number;
  readonly kept: Float64Array;
  readonly rhs: Float64Array;
  readonly inside: Float64Array;
  readonly insideRhs: Float64Array;
  readonly ties: Float64Array;
}

/** Place of an unknown among those of the blocks; negative for a kept one. */
const placeInBlocks = ({ first, count, width }: Blocks, unknown: number): number =>
  unknown < first + count * width ? unknown - first : -1;

const placeAmongKept = ({ first, count, width }: Blocks, unknown: number): number =>
  unknown < first ? unknown : unknown - count * width;

/** Sums all that is known into the precision matrix. */
function assemble(known: readonly Known[], size: number, blocks: Blocks): Parts {
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

/** Gaussian unknowns after all that is known. */
export interface Solution {
  readonly mean: Float64Array;
  meansOf(rows: SparseRows): Float64Array;
  /** For rows that touch at most one block each. */
  variancesOf(rows: SparseRows): Float64Array;
  varianceOfSum(unknowns: readonly number[]): number;
}

/** Inverse of each block's own precision. */
function inverses(inside: Float64Array, { count, width }: Blocks): Float64Array {
  if (width === 1) return inside.map((precision) => 1 / precision);
  const inverse = new Float64Array(inside.length);
  for (let b = 0; b < count; b++) {
    const [p, q, r] = [at(inside, 4 * b), at(inside, 4 * b + 1), at(inside, 4 * b + 3)];
    const determinant = p * r - q * q;
    inverse.set([r / determinant, -q / determinant, -q / determinant, p / determinant], 4 * b);
  }
  return inverse;
}

/** `rows * matrix`, where each of the block rows has `n` entries, many of them zero. */
function times(rows: Float64Array, matrix: Float64Array, n: number): Float64Array {
  const product = new Float64Array(rows.length);
  for (let row = 0; row < rows.length; row += n)
    for (let i = 0; i < n; i++) {
      const weight = at(rows, row + i);
      if (weight !== 0) for (let j = 0; j < n; j++) addTo(product, row + j, weight * at(matrix, i * n + j));
    }
  return product;
}

/** Takes the blocks out of the kept system (Schur complement), in place; gives how each block's unknown leans on the kept ones. */
function eliminate(
  { n, kept, rhs, insideRhs, ties }: Parts,
  inverse: Float64Array,
  width: number,
): Float64Array {
  const lean = new Float64Array(ties.length);
  for (let row = 0; row < insideRhs.length; row++) {
    const first = row - (row % width);
    for (let c = 0; c < width; c++) {
      const weight = at(inverse, row * width + c);
      for (let j = 0; j < n; j++) addTo(lean, row * n + j, weight * at(ties, (first + c) * n + j));
    }
    for (let i = 0; i < n; i++) {
      addTo(rhs, i, -at(insideRhs, row) * at(lean, row * n + i));
      const tie = at(ties, row * n + i);
      if (tie !== 0) for (let j = 0; j < n; j++) addTo(kept, i * n + j, -tie * at(lean, row * n + j));
    }
  }
  return lean;
}

/** Inverse of a symmetric positive definite matrix; rounding's last digits are made equal on both sides of the diagonal first. */
function inverseOf(flat: Float64Array, n: number): Float64Array {
  const matrix = Matrix.zeros(n, n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      matrix.set(i, j, at(flat, i * n + j));
      matrix.set(j, i, at(flat, i * n + j));
    }
  const cholesky = new CholeskyDecomposition(matrix);
  if (!cholesky.isPositiveDefinite()) throw new RangeError("some unknown is left undetermined");
  return Float64Array.from(cholesky.solve(Matrix.eye(n)).to1DArray());
}

function dot(a: Float64Array, startA: number, b: Float64Array, startB: number, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i++) sum += at(a, startA + i) * at(b, startB + i);
  return sum;
}

/**
 * Solves penalised normal equations: the Gaussian unknowns that everything known together describes. The blocks are eliminated, the
 * others solved by Cholesky.
 * @param size number of unknowns; no row may touch two blocks
 * @throws RangeError when some unknown is left undetermined
 * @source Henderson's mixed-model equations; see G. K. Robinson (1991), Statistical Science 6:15-32
 */
export function solveNormalEquations(known: readonly Known[], size: number, blocks: Blocks): Solution {
  const { count, width } = blocks;
  const parts = assemble(known, size, blocks);
  const { n } = parts;
  const inverse = inverses(parts.inside, blocks);
  const lean = eliminate(parts, inverse, width);
  const covariance = inverseOf(parts.kept, n);
  /** Covariance between block unknowns and kept ones, sign reversed. */
  const across = times(lean, covariance, n);
  const among = inverse.map((entry, place) => {
    const row = Math.floor(place / width);
    return entry + dot(across, row * n, lean, (row - (row % width) + (place % width)) * n, n);
  });
  const keptMean = Float64Array.from({ length: n }, (_, i) => dot(covariance, i * n, parts.rhs, 0, n));
  const mean = new Float64Array(size);
  for (let unknown = 0; unknown < size; unknown++) {
    const row = placeInBlocks(blocks, unknown);
    mean[unknown] =
      row < 0
        ? at(keptMean, placeAmongKept(blocks, unknown))
        : dot(inverse, row * width, parts.insideRhs, row - (row % width), width) -
          dot(lean, row * n, keptMean, 0, n);
  }

  const covarianceOf = (a: number, b: number): number => {
    const [rowA, rowB] = [placeInBlocks(blocks, a), placeInBlocks(blocks, b)];
    if (rowA >= 0 && rowB >= 0) return at(among, rowA * width + (rowB % width));
    if (rowA >= 0) return -at(across, rowA * n + placeAmongKept(blocks, b));
    if (rowB >= 0) return -at(across, rowB * n + placeAmongKept(blocks, a));
    return at(covariance, placeAmongKept(blocks, a) * n + placeAmongKept(blocks, b));
  };
  const eachRow = ({ starts }: SparseRows, measure: (from: number, to: number) => number): Float64Array => {
    const values = new Float64Array(starts.length - 1);
    for (let t = 0; t < values.length; t++) values[t] = measure(wholeAt(starts, t), wholeAt(starts, t + 1));
    return values;
  };
  return {
    mean,
    meansOf: (rows) =>
      eachRow(rows, (from, to) => {
        let sum = 0;
        for (let i = from; i < to; i++) sum += at(rows.weights, i) * at(mean, wholeAt(rows.unknowns, i));
        return sum;
      }),
    variancesOf: (rows) =>
      eachRow(rows, (from, to) => {
        let sum = 0;
        for (let i = from; i < to; i++)
          for (let j = from; j <= i; j++) {
            const twice = i === j ? 1 : 2;
            const weight = twice * at(rows.weights, i) * at(rows.weights, j);
            sum += weight * covarianceOf(wholeAt(rows.unknowns, i), wholeAt(rows.unknowns, j));
          }
        return sum;
      }),
    varianceOfSum: (unknowns) => {
      const onKept = new Float64Array(n);
      const onBlocks = new Float64Array(count * width);
      for (const unknown of unknowns) {
        const row = placeInBlocks(blocks, unknown);
        if (row < 0) addTo(onKept, placeAmongKept(blocks, unknown), 1);
        else {
          addTo(onBlocks, row, 1);
          for (let i = 0; i < n; i++) addTo(onKept, i, -at(lean, row * n + i));
        }
      }
      const kept = dot(times(onKept, covariance, n), 0, onKept, 0, n);
      const own = inverse.reduce((sum, entry, place) => {
        const row = Math.floor(place / width);
        return sum + at(onBlocks, row) * entry * at(onBlocks, row - (row % width) + (place % width));
      }, 0);
      return kept + own;
    },
  };
}
