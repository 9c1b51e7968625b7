import { Bezier } from "bezier-js";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  cubicLength,
  cubicLengthBetween,
  cubicLengthTo,
  cubicParameterAtLength,
} from "../../../src/core/geometry/bezierLength";
import {
  anyCubic,
  anyParameter,
  awkward,
  CIRCLE_CONTROL,
  cubicOf,
  cuspCurve,
  cuspLength,
  referenceLength,
  RUNS,
  spreadCubics,
  type TestCubic,
} from "../../support/curves";

/** mm. What the core promises. */
const PROMISED = 1e-6;
/** mm. Chords with extrapolation are this good except beside a cusp. */
const CHORD_ERROR = 1e-5;
/** mm. Chords beside a cusp, where extrapolation no longer helps. */
const CUSP_CHORD_ERROR = 1e-3;
/** mm. 64 parts by the library's own fixed quadrature, summed. */
const LIBRARY_ERROR = 1e-5;

const LIBRARY_PARTS = 64;

function libraryLength({ a, c1, c2, b }: TestCubic): number {
  const curve = new Bezier(a.x, a.y, c1.x, c1.y, c2.x, c2.y, b.x, b.y);
  let sum = 0;
  for (let i = 0; i < LIBRARY_PARTS; i++) sum += curve.split(i / LIBRARY_PARTS, (i + 1) / LIBRARY_PARTS).length();
  return sum;
}

describe("cubicLength", () => {
  it.each([
    ["evenly", cubicOf([0, 0], [30, 40], [60, 80], [90, 120]), 150],
    ["unevenly", cubicOf([0, 0], [3, 4], [9, 12], [90, 120]), 150],
    ["with both controls on their ends", cubicOf([0, 0], [0, 0], [90, 120], [90, 120]), 150],
    ["not at all", cubicOf([7, 9], [7, 9], [7, 9], [7, 9]), 0],
  ])("of a straight line run through %s", (_name, curve, length) => {
    expect(Math.abs(cubicLength(curve) - length)).toBeLessThan(PROMISED);
  });

  it("counts the way out and back where a straight line overshoots its end", () => {
    // x(t) = 450t(1 - t) + 100t³ turns where 450 - 900t + 300t² = 0.
    const turn = (900 - Math.sqrt(270_000)) / 600;
    const furthest = 450 * turn * (1 - turn) + 100 * turn ** 3;
    const curve = cubicOf([0, 0], [150, 0], [150, 0], [100, 0]);
    expect(Math.abs(cubicLength(curve) - (2 * furthest - 100))).toBeLessThan(PROMISED);
  });

  it.each([0.001, 0.01, 0.1])("of the parabola y = %dx² from 0 to 100", (k) => {
    const length = 50 * Math.sqrt(1 + 40_000 * k * k) + Math.asinh(200 * k) / (4 * k);
    const curve = cubicOf([0, 0], [100 / 3, 0], [200 / 3, (10_000 * k) / 3], [100, 10_000 * k]);
    expect(Math.abs(cubicLength(curve) - length)).toBeLessThan(PROMISED);
  });

  it.each([
    [-1, 1],
    [-0.3, 1],
    [-1, 0.001],
    [0, 1],
    [-1, 0],
    [1e-7, 1],
    [-1e-4, 0.1],
    [0.2, 0.9],
    // The cusp lies beyond the outermost node of the quadrature: easily missed.
    [-1, 0.004],
    [-1, 1e-5],
    [-0.002, 1],
  ])("of the cusp from u = %d to %d", (u, v) => {
    expect(Math.abs(cubicLength(cuspCurve(u, v)) - cuspLength(u, v))).toBeLessThan(PROMISED);
  });

  it("of a quarter circle exceeds the true arc by less than the curve's known 0.028 % of the radius", () => {
    const quarter = cubicOf([100, 0], [100, 100 * CIRCLE_CONTROL], [100 * CIRCLE_CONTROL, 100], [0, 100]);
    expect(cubicLength(quarter)).toBeGreaterThan(50 * Math.PI);
    expect(cubicLength(quarter)).toBeLessThan(50 * Math.PI * 1.00028);
    expect(Math.abs(cubicLength(quarter) - referenceLength(quarter))).toBeLessThan(PROMISED);
  });

  it.each(awkward)("of %s agrees with chords", (_name, curve) => {
    expect(Math.abs(cubicLength(curve) - referenceLength(curve, 1, 1 << 16))).toBeLessThan(CHORD_ERROR);
  });

  it("agrees with bezier-js on 300 random curves", () => {
    for (const curve of spreadCubics(1, 300)) {
      expect(Math.abs(cubicLength(curve) - libraryLength(curve))).toBeLessThan(LIBRARY_ERROR);
    }
  });

  it("does not hang on numbers that are not finite, or huge", () => {
    expect(cubicLength(cubicOf([0, 0], [Number.NaN, 0], [1, 1], [2, 2]))).toBeNaN();
    expect(cubicLength(cubicOf([0, 0], [Infinity, 0], [1, 1], [2, 2]))).toBeNaN();
    const huge = cubicLength(cubicOf([0, 0], [0, 1e15], [1e15, 1e15], [1e15, 0]));
    expect(huge).toBeCloseTo(2e15, -15);
  });
});

