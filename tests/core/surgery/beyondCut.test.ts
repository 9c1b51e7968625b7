/** Darts trued after a cut, and cuts through edges with bends, by what stays as it was. */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import { rigidMotion, shiftMotion } from "../../../src/core/geometry/rigid";
import { pointOf, type Piece, type PointName } from "../../../src/core/pattern/piece";
import { invariant } from "../../../src/core/result";
import { moveBeyondCut, trueDartAgain } from "../../../src/core/surgery/beyondCut";
import { drawnFurther, noSurgery } from "../../../src/core/surgery/cutAndMove";
import { squareWaistAgain } from "../../../src/core/surgery/wedge";
import { radians } from "../../../src/core/units";
import { bentOff, withBends } from "../../support/bentPieces";
import { cornerPiece, dartFor, type CornerOf } from "../../support/cornerPiece";
import { cornerAt } from "../../support/garments";
import { seamByBezierJs } from "../../support/independent";

const CORNERS: readonly CornerOf[] = [
  ["centreNeck", 0, 0, "neck"],
  ["underarm", 200, 0, "side"],
  ["sideWaist", 200, 300, "waist"],
  ["waistDartOuter", 115, 300, "waist", "waistDart"],
  ["waistDartInner", 85, 300, "waist"],
  ["centreWaist", 0, 300, "centre"],
];
const DART = dartFor("waistDart", "waist");

describe("an operation whose piece is drawn on", () => {
  it("has its trace made when it is read, not before", () => {
    let made = 0;
    const piece = front([100, 200]);
    const drawn = drawnFurther(
      {
        piece: front([100, 220]),
        get trace() {
          made += 1;
          return noSurgery(piece);
        },
      },
      piece,
    );
    expect([drawn.piece, made]).toEqual([piece, 0]);
    expect([drawn.trace.piece, made]).toEqual(["front", 1]);
  });
});
const front = (apex: readonly [number, number], curved = false): Piece =>
  cornerPiece({
    corners: CORNERS,
    curves: curved
      ? {
          underarm: [
            [190, 100],
            [190, 200],
          ],
          sideWaist: [
            [170, 310],
            [145, 305],
          ],
          waistDartInner: [
            [60, 306],
            [30, 300],
          ],
        }
      : {},
    inside: { waistDartApex: apex },
    darts: [DART],
  });
const apart = (piece: Piece, a: PointName, b: PointName): number =>
  Math.hypot(pointOf(piece, a).x - pointOf(piece, b).x, pointOf(piece, a).y - pointOf(piece, b).y);
/** Between the seam and the leg at both ends of the mouth, from the control points alone. */
const meetings = (piece: Piece): readonly number[] =>
  (["waistDartOuter", "waistDartInner"] as const).map((end) => {
    const at = pointOf(piece, end);
    const edge = invariant(
      piece.edges.find(({ from, to, mouthOf }) => mouthOf === null && (from === end || to === end)),
      end,
    );
    const isEnd = edge.to === end;
    const other = pointOf(piece, isEnd ? edge.from : edge.to);
    const to = (isEnd ? edge.curve?.c2 : edge.curve?.c1) ?? other;
    const apex = pointOf(piece, "waistDartApex");
    const turn = Math.atan2(to.y - at.y, to.x - at.x) - Math.atan2(apex.y - at.y, apex.x - at.x);
    return Math.atan2(Math.sin(turn), Math.cos(turn));
  });
const near = (numbers: readonly number[], digits: number) => numbers.map((one) => expect.closeTo(one, digits));

describe("a dart trued again", () => {
  it("is left where its legs are alike and meet the seam as they did: straight edges stay straight", () => {
    const piece = front([100, 150]);
    expect(trueDartAgain(piece, piece, DART)).toEqual(piece);
    const curved = front([100, 150], true);
    expect(trueDartAgain(curved, curved, DART)).toEqual(curved);
  });

  it.each([false, true])("has legs alike and its seam as long, met by them as before (curved: %s)", (curved) => {
    const before = front([100, 150], curved);
    const moved = front([110, 160], curved);
    for (const [piece, was, digits] of [
      [moved, before, 6],
      [withBends(moved, 0.45), withBends(before, 0.45), 3],
    ] as const) {
      const trued = trueDartAgain(piece, was, DART);
      expect(apart(trued, "waistDartApex", "waistDartInner")).toBeCloseTo(
        apart(trued, "waistDartApex", "waistDartOuter"),
        4,
      );
      expect(meetings(trued)).toEqual(near(meetings(before), digits));
      expect(seamByBezierJs(trued, "waist")).toBeCloseTo(seamByBezierJs(moved, "waist"), 4);
      const longer = trueDartAgain(piece, was, DART, 180);
      expect(seamByBezierJs(longer, "waist")).toBeCloseTo(180, 4);
      expect(meetings(longer)).toEqual(near(meetings(before), digits));
      expect(apart(longer, "waistDartApex", "waistDartInner")).toBeCloseTo(
        apart(longer, "waistDartApex", "waistDartOuter"),
        1,
      );
    }
  });

  it("that is gathered is not: its mouth is left where the seam is as long", () => {
    const gathered = front([110, 160], true);
    expect(trueDartAgain(gathered, front([100, 150], true), { ...DART, gathered: true })).toBe(gathered);
  });
});

