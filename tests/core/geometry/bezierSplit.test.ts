import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cubicLength } from "../../../src/core/geometry/bezierLength";
import { cubicPart, cubicSplit } from "../../../src/core/geometry/bezierSplit";
import { SOLVER_ACCURACY } from "../../../src/core/tolerance";
import { anyCubic, anyParameter, referencePoint, RUNS } from "../../support/curves";
import { expectPointClose } from "../../support/matchers";

/** mm. Rounding of a few hundred mm through some ten operations. */
const ROUNDING_ERROR = 1e-10;
const shares = [0, 0.1, 0.5, 0.77, 1];

describe("cubicSplit", () => {
  it("keeps the shape: the parts run through the same points", () => {
    fc.assert(
      fc.property(anyCubic, anyParameter, (c, t) => {
        const [first, second] = cubicSplit(c, t);
        for (const share of shares) {
          expectPointClose(referencePoint(first, share), referencePoint(c, share * t), ROUNDING_ERROR);
          expectPointClose(referencePoint(second, share), referencePoint(c, t + share * (1 - t)), ROUNDING_ERROR);
        }
      }),
      RUNS,
    );
  });

  it("keeps the ends and makes the cut one point", () => {
    fc.assert(
      fc.property(anyCubic, anyParameter, (c, t) => {
        const [first, second] = cubicSplit(c, t);
        expect(first.a).toBe(c.a);
        expect(second.b).toBe(c.b);
        expect(first.b).toBe(second.a);
      }),
      RUNS,
    );
  });

  it("keeps the length", () => {
    fc.assert(
      fc.property(anyCubic, anyParameter, (c, t) => {
        const [first, second] = cubicSplit(c, t);
        expect(Math.abs(cubicLength(first) + cubicLength(second) - cubicLength(c))).toBeLessThan(2 * SOLVER_ACCURACY);
      }),
      RUNS,
    );
  });
});

describe("cubicPart", () => {
  it("runs through the points between its two parameters, forwards and backwards", () => {
    fc.assert(
      fc.property(anyCubic, anyParameter, anyParameter, (c, t0, t1) => {
        const part = cubicPart(c, t0, t1);
        for (const share of shares) {
          expectPointClose(referencePoint(part, share), referencePoint(c, t0 + share * (t1 - t0)), ROUNDING_ERROR);
        }
      }),
      RUNS,
    );
  });

  it("keeps the very end points", () => {
    fc.assert(
      fc.property(anyCubic, anyParameter, (c, t) => {
        expect(cubicPart(c, 0, t).a).toBe(c.a);
        expect(cubicPart(c, t, 1).b).toBe(c.b);
        expect(cubicPart(c, 1, 0).a).toBe(c.b);
      }),
      RUNS,
    );
  });
});
