/** A princess seam of the pattern's own, its stretches walked by lengthening the centre front: shapes go with their ends. */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import { pieceIn, setOf } from "../../../src/core/pattern/pieceSet";
import { pointOf, type Edge, type Piece, type PointName } from "../../../src/core/pattern/piece";
import { invariant } from "../../../src/core/result";
import { drawPrincess, walkPrincess, withPointsAt } from "../../../src/core/surgery/princessSeam";
import { splitAtBustPoint } from "../../../src/core/surgery/splitAtBustPoint";
import { takeUpSide, walkAgain } from "../../../src/core/surgery/walkAgain";
import { bentOff, withBends } from "../../support/bentPieces";
import { cornerPiece, dartFor } from "../../support/cornerPiece";
import { cornerAt } from "../../support/garments";
import { seamByBezierJs } from "../../support/independent";

const split = splitAtBustPoint(
  cornerPiece({
    corners: [
      ["centreNeck", 0, 0, "neck"],
      ["sideNeck", 60, 0, "shoulder"],
      ["shoulderDartInner", 80, 0, "shoulder", "shoulderDart"],
      ["shoulderDartOuter", 110, 0, "shoulder"],
      ["shoulderTip", 160, 0, "armhole"],
      ["underarm", 200, 100, "side"],
      ["sideBust", 200, 150, "side"],
      ["sideWaist", 200, 300, "waist"],
      ["waistDartOuter", 110, 300, "waist", "waistDart"],
      ["waistDartInner", 85, 300, "waist"],
      ["centreWaist", 0, 300, "centre"],
      ["centreBust", 0, 150, "centre"],
    ],
    inside: { bustPoint: [95, 150], shoulderDartApex: [95, 150], waistDartApex: [95, 150] },
    darts: [dartFor("shoulderDart", "shoulder", "bustPoint"), dartFor("waistDart", "waist", "bustPoint")],
  }),
  "shoulderDart",
);
const drawn = drawPrincess(split);
const own = (piece: Piece, turns: Piece["drawnTurns"] = {}): Piece => ({
  ...piece,
  drawnTurns: {
    princessTop: 180 - cornerAt(piece, "princessTop"),
    princessWaist: 180 - cornerAt(piece, "princessWaist"),
    ...turns,
  },
});
const walked = (centreFront: Piece, sideFront: Piece) => invariant(walkPrincess({ centreFront, sideFront }), "walked");

const isOf = (edge: Edge, end: PointName): boolean =>
  edge.seam === "princess" && (edge.from === end || edge.to === end);
/** From the control beside a corner of the seam to the corner: above it where `up`, on a seam without bends. */
function handleAt(piece: Piece, corner: PointName, other: PointName): readonly [number, number] {
  const edge = invariant(
    piece.edges.find((one) => isOf(one, corner) && isOf(one, other)),
    corner,
  );
  const { c1, c2 } = invariant(edge.curve, "curve");
  const [at, control] = [pointOf(piece, corner), edge.from === corner ? c1 : c2];
  return [control.x - at.x, control.y - at.y];
}
const lengthOf = (piece: Piece, end: PointName): number =>
  seamByBezierJs({ ...piece, edges: piece.edges.filter((edge) => isOf(edge, end)) }, "princess");
const near = (numbers: readonly number[], digits = 6) => numbers.map((one) => expect.closeTo(one, digits));

