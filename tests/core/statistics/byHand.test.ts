/** Factoring and solving, with whole numbers worked by hand. */
import { expect, it } from "vitest";
import { CoreBug } from "../../../src/core/result";
import { cholesky, dot, entry, partOf, solveLower } from "../../../src/core/statistics/linear";

// [2 0 0; 1 3 0; −1 2 1] times its transpose.
const LOWER = [[2], [1, 3], [-1, 2, 1]];
const PRODUCT = [
  [4, 2, -2],
  [2, 10, 5],
  [-2, 5, 6],
];

it("finds the factor that a product was made of", () => {
  expect(cholesky(PRODUCT)).toEqual(LOWER);
  expect(cholesky([])).toEqual([]);
});

it("solves row by row", () => {
  // x = 3, −1, 2: 2·3; 3 − 3; −3 − 2 + 2.
  expect(solveLower(LOWER, [6, 0, -3])).toEqual([3, -1, 2]);
  // Fewer values ask for the rows above only.
  expect(solveLower(LOWER, [6, 0])).toEqual([3, -1]);
});

it("refuses a matrix that leaves nothing of a row, less than nothing, or no number", () => {
  for (const corner of [1, 0, Number.NaN]) {
    expect(() =>
      cholesky([
        [1, 1],
        [1, corner],
      ]),
    ).toThrow(corner === 1 ? "not positive definite at 1" : CoreBug);
  }
  expect(() => cholesky([[0]])).toThrow("not positive definite at 0");
});

it("takes an entry, a part and a product, and nothing that is not there", () => {
  expect(entry(PRODUCT, 2, 1)).toBe(5);
  expect(partOf(PRODUCT, [2, 0], [1])).toEqual([[5], [2]]);
  expect(dot([1, 2, 3], [4, -5, 6])).toBe(12);
  expect(dot([], [1])).toBe(0);
  expect(() => entry(PRODUCT, 3, 0)).toThrow(CoreBug);
  expect(() => entry(PRODUCT, 0, 3)).toThrow(CoreBug);
  expect(() => dot([1, 2], [1])).toThrow(CoreBug);
});
