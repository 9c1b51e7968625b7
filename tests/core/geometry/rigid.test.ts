import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cubicLength } from "../../../src/core/geometry/bezierLength";
import { cubicEdge, edgeLength, lineEdge } from "../../../src/core/geometry/edgeCurve";
import { signedArea } from "../../../src/core/geometry/outline";
import { piecePoint, type PiecePoint } from "../../../src/core/geometry/point";
import {
  composeRigid,
  invertRigid,
  moveCubicRigidly,
  moveEdgeRigidly,
  moveRigidly,
  rigidMotion,
  shiftMotion,
  type Rigid,
} from "../../../src/core/geometry/rigid";
import { radians, radiansFromDegrees } from "../../../src/core/units";
import { anyCubic, anyPoint, RUNS } from "../../support/curves";
import { expectPointClose } from "../../support/matchers";

/** mm. Rounding through a turn and a shift of a few hundred mm. */
const ROUNDING_ERROR = 1e-9;

const at = piecePoint;
const anyAngle = fc.integer({ min: -720, max: 720 }).map((degrees) => radiansFromDegrees(degrees));
const anyMotion: fc.Arbitrary<Rigid<"piece">> = fc
  .tuple(anyPoint, anyAngle, anyPoint)
  .map(([centre, angle, by]) => rigidMotion(centre, angle, by.x, by.y));
const apart = (p: PiecePoint, q: PiecePoint): number => Math.hypot(p.x - q.x, p.y - q.y);

const turnOf = (a: PiecePoint, b: PiecePoint, c: PiecePoint): number =>
  (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

describe("rigidMotion", () => {
  it("turns +x towards +y about its centre, then shifts", () => {
    const quarter = rigidMotion(at(10, 20), radians(Math.PI / 2));
    expectPointClose(moveRigidly(quarter, at(15, 20)), { x: 10, y: 25 }, ROUNDING_ERROR);
    expectPointClose(moveRigidly(quarter, at(10, 20)), { x: 10, y: 20 }, ROUNDING_ERROR);
    const shifted = rigidMotion(at(10, 20), radians(Math.PI / 2), 100, -7);
    expectPointClose(moveRigidly(shifted, at(15, 20)), { x: 110, y: 18 }, ROUNDING_ERROR);
  });

  it("keeps distances and the sense of turning", () => {
    fc.assert(
      fc.property(anyMotion, anyPoint, anyPoint, anyPoint, (motion, p, q, r) => {
        const [movedP, movedQ, movedR] = [p, q, r].map((point) => moveRigidly(motion, point));
        if (movedP === undefined || movedQ === undefined || movedR === undefined) throw new Error("no points");
        expect(Math.abs(apart(movedP, movedQ) - apart(p, q))).toBeLessThan(ROUNDING_ERROR);
        expect(turnOf(movedP, movedQ, movedR)).toBeCloseTo(turnOf(p, q, r), 5);
      }),
      RUNS,
    );
  });
});

describe("shiftMotion", () => {
  it("takes one point to the other and all others alike", () => {
    const motion = shiftMotion(at(1, 2), at(11, -8));
    expect(moveRigidly(motion, at(1, 2))).toEqual(at(11, -8));
    expect(moveRigidly(motion, at(0, 0))).toEqual(at(10, -10));
  });
});

describe("composeRigid and invertRigid", () => {
  it("a quarter turn and then a shift is not the shift and then the turn", () => {
    const turn = rigidMotion(at(0, 0), radians(Math.PI / 2));
    const shift = shiftMotion(at(0, 0), at(10, 0));
    expectPointClose(moveRigidly(composeRigid(turn, shift), at(1, 0)), { x: 10, y: 1 }, ROUNDING_ERROR);
    expectPointClose(moveRigidly(composeRigid(shift, turn), at(1, 0)), { x: 0, y: 11 }, ROUNDING_ERROR);
  });

  it("do the one and then the other", () => {
    fc.assert(
      fc.property(anyMotion, anyMotion, anyPoint, (first, next, p) => {
        const stepwise = moveRigidly(next, moveRigidly(first, p));
        expectPointClose(moveRigidly(composeRigid(first, next), p), stepwise, ROUNDING_ERROR);
      }),
      RUNS,
    );
  });

  it("undo a motion from either side", () => {
    fc.assert(
      fc.property(anyMotion, anyPoint, (motion, p) => {
        expectPointClose(moveRigidly(invertRigid(motion), moveRigidly(motion, p)), p, ROUNDING_ERROR);
        expectPointClose(moveRigidly(motion, moveRigidly(invertRigid(motion), p)), p, ROUNDING_ERROR);
        expectPointClose(moveRigidly(composeRigid(motion, invertRigid(motion)), p), p, ROUNDING_ERROR);
      }),
      RUNS,
    );
  });

  it("do not stretch after ten thousand small turns", () => {
    const step = rigidMotion(at(30, 40), radians(0.001));
    let motion = step;
    for (let i = 1; i < 10_000; i++) motion = composeRigid(motion, step);
    const [p, q] = [moveRigidly(motion, at(0, 0)), moveRigidly(motion, at(300, 400))];
    expect(Math.abs(apart(p, q) - 500)).toBeLessThan(ROUNDING_ERROR);
    expect(motion.angle).toBeCloseTo(10, 9);
  });
});

describe("curves moved rigidly", () => {
  it("keep their length and area, and end where their ends go", () => {
    fc.assert(
      fc.property(anyMotion, anyCubic, (motion, c) => {
        const moved = moveCubicRigidly(motion, c);
        expect(Math.abs(cubicLength(moved) - cubicLength(c))).toBeLessThan(2e-6);
        const edges = [cubicEdge(c), lineEdge(c.b, c.a)];
        const movedEdges = edges.map((edge) => moveEdgeRigidly(motion, edge));
        expect(signedArea(movedEdges)).toBeCloseTo(signedArea(edges), 5);
        expect(movedEdges[1]?.curve).toBeNull();
        expect(movedEdges.map(edgeLength)[1]).toBeCloseTo(apart(c.a, c.b), 8);
        expectPointClose(moved.b, moveRigidly(motion, c.b), 0);
      }),
      RUNS,
    );
  });
});
