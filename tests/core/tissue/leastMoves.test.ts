/** Small systems solved on paper. */
import { describe, expect, it } from "vitest";
import { acrossRows, dot, factored, gram, varianceLeft } from "../../../src/core/tissue/leastMoves";

const near = (values: readonly number[], digits = 9): unknown[] =>
  values.map((value) => expect.closeTo(value, digits) as unknown);

describe("products of rows", () => {
  it("are summed by places, one beside the other, with more on the diagonal", () => {
    expect(dot([1, 2, 3], [4, 5, 6])).toBe(32);
    expect(dot([1, 2, 3], [4])).toBe(4);
    expect(
      gram(
        [
          [1, 2],
          [3, 4],
          [0, -1],
        ],
        [10, 20],
      ),
    ).toEqual([
      [15, 11, -2],
      [11, 45, -4],
      [-2, -4, 1],
    ]);
  });

  it("of rows by weights go back onto the freedoms", () => {
    const rows = [
      [1, 2],
      [3, 4],
      [5, 6],
    ];
    expect(acrossRows(rows, [10, 100, 0], 2)).toEqual([310, 420]);
    expect(acrossRows([[Number.NaN]], [0], 1)).toEqual([0]);
    expect(acrossRows([], [], 3)).toEqual([0, 0, 0]);
  });
});

describe("a factored matrix", () => {
  it("is solved", () => {
    // Determinant 8: by Cramer's rule -4/8 and 16/8.
    const { solve, inverse } = factored([
      [4, 2],
      [2, 3],
    ]);
    expect(solve([2, 5])).toEqual(near([-0.5, 2]));
    expect(inverse()).toEqual([near([3 / 8, -2 / 8]), near([-2 / 8, 4 / 8])]);
  });

  it("is solved in three, back to what was put in", () => {
    const { solve } = factored([
      [4, 2, 0],
      [2, 5, 3],
      [0, 3, 6],
    ]);
    // Times (1, -2, 3): 4 - 4, 2 - 10 + 9, -6 + 18.
    expect(solve([0, 1, 12])).toEqual(near([1, -2, 3]));
  });

  it("counts a row for nothing that depends on those before it", () => {
    const { solve } = factored([
      [1, 1, 0],
      [1, 1, 0],
      [0, 0, 1],
    ]);
    expect(solve([3, 3, 5])).toEqual(near([3, 0, 5]));
  });

  it("takes a thousand-millionth of what stands on the diagonal for rounding, and ten times that for a row", () => {
    const at = (more: number): number[] =>
      factored([
        [1, 1],
        [1, 1 + more],
      ]).solve([1, 1 + more]);
    expect(at(1e-7)).toEqual(near([0, 1], 6));
    expect(at(1e-10)).toEqual(near([1, 0], 6));
  });

  it("takes it by the size of the row", () => {
    // What is left of the second is 1e-3, which is little beside 1e8.
    const { solve } = factored([
      [1e8, 1e8],
      [1e8, 1e8 + 1e-3],
    ]);
    expect(solve([1e8, 1e8])).toEqual(near([1, 0], 6));
  });

  it("counts a row for nothing that is no number", () => {
    const { solve } = factored([
      [4, Number.NaN, 0],
      [Number.NaN, Number.NaN, Number.NaN],
      [0, Number.NaN, 2],
    ]);
    expect(solve([8, 5, 0]).slice(0, 2)).toEqual(near([2, 0]));
  });
});

describe("what is left of a doubt", () => {
  const rest = (answers: readonly number[], rows: readonly (readonly number[])[], doubts: readonly number[]): number =>
    varianceLeft(answers, rows, doubts, factored(gram(rows, [])));

  it("is what nothing measures, and of what is measured the tape's own", () => {
    // The second freedom stays with its 1, the first has the reading's 4.
    expect(rest([1, 1], [[1, 0]], [4])).toBeCloseTo(5, 12);
    // Read at twice its size: half of the reading, a quarter of its variance.
    expect(rest([1, 1], [[2, 0]], [4])).toBeCloseTo(2, 12);
    expect(rest([3, 0], [[1, 0]], [4])).toBeCloseTo(36, 12);
    expect(rest([3, 4], [], [])).toBeCloseTo(25, 12);
  });

  it("is of a sum that was read what the two leave each other", () => {
    // Half and half of (1, 1): (1/2)² + (1/2)² + 1/4 · 8.
    expect(rest([1, 0], [[1, 1]], [8])).toBeCloseTo(2.5, 12);
  });
});
