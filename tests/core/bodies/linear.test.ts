/** Our little linear algebra against a general-purpose library (ml-matrix), over random positive definite matrices. */
import * as fc from "fast-check";
import { CholeskyDecomposition, Matrix, solve } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { cholesky, dot, partOf, solveLower } from "../../../src/core/statistics/linear";
import { SURVEYED_BODIES, TAPED_BODIES } from "../../../src/core/bodies/bridges";
import { CoreBug } from "../../../src/core/result";
import { anyAmount } from "../../support/amounts";

/** B Bᵀ and some of the unit matrix: symmetric and positive definite. */
const anyPositive = fc.integer({ min: 1, max: 9 }).chain((size) =>
  fc
    .array(fc.array(anyAmount(-3, 3), { minLength: size, maxLength: size }), { minLength: size, maxLength: size })
    .map((rows) => {
      const b = new Matrix(rows);
      return b.mmul(b.transpose()).add(Matrix.eye(size).mul(0.1)).to2DArray();
    }),
);

const largestOff = (ours: readonly (readonly number[])[], theirs: Matrix): number =>
  Math.max(...ours.flatMap((row, i) => row.map((value, j) => Math.abs(value - theirs.get(i, j)))));

describe("cholesky", () => {
  it("factors as the library does", () => {
    fc.assert(
      fc.property(anyPositive, (matrix) => {
        expect(
          largestOff(cholesky(matrix), new CholeskyDecomposition(new Matrix(matrix)).lowerTriangularMatrix),
        ).toBeLessThan(1e-9);
      }),
    );
  });

  it.each([
    ["surveyed", SURVEYED_BODIES],
    ["taped", TAPED_BODIES],
  ])("factors the scatter of the %s bodies, which is positive definite", (_, { scatter }) => {
    const theirs = new CholeskyDecomposition(new Matrix(scatter.map((row) => [...row])));
    expect(theirs.isPositiveDefinite()).toBe(true);
    expect(largestOff(cholesky(scatter), theirs.lowerTriangularMatrix)).toBeLessThan(1e-12);
  });

  it("refuses what is not positive definite", () => {
    expect(() =>
      cholesky([
        [1, 2],
        [2, 1],
      ]),
    ).toThrow(CoreBug);
  });
});

describe("solveLower", () => {
  it("solves as the library does", () => {
    fc.assert(
      fc.property(anyPositive, (matrix) => {
        const right = matrix.map((_, at) => at - 1.5);
        const lower = cholesky(matrix);
        const theirs = solve(
          new CholeskyDecomposition(new Matrix(matrix)).lowerTriangularMatrix,
          Matrix.columnVector(right),
        );
        const size = 1 + Math.max(...theirs.to1DArray().map(Math.abs));
        expect(
          largestOff(
            solveLower(lower, right).map((value) => [value]),
            theirs,
          ) / size,
        ).toBeLessThan(1e-8);
      }),
    );
  });
});

it("takes parts and products by hand", () => {
  const matrix = [
    [1, 2, 3],
    [4, 5, 6],
    [7, 8, 9],
  ];
  expect(partOf(matrix, [2, 0], [1, 1])).toEqual([
    [8, 8],
    [2, 2],
  ]);
  expect(dot([1, 2, 3], [4, -5, 6])).toBe(12);
});
