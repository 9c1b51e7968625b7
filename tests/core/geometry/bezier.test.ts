import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  cubicCurvatureAt,
  cubicMap,
  cubicPointAt,
  cubicReverse,
  cubicTangentAt,
} from "../../../src/core/geometry/bezier";
import { sheetPoint } from "../../../src/core/geometry/point";
import {
  anyCubic,
  anyParameter,
  awkward,
  CIRCLE_CONTROL,
  cubicOf,
  cuspCurve,
  referencePoint,
  RUNS,
} from "../../support/curves";
import { expectPointClose } from "../../support/matchers";

/** mm. Two ways of evaluating the same polynomial differ by rounding only. */
const ROUNDING_ERROR = 1e-10;
/** Radians. A chord over a millionth of the curve against the tangent. */
const CHORD_ERROR = 1e-4;

const quarter = cubicOf([100, 0], [100, 100 * CIRCLE_CONTROL], [100 * CIRCLE_CONTROL, 100], [0, 100]);
const arch = cubicOf([0, 0], [0, 80], [100, 80], [100, 0]);

describe("cubicPointAt", () => {
  it("agrees with de Casteljau's construction", () => {
    fc.assert(
      fc.property(anyCubic, anyParameter, (c, t) => {
        expectPointClose(cubicPointAt(c, t), referencePoint(c, t), ROUNDING_ERROR);
      }),
      RUNS,
    );
  });

  it("is exactly the end points at 0 and 1", () => {
    fc.assert(
      fc.property(anyCubic, (c) => {
        expectPointClose(cubicPointAt(c, 0), c.a, 0);
        expectPointClose(cubicPointAt(c, 1), c.b, 0);
      }),
      RUNS,
    );
  });

  it("is the top of a symmetric arch halfway", () => {
    expectPointClose(cubicPointAt(arch, 0.5), { x: 50, y: 60 }, ROUNDING_ERROR);
  });
});

describe("cubicTangentAt", () => {
  it.each([
    [0, Math.PI / 2],
    [0.5, 0],
    [1, -Math.PI / 2],
  ])("of a symmetric arch at %d is %d", (t, direction) => {
    expect(cubicTangentAt(arch, t)).toBeCloseTo(direction, 12);
  });

  it.each([
    ["the first control on the start", 0, Math.atan2(80, 60)],
    ["the second control on the end", 1, Math.atan2(-80, 60)],
    ["both controls on their ends", 0, Math.atan2(50, 100)],
    ["both controls on their ends", 1, Math.atan2(50, 100)],
    ["both controls on the start", 0, Math.atan2(50, 100)],
    ["a cusp at the start", 0, 0],
    ["a cusp at the end", 1, Math.PI],
    ["a point", 0, 0],
    ["a point", 0.5, 0],
    ["a point", 1, 0],
  ])("with %s, at %d, is that towards the next distinct point", (name, t, direction) => {
    const curve = new Map(awkward).get(name);
    if (curve === undefined) throw new Error(name);
    expect(cubicTangentAt(curve, t)).toBeCloseTo(direction, 9);
  });

  it("does not jump beside a control that coincides with its end", () => {
    const start = cubicOf([0, 0], [0, 0], [60, 80], [100, 0]);
    const end = cubicOf([0, 0], [40, 80], [100, 0], [100, 0]);
    for (const gap of [1e-4, 1e-6, 1e-8, 1e-10, 0]) {
      expect(cubicTangentAt(start, gap)).toBeCloseTo(Math.atan2(80, 60), 3);
      expect(cubicTangentAt(end, 1 - gap)).toBeCloseTo(Math.atan2(-80, 60), 3);
    }
  });

  it("takes a control within a ten-thousandth of a millimetre of its end as coinciding", () => {
    const curve = cubicOf([0, 0], [0, -9e-5], [60, 80], [100, 0]);
    expect(cubicTangentAt(curve, 0)).toBeCloseTo(Math.atan2(80, 60), 9);
  });

  it("arrives at a cusp one way and leaves it the other", () => {
    const cusp = cuspCurve(-1, 1); // comes in along -x, leaves along +x
    expect(Math.abs(cubicTangentAt(cusp, 0.4999))).toBeCloseTo(Math.PI, 3);
    expect(cubicTangentAt(cusp, 0.5)).toBeCloseTo(0, 9);
    expect(cubicTangentAt(cusp, 0.5001)).toBeCloseTo(0, 3);
  });

  it("is π and not -π along a level line going back", () => {
    const back = cubicOf([90, 5], [60, 5], [30, 5], [0, 5]);
    expect([0, 0.5, 1].map((t) => cubicTangentAt(back, t))).toEqual([Math.PI, Math.PI, Math.PI]);
  });

  it("agrees with a short chord", () => {
    fc.assert(
      fc.property(anyCubic, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (c, t) => {
        const p = referencePoint(c, t - 1e-6);
        const q = referencePoint(c, t + 1e-6);
        fc.pre(Math.hypot(q.x - p.x, q.y - p.y) > 1e-4); // elsewhere the chord shows rounding, not direction
        const off = cubicTangentAt(c, t) - Math.atan2(q.y - p.y, q.x - p.x);
        expect(Math.abs(Math.sin(off / 2))).toBeLessThan(CHORD_ERROR);
      }),
      RUNS,
    );
  });
});

