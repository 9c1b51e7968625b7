/** The little linear algebra that conditioning needs: factoring a symmetric positive definite matrix and solving by it. */
import { CoreBug, invariant } from "../result";

/** Rows of numbers; square where it says symmetric. */
export type Matrix = readonly (readonly number[])[];

export const entry = (matrix: Matrix, row: number, column: number): number =>
  invariant(invariant(matrix[row], "row")[column], "entry");

/** The rows and columns of a matrix at these places, in this order. */
export const partOf = (matrix: Matrix, rows: readonly number[], columns: readonly number[]): number[][] =>
  rows.map((row) => columns.map((column) => entry(matrix, row, column)));

export const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, at) => sum + value * invariant(b[at], "entry"), 0);

/**
 * Lower triangular L with L Lᵀ = A.
 *
 * @param matrix symmetric and positive definite, n × n
 * @throws CoreBug where it is not positive definite
 * @source Golub and Van Loan, Matrix Computations, the outer-product-free (row by row) form of Cholesky's factoring
 */
export function cholesky(matrix: Matrix): number[][] {
  const lower: number[][] = [];
  for (let row = 0; row < matrix.length; row += 1) {
    const own: number[] = [];
    for (let column = 0; column <= row; column += 1) {
      const other = column === row ? own : invariant(lower[column], "row");
      let sum = entry(matrix, row, column);
      for (let k = 0; k < column; k += 1) sum -= invariant(own[k], "entry") * invariant(other[k], "entry");
      if (column < row) {
        own.push(sum / invariant(other[column], "entry"));
        continue;
      }
      if (!(sum > 0)) throw new CoreBug(`not positive definite at ${row}`);
      own.push(Math.sqrt(sum));
    }
    lower.push(own);
  }
  return lower;
}

/** x with L x = b, L lower triangular. */
export function solveLower(lower: Matrix, right: readonly number[]): number[] {
  const solution: number[] = [];
  for (const [row, value] of right.entries()) {
    let sum = value;
    for (let k = 0; k < row; k += 1) sum -= entry(lower, row, k) * invariant(solution[k], "entry");
    solution.push(sum / entry(lower, row, row));
  }
  return solution;
}
