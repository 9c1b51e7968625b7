/** The normal distribution against printed tables, a continued fraction, and integrals in closed form. */
import { describe, expect, it } from "vitest";
import {
  expectedAbove,
  NINE_OF_TEN,
  NORMAL_PEAK,
  normalBelow,
  weighedPlaces,
} from "../../../src/core/statistics/normal";
import { normalQuantile } from "../../../src/core/statistics/normalQuantile";

const density = (z: number): number => Math.exp(-(z ** 2) / 2) / Math.sqrt(2 * Math.PI);

/** Share above z > 1 by Laplace's continued fraction, φ(z) / (z + 1 / (z + 2 / (z + …))). */
function above(z: number): number {
  let under = z;
  for (let k = 400; k > 0; k -= 1) under = z + k / under;
  return density(z) / under;
}

describe("normalBelow", () => {
  // From the table of the normal distribution that every handbook of statistics prints.
  it.each([
    [0, 0.5],
    [0.5, 0.6914624613],
    [1, 0.8413447461],
    [1.5, 0.9331927987],
    [2, 0.9772498681],
    [3, 0.998650102],
  ])("is the table's at %s, and what is left of 1 at its negative", (z, below) => {
    expect(Math.abs(normalBelow(z) - below)).toBeLessThan(1e-7);
    expect(Math.abs(normalBelow(-z) - (1 - below))).toBeLessThan(1e-7);
  });

  it("has its rate in the middle, and nine of ten values within the bounds that are said to hold them", () => {
    expect(NORMAL_PEAK).toBeCloseTo(1 / Math.sqrt(2 * Math.PI), 12);
    expect(normalBelow(NINE_OF_TEN) - normalBelow(-NINE_OF_TEN)).toBeCloseTo(0.9, 5);
  });
});

describe("normalQuantile", () => {
  it.each([
    [0.5, 0],
    [0.6, 0.2533471031],
    [0.9, 1.2815515655],
    [0.95, 1.644853627],
    [0.975, 1.9599639845],
    [0.99, 2.326347874],
    [0.999, 3.0902323062],
  ])("of %s is %s, as printed, and of the rest its negative", (p, z) => {
    expect(Math.abs(normalQuantile(p) - z)).toBeLessThan(4e-7);
    expect(Math.abs(normalQuantile(1 - p) + z)).toBeLessThan(4e-7);
  });

  it.each([0.08, 0.07, 1e-3, 1e-6, 2e-11, 1e-11, 1e-13, 1e-20, 1e-40])(
    "leaves just %s beyond it, to the part in ten million that it promises",
    (p) => {
      const z = -normalQuantile(p);
      // A relative error e of z is one of about z² e of the share beyond it.
      expect(Math.abs(above(z) / p - 1)).toBeLessThan(2e-7 * (1 + z * z));
    },
  );

  it.each([0, 1, -0.1, 1.1, Number.NaN])("has none of %s", (p) => {
    expect(() => normalQuantile(p)).toThrow("no probability");
  });
});

describe("weighedPlaces", () => {
  const sumOf = (places: ReturnType<typeof weighedPlaces>, of: (at: number) => number): number =>
    places.reduce((sum, { at, weight }) => sum + weight * of(at), 0);

  it("comes to the whole line, its mean and its spread", () => {
    const places = weighedPlaces(50, 4, 50 - 7 * 4, 50 + 7 * 4, 6);
    expect(sumOf(places, () => 1)).toBeCloseTo(1, 9);
    expect(sumOf(places, (at) => at)).toBeCloseTo(50, 7);
    expect(sumOf(places, (at) => (at - 50) ** 2)).toBeCloseTo(16, 6);
  });

  it("weighs a part of the line as the table does: from one spread below to two above, 0.8186", () => {
    // Φ(2) − Φ(−1) = 0.9772498681 − 0.1586552539.
    expect(sumOf(weighedPlaces(-3, 2, -5, 1, 1), () => 1)).toBeCloseTo(0.8185946142, 9);
  });

  it("is eight places for each piece no longer than the finest, in order of the pieces, none outside", () => {
    // 10 in pieces of at most 3: four of 2.5.
    const places = weighedPlaces(0, 1, -1, 9, 3);
    expect(places).toHaveLength(32);
    for (const piece of [0, 1, 2, 3]) {
      const own = places.slice(8 * piece, 8 * piece + 8).map(({ at }) => at);
      expect(Math.min(...own)).toBeGreaterThan(-1 + 2.5 * piece);
      expect(Math.max(...own)).toBeLessThan(1.5 + 2.5 * piece);
      // As many on either side of the middle, each with its mirror image.
      expect(own.reduce((a, b) => a + b, 0) / 8).toBeCloseTo(0.25 + 2.5 * piece, 12);
    }
    expect(weighedPlaces(0, 1, -1, 1, 5)).toHaveLength(8);
    expect(weighedPlaces(0, 1, 1, 1, 5).map(({ at, weight }) => [at, weight])).toEqual(
      Array.from({ length: 8 }, () => [1, 0]),
    );
  });

  it("is exact for powers up to the fifteenth in one piece, where the distribution is as good as level", () => {
    // So wide a spread has the rate of its middle all over 1 to 3, to a part in a million million.
    const level = 1e7;
    const places = weighedPlaces(0, level, 1, 3, 2).map(({ at, weight }) => ({
      at,
      weight: (weight * level) / NORMAL_PEAK,
    }));
    for (const power of [0, 1, 2, 7, 15]) {
      const exact = (3 ** (power + 1) - 1) / (power + 1);
      expect(sumOf(places, (at) => at ** power) / exact).toBeCloseTo(1, 11);
    }
  });
});

describe("expectedAbove", () => {
  it("is the spread by the rate of the middle where the mean is 0", () => {
    expect(expectedAbove(0, 3)).toBeCloseTo(3 / Math.sqrt(2 * Math.PI), 6);
  });

  it.each([
    [1.2, 0.8],
    [-0.7, 1.3],
    [-4, 2],
    [30, 2],
  ])("of mean %s and spread %s is what summing value by value gives", (mean, spread) => {
    let sum = 0;
    const step = spread / 500;
    for (let at = mean - 8 * spread + step / 2; at < mean + 8 * spread; at += step)
      sum += (Math.max(at, 0) * density((at - mean) / spread) * step) / spread;
    expect(expectedAbove(mean, spread)).toBeCloseTo(sum, 5);
    // What lies above 0, less what lies below, is the mean.
    expect(expectedAbove(mean, spread) - expectedAbove(-mean, spread)).toBeCloseTo(mean, 9);
  });
});
