/** Least moves: normal freedoms of spread 1 conditioned on what is measured of them. */
import { entry, solveLower, type Matrix } from "../statistics/linear";
import { invariant } from "../result";
import { TISSUE_RIDGE } from "../tolerance";

/** Products added up; rows here are long and many. */
export function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let k = 0; k < a.length; k += 1) sum += (a[k] ?? 0) * (b[k] ?? 0);
  return sum;
}

/** Rows times rows: J Jᵀ, with more on its diagonal. */
export const gram = (rows: Matrix, more: readonly number[]): number[][] => {
  const sums: number[][] = [];
  for (const [i, a] of rows.entries()) {
    const own = sums.map((row) => row[i] ?? 0);
    for (let j = i; j < rows.length; j += 1) own.push(dot(a, rows[j] ?? []) + (i === j ? (more[i] ?? 0) : 0));
    sums.push(own);
  }
  return sums;
};

function solveUpper(lower: Matrix, right: readonly number[]): number[] {
  const solution = right.map(() => 0);
  for (let row = right.length - 1; row >= 0; row -= 1) {
    let sum = invariant(right[row], "entry");
    for (let k = row + 1; k < right.length; k += 1) sum -= entry(lower, k, row) * invariant(solution[k], "entry");
    solution[row] = sum / entry(lower, row, row);
  }
  return solution;
}

/** The place of a row in the factor that depends on those before it: so much that nothing is laid on it. */
const LEFT_OUT = 1e9;

/**
 * Lower triangular L with L Lᵀ = A; a row that depends on those before it but for rounding, or is no number, counts for nothing.
 *
 * @source Golub and Van Loan, Matrix Computations: Cholesky's factoring, row by row
 */
function lowerOf(matrix: Matrix): number[][] {
  const lower: number[][] = [];
  for (const [at, row] of matrix.entries()) {
    const own: number[] = [];
    for (let column = 0; column <= at; column += 1) {
      const other = lower[column] ?? own;
      let sum = row[column] ?? 0;
      for (let k = 0; k < column; k += 1) sum -= (own[k] ?? 0) * (other[k] ?? 0);
      if (column < at) own.push(sum / (other[column] ?? 1));
      else own.push(sum > TISSUE_RIDGE * (1 + Math.abs(row[at] ?? 0)) ? Math.sqrt(sum) : LEFT_OUT);
    }
    lower.push(own.every(Number.isFinite) ? own : own.map((_, k) => (k === at ? LEFT_OUT : 0)));
  }
  return lower;
}

/** A symmetric matrix without negative squares, factored once and solved by as often as wanted. */
export interface Factored {
  readonly solve: (right: readonly number[]) => number[];
  /** The whole inverse. */
  readonly inverse: () => number[][];
}

export function factored(matrix: Matrix): Factored {
  const lower = lowerOf(matrix);
  const solve = (right: readonly number[]): number[] => solveUpper(lower, solveLower(lower, right));
  return {
    solve,
    inverse: () => matrix.map((_, at) => solve(matrix.map((__, i) => (i === at ? 1 : 0)))),
  };
}

/** Jᵀ w. */
export function acrossRows(rows: Matrix, weights: readonly number[], count: number): number[] {
  const sum = Array.from({ length: count }, () => 0);
  for (const [i, row] of rows.entries()) {
    const weight = weights[i] ?? 0;
    if (weight === 0) continue;
    for (let k = 0; k < count; k += 1) sum[k] = (sum[k] ?? 0) + weight * (row[k] ?? 0);
  }
  return sum;
}

/**
 * What is still doubted of something once rows are met exactly, each off by its own doubt.
 *
 * @param answers how it answers to the freedoms
 * @param rows    how each row that is met answers to them
 * @param doubts  variance of each row
 * @returns its variance
 */
export function varianceLeft(
  answers: readonly number[],
  rows: Matrix,
  doubts: readonly number[],
  { solve }: Factored,
): number {
  const weights = solve(rows.map((row) => dot(row, answers)));
  const carried = acrossRows(rows, weights, answers.length);
  let sum = 0;
  for (const [k, answer] of answers.entries()) sum += (answer - (carried[k] ?? 0)) ** 2;
  for (const [i, weight] of weights.entries()) sum += weight * weight * (doubts[i] ?? 0);
  return sum;
}
