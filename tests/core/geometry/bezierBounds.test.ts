import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cubicBounds, cubicHullBounds } from "../../../src/core/geometry/bezierBounds";
import { areBoundsNear, isWithinBounds, joinBounds } from "../../../src/core/geometry/bounds";
import { piecePoint } from "../../../src/core/geometry/point";
import { anyCubic, cubicOf, referencePoints, RUNS } from "../../support/curves";
import { expectPointClose } from "../../support/matchers";

/** mm. Rounding. */
const ROUNDING_ERROR = 1e-10;
/** mm. 3000 samples of curves up to 1.5 m long miss an extreme by less than this. */
const SAMPLING_ERROR = 2e-3;

const box = (minX: number, minY: number, maxX: number, maxY: number) => ({
  min: piecePoint(minX, minY),
  max: piecePoint(maxX, maxY),
});

describe("cubicBounds", () => {
  it("of an arch reach its top, which lies at three quarters of its controls", () => {
    const { min, max } = cubicBounds(cubicOf([0, 0], [0, 80], [100, 80], [100, 0]));
    expectPointClose(min, { x: 0, y: 0 }, 0);
    expectPointClose(max, { x: 100, y: 60 }, ROUNDING_ERROR);
  });

  it("hold every sampled point, and are met on all four sides", () => {
    fc.assert(
      fc.property(anyCubic, (c) => {
        const { min, max } = cubicBounds(c);
        const points = referencePoints(c, 3000);
        const xs = points.map((p) => p.x);
        const ys = points.map((p) => p.y);
        const sampled = {
          min: { x: Math.min(...xs), y: Math.min(...ys) },
          max: { x: Math.max(...xs), y: Math.max(...ys) },
        };
        expect(min.x).toBeLessThanOrEqual(sampled.min.x + ROUNDING_ERROR);
        expect(min.y).toBeLessThanOrEqual(sampled.min.y + ROUNDING_ERROR);
        expect(max.x).toBeGreaterThanOrEqual(sampled.max.x - ROUNDING_ERROR);
        expect(max.y).toBeGreaterThanOrEqual(sampled.max.y - ROUNDING_ERROR);
        expectPointClose(min, sampled.min, SAMPLING_ERROR);
        expectPointClose(max, sampled.max, SAMPLING_ERROR);
      }),
      { ...RUNS, numRuns: 100 },
    );
  });
});

describe("boxes", () => {
  it("of the hull hold all four control points and no more", () => {
    expect(cubicHullBounds(cubicOf([0, 5], [-10, 80], [100, 90], [120, 0]))).toEqual(box(-10, 0, 120, 90));
  });

  it("join to the smallest box that holds both", () => {
    expect(joinBounds(box(0, 0, 10, 10), box(5, -3, 8, 20))).toEqual(box(0, -3, 10, 20));
  });

  it.each([
    [box(11, 0, 20, 10), 0.9, false],
    [box(11, 0, 20, 10), 1, true],
    [box(0, 11, 10, 20), 0.9, false],
    [box(-9, 0, -1, 10), 0.9, false],
    [box(0, -9, 10, -1), 0.9, false],
    [box(2, 2, 3, 3), 0, true],
  ])("are near or not", (other, slack, near) => {
    expect(areBoundsNear(box(0, 0, 10, 10), other, slack)).toBe(near);
    expect(areBoundsNear(other, box(0, 0, 10, 10), slack)).toBe(near);
  });

  it.each([
    [5, 5, true],
    [-1, 5, true],
    [-1.1, 5, false],
    [11.1, 5, false],
    [5, -1.1, false],
    [5, 11.1, false],
  ])("hold (%d, %d) within 1 mm: %s", (x, y, held) => {
    expect(isWithinBounds(piecePoint(x, y), box(0, 0, 10, 10), 1)).toBe(held);
  });
});
