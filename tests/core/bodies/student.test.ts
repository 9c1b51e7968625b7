/** Quantiles and tails against the usual printed tables (from memory; every statistics handbook has them). */
import { describe, expect, it } from "vitest";
import { fisherAbove, studentQuantile } from "../../../src/core/statistics/student";

describe("studentQuantile", () => {
  it.each([
    [1.644853627, 20, 1.7247],
    [1.644853627, 25, 1.7081],
    [1.644853627, 30, 1.6973],
    [1.644853627, 60, 1.6706],
    [1.959963985, 20, 2.086],
    [1.959963985, 30, 2.0423],
    [2.575829304, 30, 2.75],
  ])("of the normal quantile %s with %s degrees of freedom is %s", (z, freedom, table) => {
    expect(studentQuantile(z, freedom)).toBeCloseTo(table, 3);
    expect(studentQuantile(-z, freedom)).toBeCloseTo(-table, 3);
  });

  it("is the normal one with very many degrees of freedom", () => {
    expect(studentQuantile(1.644853627, 1e9)).toBeCloseTo(1.644853627, 7);
  });
});

describe("fisherAbove", () => {
  it.each([
    [0.05, 1, 20, 4.351],
    [0.05, 3, 20, 3.098],
    [0.05, 5, 25, 2.603],
    [0.05, 10, 30, 2.165],
    [0.01, 3, 20, 4.938],
    [0.01, 5, 20, 4.103],
  ])("is %s for F with %s and %s degrees of freedom above %s", (probability, m, n, value) => {
    expect(Math.abs(fisherAbove(value, m, n) - probability)).toBeLessThan(0.003);
  });

  it("is everything above nothing, and falls", () => {
    expect(fisherAbove(0, 3, 25)).toBe(1);
    expect(fisherAbove(-1, 3, 25)).toBe(1);
    const row = [0.1, 0.5, 1, 2, 4, 8].map((value) => fisherAbove(value, 3, 25));
    expect(row).toEqual(row.toSorted((a, b) => b - a));
    expect(row.every((value) => value > 0 && value < 1)).toBe(true);
  });
});
