/** When readings of one measure agree. The factors are held against the distribution of the range itself, worked out here. */
import { describe, expect, it } from "vitest";
import { apartOf, readingsAgree } from "../../../src/core/measures/repeatability";

/** Normal density and distribution by the midpoint rule: no outside library is needed for four digits. */
const density = (z: number): number => Math.exp(-(z ** 2) / 2) / Math.sqrt(2 * Math.PI);
const STEP = 0.01;
const GRID = Array.from({ length: 1600 }, (_, at) => -8 + (at + 0.5) * STEP);
const BELOW = GRID.reduce<number[]>((sums, z) => [...sums, (sums.at(-1) ?? 0) + density(z) * STEP], []);
/** Share below the upper edge of a cell, and between the cells. */
const below = (z: number): number => {
  const place = Math.min(Math.max((z + 8) / STEP - 1, 0), GRID.length - 1);
  const [low, high] = [BELOW[Math.floor(place)] ?? 0, BELOW[Math.ceil(place)] ?? 1];
  return low + (high - low) * (place - Math.floor(place));
};

/** P(range of n standard normal values ≤ w) = n ∫ φ(z) [Φ(z + w) − Φ(z)]^(n − 1) dz. */
const rangeWithin = (w: number, n: number): number =>
  n * GRID.reduce((sum, z) => sum + density(z) * (below(z + w) - below(z)) ** (n - 1) * STEP, 0);

describe("readingsAgree", () => {
  // Waist: the usual spread is 10 mm.
  it.each([2, 3, 4, 5])("draws the line where %d readings of nothing but the tape lie 95 times in 100", (count) => {
    const apart = (by: number): readonly number[] => [
      700,
      700 + by,
      ...Array.from({ length: count - 2 }, () => 700 + by / 2),
    ];
    const least =
      Array.from({ length: 600 }, (_, at) => at / 10).find((by) => !readingsAgree("waistGirth", apart(by))) ?? 0;
    expect(rangeWithin(least / 10, count)).toBeGreaterThan(0.949);
    expect(rangeWithin(least / 10, count)).toBeLessThan(0.952);
  });

  it("for two readings is 1.96 √2 spreads: 27.7 mm at the waist, 13.9 mm at the shoulder", () => {
    expect(readingsAgree("waistGirth", [700, 727.7])).toBe(true);
    expect(readingsAgree("waistGirth", [700, 727.8])).toBe(false);
    expect(readingsAgree("shoulderLength", [120, 133.8])).toBe(true);
    expect(readingsAgree("shoulderLength", [133.9, 120])).toBe(false);
  });

  it("has nothing to say of one reading", () => {
    expect(readingsAgree("waistGirth", [700])).toBe(true);
  });

  it("goes by the two furthest from each other", () => {
    expect(apartOf([702, 690, 711, 700])).toBe(21);
    expect(apartOf([700])).toBe(0);
  });
});