describe("a seam of the pattern's own, the side front's longer", () => {
  // The bust point of the side front lower by 4 mm: its upper stretch longer, its lower one shorter.
  const longer: Piece = {
    ...withPointsAt(drawn.sideFront, { princessBust: piecePoint(95, 154), sideBust: piecePoint(200, 154) }),
    edges: drawn.sideFront.edges.map((edge): Edge => {
      if (edge.curve === null || edge.seam !== "princess") return edge;
      const { c1, c2 } = edge.curve;
      const down = (p: typeof c1) => piecePoint(p.x, p.y + 4);
      if (edge.from === "princessBust") return { ...edge, curve: { c1: down(c1), c2 } };
      return edge.to === "princessBust" ? { ...edge, curve: { c1, c2: down(c2) } } : edge;
    }),
  };
  const before = own(drawn.centreFront);
  const { centreFront, sideFront, drop } = walked(before, own(longer));
  const after = centreFront.piece;

  it("is walked above and below: each end of the centre front's with its handles as they were", () => {
    expect(lengthOf(after, "princessTop")).toBeCloseTo(lengthOf(sideFront, "princessTop"), 5);
    expect(lengthOf(after, "princessWaist")).toBeCloseTo(lengthOf(sideFront, "princessWaist"), 5);
    for (const [corner, other] of [
      ["princessTop", "princessBust"],
      ["princessBust", "princessTop"],
      ["princessBust", "princessWaist"],
      ["princessWaist", "princessBust"],
    ] as const)
      expect(handleAt(after, corner, other)).toEqual(near(handleAt(before, corner, other), 3));
    const above = pointOf(after, "princessBust").y - pointOf(before, "princessBust").y;
    expect(above).toBeGreaterThan(3.5);
    expect(pointOf(after, "bustPoint")).toEqual(pointOf(after, "princessBust"));
    expect(pointOf(after, "princessTop")).toEqual(pointOf(before, "princessTop"));
    for (const name of ["princessWaist", "centreWaist"] as const)
      expect(pointOf(after, name).y - pointOf(before, name).y).toBeCloseTo(drop, 9);
    // What was gained above is lost below, about.
    expect(Math.abs(drop)).toBeLessThan(0.5);
  });

  it("does not walk where a stretch of the side front is too short for the centre front's to match", () => {
    // 4 mm long below the bust; the centre front's lies 10 mm further in.
    const moved = withPointsAt(drawn.sideFront, { princessWaist: piecePoint(95, 154) });
    const short: Piece = {
      ...moved,
      edges: moved.edges.map((edge) => (edge.seam === "princess" ? { ...edge, curve: null } : edge)),
    };
    expect(walkPrincess({ centreFront: before, sideFront: own(short) })).toBeNull();
  });

  it("with bends in it comes out the same", () => {
    const bent = walked(withBends(before, 0.45), withBends(own(longer), 0.45));
    expect(bentOff(after, bent.centreFront.piece, { corner: 0.02, seam: 0.02, line: 0.1 })).toEqual([]);
    expect(bentOff(sideFront, bent.sideFront, { corner: 0.02, seam: 0.02, line: 0.1 })).toEqual([]);
    expect(bent.drop).toBeCloseTo(drop, 1);
    // Bends alone make it one of the pattern's own.
    const plain = walked(withBends(drawn.centreFront, 0.45), withBends(drawn.sideFront, 0.45));
    expect(plain.drop).toBeCloseTo(0, 2);
    expect(bentOff(drawn.centreFront, plain.centreFront.piece, { corner: 0.01, seam: 0.01, line: 0.05 })).toEqual([]);
  });

  it("has its ease on both stretches by their lengths, and to both signs", () => {
    for (const ease of [4, -3]) {
      const eased = walked(before, { ...own(longer), seamEase: { princess: ease } });
      const [centre, side] = [eased.centreFront.piece, eased.sideFront];
      const whole = seamByBezierJs(side, "princess");
      for (const end of ["princessTop", "princessWaist"] as const)
        expect(lengthOf(side, end) - lengthOf(centre, end)).toBeCloseTo((ease * lengthOf(side, end)) / whole, 5);
    }
  });
});