describe("a cut through edges", () => {
  it("of which a dart is crossed leaves that seam met as it was", () => {
    const piece = front([100, 150], true);
    const done = moveBeyondCut(piece, {
      into: { index: 1, t: 0.75 },
      outOf: { index: 5, t: 0.4 },
      motion: shiftMotion(piecePoint(0, 0), piecePoint(0, 24)),
    }).piece;
    expect(meetings(done)).toEqual(near(meetings(piece), 6));
    expect(seamByBezierJs(done, "waist")).toBeCloseTo(seamByBezierJs(piece, "waist"), 4);
    expect(Object.keys(done.points).toSorted()).toEqual(Object.keys(piece.points).toSorted());
    for (const name of Object.keys(piece.points)) expect(done.points).toHaveProperty(`${name}.level`, "bust");
  });

  it.each(["shift", "turn"] as const)("with bends in them draws the same lines as without: %s", (how) => {
    const piece = front([100, 240], true);
    const bent = withBends(piece, 0.45);
    const motion =
      how === "shift"
        ? shiftMotion(piecePoint(0, 0), piecePoint(3, 12))
        : rigidMotion(piecePoint(0, 150), radians(0.04));
    const cut = (of: Piece, into: number, along: number, outOf: number) =>
      moveBeyondCut(of, { into: { index: into, t: along }, outOf: { index: outOf, t: 0.5 }, motion }).piece;
    // The side at its middle: of the halves, a little on in the second.
    const plain = cut(piece, 1, 0.5, 5);
    const made = cut(bent, 2, 0.05 / 0.55, 8);
    expect(bentOff(plain, made, { corner: 1e-6, seam: 0.15, line: 1.5 })).toEqual([]);
    const whole = moveBeyondCut(bent, {
      into: { index: 8, t: 0.5 },
      outOf: { index: 2, t: 0.05 / 0.55 },
      motion: rigidMotion(piecePoint(0, 150), radians(-0.04)),
    }).piece;
    const upper = moveBeyondCut(piece, {
      into: { index: 5, t: 0.5 },
      outOf: { index: 1, t: 0.5 },
      motion: rigidMotion(piecePoint(0, 150), radians(-0.04)),
    }).piece;
    expect(bentOff(upper, whole, { corner: 1e-6, seam: 0.15, line: 1.5 })).toEqual([]);
  });

  it("twice through one edge leaves its outer parts, and what is between them moved", () => {
    const piece = withBends(front([100, 150], true), 0.45);
    const done = moveBeyondCut(piece, {
      into: { index: 1, t: 0.5 },
      outOf: { index: 2, t: 0.5 },
      motion: shiftMotion(piecePoint(0, 0), piecePoint(5, 0)),
    }).piece;
    const [bend, was] = [pointOf(done, "bend000"), pointOf(piece, "bend000")];
    expect([bend.x - was.x, bend.y - was.y]).toEqual(near([5, 0], 9));
    for (const name of ["underarm", "sideWaist"] as const) expect(pointOf(done, name)).toEqual(pointOf(piece, name));
    const curve = (of: Piece, index: number) => invariant(of.edges[index]?.curve, "curve");
    expect(curve(done, 1).c1).toEqual(curve(piece, 1).c1);
    expect(curve(done, 1).c2.x - curve(piece, 1).c2.x).toBeCloseTo(5, 9);
    expect(curve(done, 2).c1.x - curve(piece, 2).c1.x).toBeCloseTo(5, 9);
    expect(curve(done, 2).c2).toEqual(curve(piece, 2).c2);
  });
});

describe("a waist squared to its centre again", () => {
  it("is left where nothing turned: straight", () => {
    const piece = front([100, 150]);
    expect(squareWaistAgain(piece, piece, { turned: radians(0), lower: 0 }, "sideWaist")).toEqual(piece);
  });

  it.each([
    [0.002, 0.1],
    [0.05, 8],
    [-0.03, -5],
  ])("turned by %d it is drawn back square, its corner lower by %d", (turned, lower) => {
    const piece = front([100, 150]);
    // The whole waist turned about its side end, as a cut above it would leave it.
    const about = (x: number): readonly [number, number] => [
      200 + (x - 200) * Math.cos(turned),
      300 + (x - 200) * Math.sin(turned),
    ];
    const cornersAt = CORNERS.map((corner): CornerOf => {
      const [name, x, , seam, mouth] = corner;
      if (seam !== "waist" && name !== "centreWaist") return corner;
      const [at, down] = about(x);
      return mouth === undefined ? [name, at, down, seam] : [name, at, down, seam, mouth];
    });
    const tilted = cornerPiece({ corners: cornersAt, inside: { waistDartApex: [100, 150] }, darts: [DART] });
    const made = squareWaistAgain(tilted, piece, { turned: radians(turned), lower }, "sideWaist");
    expect(pointOf(made, "centreWaist")).toEqual({ x: 0, y: 300 + lower });
    // Between the waist, that leaves by its handle, and the centre line straight up.
    const edge = invariant(
      made.edges.find(({ to }) => to === "centreWaist"),
      "waist",
    );
    const c2 = invariant(edge.curve, "curve").c2;
    // What the waist turned is undone; what its corner was set to beside that is its slope from the mouth.
    const slope = Math.atan2(300 + lower - pointOf(tilted, "waistDartInner").y, -pointOf(tilted, "waistDartInner").x);
    expect(Math.atan2(300 + lower - c2.y, 0 - c2.x)).toBeCloseTo(slope - turned, 6);
    expect(seamByBezierJs(made, "waist")).toBeCloseTo(170, 3);
    expect(seamByBezierJs(made, "side")).toBeCloseTo(300, 3);
    expect(cornerAt(made, "centreNeck")).toBeCloseTo(90, 9);
  });
});
