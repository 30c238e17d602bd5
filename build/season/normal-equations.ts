import { CholeskyDecomposition, Matrix } from "ml-matrix";
import {
  assemble,
  type Blocks,
  type Known,
  type Parts,
  placeAmongKept,
  placeInBlocks,
} from "./normal-parts.ts";
import { addTo, at, wholeAt } from "./numbers.ts";
import type { SparseRows } from "./sparse-rows.ts";

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