describe("cubicCurvatureAt", () => {
  it("at an end is two thirds of the other control's distance from the tangent over the square of the leg", () => {
    const legs = 100 * CIRCLE_CONTROL;
    const known = ((2 / 3) * (100 - legs)) / legs ** 2; // Farin, ch. 11
    expect(cubicCurvatureAt(quarter, 0)).toBeCloseTo(known, 12);
    expect(cubicCurvatureAt(quarter, 1)).toBeCloseTo(known, 12);
  });

  it("is within 3 % of 1/radius on a quarter circle, positive from +x to +y and negative back", () => {
    for (const t of [0, 0.25, 0.5, 0.75, 1]) {
      const curvature = cubicCurvatureAt(quarter, t);
      expect(curvature).toBeGreaterThan(0.0097);
      expect(curvature).toBeLessThan(0.0103);
      expect(cubicCurvatureAt(cubicReverse(quarter), 1 - t)).toBeCloseTo(-curvature, 12);
    }
  });

  it("is 2k at the bottom of the parabola y = kx²", () => {
    // x runs evenly from -100 to 100 and y = 0.01x² from 100 over 0 to 100, so y's controls are at -100/3.
    const parabola = cubicOf([-100, 100], [-100 / 3, -100 / 3], [100 / 3, -100 / 3], [100, 100]);
    expect(cubicCurvatureAt(parabola, 0.5)).toBeCloseTo(0.02, 12);
  });

  it("is 0 on a straight line and infinite at a cusp, with the sign of the turn", () => {
    expect(cubicCurvatureAt(cubicOf([0, 0], [30, 15], [60, 30], [90, 45]), 0.4)).toBeCloseTo(0, 12);
    expect(cubicCurvatureAt(cuspCurve(0, 1), 0)).toBe(Infinity);
    expect(cubicCurvatureAt(cubicReverse(cuspCurve(0, 1)), 1)).toBe(-Infinity);
    expect(cubicCurvatureAt(cubicOf([7, 9], [7, 9], [7, 9], [7, 9]), 0)).toBe(0);
  });
});

describe("cubicReverse and cubicMap", () => {
  it("reverse visits the same points from the other end", () => {
    for (const t of [0, 0.2, 0.7, 1]) {
      expectPointClose(cubicPointAt(cubicReverse(quarter), t), referencePoint(quarter, 1 - t), ROUNDING_ERROR);
    }
  });

  it("map moves every point of the curve with an affine map", () => {
    const onSheet = cubicMap(quarter, (p) => sheetPoint(2 * p.x + p.y + 5, 3 * p.y - 1));
    for (const t of [0, 0.3, 1]) {
      const { x, y } = referencePoint(quarter, t);
      expectPointClose(cubicPointAt(onSheet, t), { x: 2 * x + y + 5, y: 3 * y - 1 }, ROUNDING_ERROR);
    }
  });
});