describe("a corner of the side front's own seam", () => {
  const bustCorner = (piece: Piece): number => 180 - cornerAt(piece, "princessBust");
  /** The lower half turned by the handle at the bust. */
  const bentAt = (by: number): Piece => ({
    ...drawn.sideFront,
    edges: drawn.sideFront.edges.map((edge): Edge => {
      if (!isOf(edge, "princessWaist") || edge.curve === null) return edge;
      const at = pointOf(drawn.sideFront, "princessBust");
      const isStart = edge.from === "princessBust";
      const control = isStart ? edge.curve.c1 : edge.curve.c2;
      const [dx, dy] = [control.x - at.x, control.y - at.y];
      const turned = piecePoint(
        at.x + dx * Math.cos(by) - dy * Math.sin(by),
        at.y + dx * Math.sin(by) + dy * Math.cos(by),
      );
      return { ...edge, curve: isStart ? { ...edge.curve, c1: turned } : { ...edge.curve, c2: turned } };
    }),
  });

  it("at the bust is drawn smooth, or as the pattern was drawn, its stretches as long", () => {
    const corner = bentAt(0.1);
    expect(Math.abs(bustCorner(corner))).toBeCloseTo((0.1 * 180) / Math.PI, 6);
    const smooth = walked(own(drawn.centreFront), own(corner)).sideFront;
    expect(bustCorner(smooth)).toBeCloseTo(0, 6);
    for (const end of ["princessTop", "princessWaist"] as const)
      expect(lengthOf(smooth, end)).toBeCloseTo(lengthOf(corner, end), 3);
    const asDrawn = own(corner, { princessBust: bustCorner(corner) });
    expect(walked(own(drawn.centreFront), asDrawn).sideFront).toBe(asDrawn);
    // Half of what it is off on each side, where it was drawn with some of it.
    const part = walked(own(drawn.centreFront), own(corner, { princessBust: bustCorner(corner) / 2 })).sideFront;
    expect(bustCorner(part)).toBeCloseTo(bustCorner(corner) / 2, 6);
  });

  it.each([
    ["princessTop", 4],
    ["princessTop", -4],
    ["princessWaist", 4],
    ["princessWaist", -4],
  ] as const)("%s is turned until it meets what it met: %d degrees", (corner, by) => {
    const side = drawn.sideFront;
    const turn = 180 - cornerAt(side, corner) + by;
    const made = walked(own(drawn.centreFront), own(side, { [corner]: turn })).sideFront;
    expect(180 - cornerAt(made, corner)).toBeCloseTo(turn, 6);
    const other = corner === "princessTop" ? "princessWaist" : "princessTop";
    expect(cornerAt(made, other)).toBeCloseTo(cornerAt(side, other), 9);
    for (const name of ["princessTop", "princessBust", "princessWaist"] as const)
      expect(pointOf(made, name)).toEqual(pointOf(side, name));
  });
});

describe("the sides of a princess front and its back", () => {
  const back = cornerPiece({
    name: "back",
    corners: [
      ["centreNeck", 0, 0, "neck"],
      ["underarm", 190, 100, "side"],
      ["sideWaist", 190, 300, "waist"],
      ["centreWaist", 0, 300, "centre"],
    ],
  });
  const set = setOf([drawn.centreFront, drawn.sideFront, back]);
  const pair = { seam: "side", first: ["centreFront", "sideFront"], second: ["back"], ease: 0 } as const;

  it("share what they differ by at their lower corners, the centre front left alone", () => {
    const after = takeUpSide(set, pair, 6);
    expect(after.centreFront).toBe(drawn.centreFront);
    const [side, behind] = [pieceIn(after, "sideFront"), pieceIn(after, "back")];
    expect(seamByBezierJs(side, "side")).toBeCloseTo(200 - 3, 4);
    expect(seamByBezierJs(behind, "side")).toBeCloseTo(200 + 3, 4);
    for (const [piece, was] of [
      [side, drawn.sideFront],
      [behind, back],
    ] as const)
      expect(seamByBezierJs(piece, "waist")).toBeCloseTo(seamByBezierJs(was, "waist"), 4);
    expect(takeUpSide(set, pair, 5e-7)).toBe(set);
  });

  it("are walked again by what they drifted", () => {
    const moved = { ...set, back: withPointsAt(back, { sideWaist: piecePoint(190, 304) }) };
    const after = walkAgain(set, moved);
    expect(seamByBezierJs(pieceIn(after, "back"), "side")).toBeCloseTo(202, 4);
    expect(seamByBezierJs(pieceIn(after, "sideFront"), "side")).toBeCloseTo(202, 4);
  });

  it("of a cup and its back end at the under-bust, which has no waist to keep", () => {
    const cup = (name: "cup" | "back"): Piece =>
      cornerPiece({
        name,
        corners: [
          ["strapInner", 60, 0, "armhole"],
          ["underarm", 200, 100, "side"],
          ["sideUnderBust", 200, 200, "underBust"],
          ["underBustCentre", 0, 200, "centre"],
        ],
      });
    const pieces = setOf([cup("cup"), cup("back")]);
    const after = takeUpSide(pieces, { seam: "side", first: ["cup"], second: ["back"], ease: 0 }, 4);
    expect(pointOf(pieceIn(after, "cup"), "sideUnderBust")).toEqual({ x: 200, y: expect.closeTo(198, 5) });
    expect(pointOf(pieceIn(after, "back"), "sideUnderBust")).toEqual({ x: 200, y: expect.closeTo(202, 5) });
  });
});
