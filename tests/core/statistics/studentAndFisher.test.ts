/** Student's and Fisher's by their published formulas at whole numbers, worked by hand, and by what holds of any. */
import { describe, expect, it } from "vitest";
import { fisherAbove, studentQuantile } from "../../../src/core/statistics/student";

describe("studentQuantile", () => {
  // Abramowitz and Stegun 26.7.5. At z = 1: g₁ = 2/4, g₂ = 24/96, g₃ = 24/384.
  // At z = 2: g₁ = 10/4, g₂ = (160 + 128 + 6)/96 = 49/16, g₃ = (384 + 608 + 136 − 30)/384 = 183/64.
  it.each([
    [1, 1, 1 + 1 / 2 + 1 / 4 + 1 / 16],
    [1, 2, 1 + 1 / 4 + 1 / 16 + 1 / 128],
    [2, 1, 2 + 2.5 + 49 / 16 + 183 / 64],
    [2, 2, 2 + 2.5 / 2 + 49 / 64 + 183 / 512],
    [0, 3, 0],
  ])("of %s with %s degrees of freedom is the expansion by hand", (z, freedom, value) => {
    expect(studentQuantile(z, freedom)).toBeCloseTo(value, 12);
    expect(studentQuantile(-z, freedom)).toBeCloseTo(-value, 12);
  });
});

describe("fisherAbove", () => {
  it("is one half at 1 where both have as many degrees of freedom", () => {
    for (const freedom of [2, 7, 30]) expect(fisherAbove(1, freedom, freedom)).toBeCloseTo(0.5, 7);
  });

  it("is turned round with the ratio", () => {
    for (const [value, m, n] of [
      [2.5, 3, 20],
      [0.4, 5, 9],
      [1, 2, 40],
    ] as const)
      expect(fisherAbove(value, m, n) + fisherAbove(1 / value, n, m)).toBeCloseTo(1, 9);
  });

  it("counts all above 0, and nearly all above nearly nothing", () => {
    expect(fisherAbove(0, 3, 25)).toBe(1);
    expect(fisherAbove(0, 2, 2)).toBe(1);
    expect(fisherAbove(1e-6, 8, 25)).toBeGreaterThan(0.999);
    expect(fisherAbove(1e-6, 8, 25)).toBeLessThan(1);
  });
});