describe("cubicLengthTo and cubicLengthBetween", () => {
  it("agree with chords up to any parameter", () => {
    fc.assert(
      fc.property(anyCubic, anyParameter, (c, t) => {
        expect(Math.abs(cubicLengthTo(c, t) - referenceLength(c, t))).toBeLessThan(CUSP_CHORD_ERROR);
      }),
      RUNS,
    );
  });

  it("count backwards as negative", () => {
    const cusp = cuspCurve(-1, 1);
    expect(Math.abs(cubicLengthBetween(cusp, 0.75, 0.25) + 2 * cuspLength(0, 0.5))).toBeLessThan(PROMISED);
  });
});

describe("cubicParameterAtLength", () => {
  it("finds the parameter whose length, by chords, is the one asked for", () => {
    for (const curve of spreadCubics(2, 60)) {
      const total = referenceLength(curve);
      for (const share of [0.001, 0.3, 0.5, 0.95]) {
        const t = cubicParameterAtLength(curve, share * total);
        expect(Math.abs(referenceLength(curve, t) - share * total)).toBeLessThan(CUSP_CHORD_ERROR);
      }
    }
  });

  it.each([-0.9, -0.5, -0.01, 0.01, 0.3, 0.99])("finds u = %d on a cusp by its known length", (u) => {
    const t = cubicParameterAtLength(cuspCurve(-1, 1), cuspLength(-1, u));
    expect(t).toBeCloseTo((u + 1) / 2, 6);
  });

  it.each(["a loop", "both controls in one place", "a tight S"])("is a half at half the length of %s", (name) => {
    const curve = new Map(awkward).get(name);
    if (curve === undefined) throw new Error(name);
    expect(cubicParameterAtLength(curve, referenceLength(curve) / 2)).toBeCloseTo(0.5, 6);
  });

  it("stays within the curve, and is NaN for NaN", () => {
    const arch = cubicOf([0, 0], [0, 80], [100, 80], [100, 0]);
    expect(cubicParameterAtLength(arch, -5)).toBe(0);
    expect(cubicParameterAtLength(arch, 0)).toBe(0);
    expect(cubicParameterAtLength(arch, 1e6)).toBe(1);
    expect(cubicParameterAtLength(arch, Number.NaN)).toBeNaN();
    expect(cubicParameterAtLength(cubicOf([7, 9], [7, 9], [7, 9], [7, 9]), 0)).toBe(0);
  });

  it.each(awkward)("works on %s", (_name, curve) => {
    const total = cubicLength(curve);
    for (const share of [0.1, 0.37, 0.5, 0.9]) {
      const t = cubicParameterAtLength(curve, share * total);
      expect(Math.abs(referenceLength(curve, t) - share * referenceLength(curve))).toBeLessThan(CUSP_CHORD_ERROR);
    }
  });
});
