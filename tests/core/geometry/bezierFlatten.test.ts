import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cubicFlatten } from "../../../src/core/geometry/bezierFlatten";
import { CoreBug } from "../../../src/core/result";
import { anyCubic, cubicOf, referencePoints, RUNS } from "../../support/curves";

/** mm. Rounding. */
const ROUNDING_ERROR = 1e-9;

/** The distance of p from the segment a–b, by the triangle's area and the two ends. */
function fromSegment(p: Plain, a: Plain, b: Plain): number {
  const base = Math.hypot(b.x - a.x, b.y - a.y);
  const along = base === 0 ? 0 : ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / base;
  if (along <= 0) return Math.hypot(p.x - a.x, p.y - a.y);
  if (along >= base) return Math.hypot(p.x - b.x, p.y - b.y);
  return Math.abs((p.x - a.x) * (b.y - a.y) - (p.y - a.y) * (b.x - a.x)) / base;
}

interface Plain {
  readonly x: number;
  readonly y: number;
}

describe("cubicFlatten", () => {
  it.each([0.05, 0.5, 5])("stays within %d mm of the curve and keeps its ends", (tolerance) => {
    fc.assert(
      fc.property(anyCubic, (c) => {
        const points = cubicFlatten(c, tolerance);
        expect(points[0]).toBe(c.a);
        expect(points.at(-1)).toBe(c.b);
        const chords = points.slice(1).map((q, i) => [points[i] ?? q, q] as const);
        const off = referencePoints(c, 300).map((p) => Math.min(...chords.map(([q, r]) => fromSegment(p, q, r))));
        expect(Math.max(...off)).toBeLessThanOrEqual(tolerance + ROUNDING_ERROR);
      }),
      { ...RUNS, numRuns: 60 },
    );
  });

  it("needs two points for a straight line and more for a finer tolerance", () => {
    expect(cubicFlatten(cubicOf([0, 0], [30, 15], [60, 30], [90, 45]), 1e-3).length).toBe(2);
    const arch = cubicOf([0, 0], [0, 80], [100, 80], [100, 0]);
    const coarse = cubicFlatten(arch, 1).length;
    const fine = cubicFlatten(arch, 0.01).length;
    expect(coarse).toBeLessThan(15);
    expect(fine / coarse).toBeGreaterThan(7); // a hundredth of the tolerance takes ten times the pieces
    expect(fine / coarse).toBeLessThan(11);
  });

  it.each([0, -1, Number.NaN])("refuses a tolerance of %d", (tolerance) => {
    expect(() => cubicFlatten(cubicOf([0, 0], [0, 80], [100, 80], [100, 0]), tolerance)).toThrow(CoreBug);
  });

  it("refuses a curve that is not finite", () => {
    expect(() => cubicFlatten(cubicOf([0, 0], [Number.NaN, 0], [1, 0], [2, 0]), 1)).toThrow(CoreBug);
  });
});
