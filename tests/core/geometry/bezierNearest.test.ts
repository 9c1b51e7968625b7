import { Bezier } from "bezier-js";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cubicNearest } from "../../../src/core/geometry/bezierNearest";
import { piecePoint } from "../../../src/core/geometry/point";
import { CURVE_ACCURACY, SOLVER_ACCURACY } from "../../../src/core/tolerance";
import {
  anyCubic,
  anyParameter,
  anyPoint,
  awkward,
  CIRCLE_CONTROL,
  cubicOf,
  cuspCurve,
  referenceDistance,
  referencePoint,
  referencePoints,
  RUNS,
  spread,
  spreadCubics,
} from "../../support/curves";
import { expectPointClose } from "../../support/matchers";

/** mm. Two ways of evaluating the same polynomial differ by rounding only. */
const ROUNDING_ERROR = 1e-10;

const arch = cubicOf([0, 0], [0, 80], [100, 80], [100, 0]);

describe("cubicNearest", () => {
  it("is no farther than any sampled place, and tells its own place and distance", () => {
    fc.assert(
      fc.property(anyCubic, anyPoint, (c, p) => {
        const near = cubicNearest(c, p);
        const there = referencePoint(c, near.t);
        expectPointClose(near.point, there, ROUNDING_ERROR);
        expect(near.distance).toBeCloseTo(Math.hypot(there.x - p.x, there.y - p.y), 9);
        const sampled = referencePoints(c, 300).map((q) => Math.hypot(q.x - p.x, q.y - p.y));
        expect(near.distance).toBeLessThanOrEqual(Math.min(...sampled) + SOLVER_ACCURACY);
      }),
      RUNS,
    );
  });

  it("agrees with refined dense sampling", () => {
    const next = spread(3);
    for (const c of spreadCubics(4, 100)) {
      const p = piecePoint(400 * next() - 50, 400 * next() - 50);
      expect(Math.abs(cubicNearest(c, p).distance - referenceDistance(c, p))).toBeLessThan(CURVE_ACCURACY / 100);
    }
  });

  it.each(awkward)("agrees with refined dense sampling on %s", (_name, c) => {
    const next = spread(5);
    for (let i = 0; i < 10; i++) {
      const p = piecePoint(200 * next() - 50, 200 * next() - 50);
      expect(Math.abs(cubicNearest(c, p).distance - referenceDistance(c, p))).toBeLessThan(CURVE_ACCURACY / 100);
    }
  });

  it("is never farther than what bezier-js finds", () => {
    const next = spread(6);
    for (const c of spreadCubics(7, 300)) {
      const p = piecePoint(300 * next(), 300 * next());
      const library = new Bezier(c.a.x, c.a.y, c.c1.x, c.c1.y, c.c2.x, c.c2.y, c.b.x, c.b.y).project(p);
      const libraryDistance = Math.hypot(library.x - p.x, library.y - p.y);
      expect(cubicNearest(c, p).distance).toBeLessThanOrEqual(libraryDistance + SOLVER_ACCURACY);
    }
  });

  it("finds a point that lies on the curve", () => {
    fc.assert(
      fc.property(anyCubic, anyParameter, (c, t) => {
        const on = referencePoint(c, t);
        expect(cubicNearest(c, piecePoint(on.x, on.y)).distance).toBeLessThanOrEqual(SOLVER_ACCURACY);
      }),
      RUNS,
    );
  });

  it("is the very end, with t 0 or 1, for an end point and for points beyond it", () => {
    expect(cubicNearest(arch, arch.a)).toEqual({ t: 0, point: arch.a, distance: 0 });
    expect(cubicNearest(arch, arch.b)).toEqual({ t: 1, point: arch.b, distance: 0 });
    expect(cubicNearest(arch, piecePoint(-3, -4))).toEqual({ t: 0, point: arch.a, distance: 5 });
    expect(cubicNearest(arch, piecePoint(103, -4))).toEqual({ t: 1, point: arch.b, distance: 5 });
  });

  it("finds the top of a symmetric arch from above", () => {
    const near = cubicNearest(arch, piecePoint(50, 75));
    expect(near.t).toBeCloseTo(0.5, 9);
    expect(near.distance).toBeCloseTo(15, 9);
  });

  it("does not settle for the wrong arm of a narrow bend", () => {
    // Both arms run close by the point; the right one is 1 mm nearer.
    const bend = cubicOf([0, 0], [0, 400], [10, 400], [10, 0]);
    const near = cubicNearest(bend, piecePoint(5.5, 10));
    expect(near.t).toBeGreaterThan(0.9);
    expect(Math.abs(near.distance - referenceDistance(bend, piecePoint(5.5, 10)))).toBeLessThan(CURVE_ACCURACY / 100);
  });

  it("from the centre of an arc, where all places are nearly as near", () => {
    const quarter = cubicOf([100, 0], [100, 100 * CIRCLE_CONTROL], [100 * CIRCLE_CONTROL, 100], [0, 100]);
    expect(cubicNearest(quarter, piecePoint(0, 0)).distance).toBeCloseTo(100, 6);
  });

  it("finds the tip of a cusp from behind it", () => {
    const near = cubicNearest(cuspCurve(-1, 1), piecePoint(-20, 0));
    expect(near.distance).toBeCloseTo(20, 9);
    expect(near.t).toBeCloseTo(0.5, 6);
  });
});
