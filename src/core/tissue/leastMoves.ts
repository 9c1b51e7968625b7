/** Least moves: normal freedoms of spread 1 conditioned on what is measured of them. */
import { cholesky, dot, entry, solveLower, type Matrix } from "../statistics/linear";
import { invariant } from "../result";

/** A rounding's worth added to a diagonal, so that rows that nearly depend on each other can still be factored. */
const RIDGE = 1e-9;

/** Rows times rows: J Jᵀ, with more on its diagonal. */
export const gram = (rows: Matrix, more: readonly number[]): number[][] =>
  rows.map((a, i) => rows.map((b, j) => dot(a, b) + (i === j ? (more[i] ?? 0) + RIDGE : 0)));

function solveUpper(lower: Matrix, right: readonly number[]): number[] {
  const solution = right.map(() => 0);
  for (let row = right.length - 1; row >= 0; row -= 1) {
    let sum = invariant(right[row], "entry");
    for (let k = row + 1; k < right.length; k += 1) sum -= entry(lower, k, row) * invariant(solution[k], "entry");
    solution[row] = sum / entry(lower, row, row);
  }
  return solution;
}

/** A symmetric positive definite matrix, factored once and solved by as often as wanted. */
export interface Factored {
  readonly solve: (right: readonly number[]) => number[];
  /** The whole inverse. */
  readonly inverse: () => number[][];
}

export function factored(matrix: Matrix): Factored {
  const lower = cholesky(matrix);
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
