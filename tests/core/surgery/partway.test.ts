/** A motion on its way, against closed forms of turns and shifts. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { piecePoint, type PiecePoint } from "../../../src/core/geometry/point";
import { moveRigidly, rigidMotion, shiftMotion } from "../../../src/core/geometry/rigid";
import { partway } from "../../../src/core/surgery/partway";
import { radians } from "../../../src/core/units";
import { anyAmount } from "../../support/amounts";

const anyPoint = fc.tuple(anyAmount(-900, 900), anyAmount(-900, 900)).map(([x, y]) => piecePoint(x, y));
const anyTurn = anyAmount(-3, 3).map(radians);
const anyShare = anyAmount(0, 1);

const near = (a: PiecePoint, b: PiecePoint): number => Math.hypot(a.x - b.x, a.y - b.y);

/** Where a turn about a hinge takes a point, by the school form. */
function turned(hinge: PiecePoint, angle: number, p: PiecePoint): PiecePoint {
  const [dx, dy] = [p.x - hinge.x, p.y - hinge.y];
  return piecePoint(
    hinge.x + dx * Math.cos(angle) - dy * Math.sin(angle),
    hinge.y + dx * Math.sin(angle) + dy * Math.cos(angle),
  );
}

describe("partway", () => {
  it("turns a quarter of the way to a right angle by 22.5 degrees about the same hinge", () => {
    const motion = rigidMotion(piecePoint(100, 50), radians(Math.PI / 2));
    // From 200 mm to the right of the hinge: 200 cos 22.5° and 200 sin 22.5°.
    const at = moveRigidly(partway(motion, 0.25), piecePoint(300, 50));
    expect(at.x).toBeCloseTo(100 + 184.7759065, 6);
    expect(at.y).toBeCloseTo(50 + 76.5366865, 6);
  });

  it("keeps the hinge of any turn where it is, and turns by that share of the angle", () => {
    fc.assert(
      fc.property(anyPoint, anyTurn, anyShare, anyPoint, (hinge, angle, share, p) => {
        const on = partway(rigidMotion(hinge, angle), share);
        expect(near(moveRigidly(on, hinge), hinge)).toBeLessThan(1e-8);
        expect(near(moveRigidly(on, p), turned(hinge, share * angle, p))).toBeLessThan(1e-8);
      }),
    );
  });

  it("slides straight", () => {
    fc.assert(
      fc.property(anyPoint, anyPoint, anyShare, (from, to, share) => {
        const at = moveRigidly(partway(shiftMotion(from, to), share), from);
        expect(near(at, piecePoint(from.x + share * (to.x - from.x), from.y + share * (to.y - from.y)))).toBeLessThan(
          1e-9,
        );
      }),
    );
  });

  it("is nothing at the start and the whole motion at the end", () => {
    fc.assert(
      fc.property(anyPoint, anyTurn, anyAmount(-80, 80), anyAmount(-80, 80), anyPoint, (hinge, angle, dx, dy, p) => {
        const motion = rigidMotion(hinge, angle, dx, dy);
        expect(near(moveRigidly(partway(motion, 0), p), p)).toBeLessThan(1e-8);
        expect(near(moveRigidly(partway(motion, 1), p), moveRigidly(motion, p))).toBeLessThan(1e-8);
      }),
    );
  });

  it("goes on evenly from a turn so small that its hinge is kilometres away", () => {
    const motion = rigidMotion(piecePoint(0, 0), radians(1e-7), 10, 0);
    // As good as a slide of 10 mm: half of it is 5 mm.
    const at = moveRigidly(partway(motion, 0.5), piecePoint(0, 0));
    expect(at.x).toBeCloseTo(5, 6);
    expect(Math.abs(at.y)).toBeLessThan(1e-6);
  });
});
