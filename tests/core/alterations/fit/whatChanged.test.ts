/** What is asked of pieces and of what was done to them, on straight ones. */
import { describe, expect, it } from "vitest";
import {
  bustGained,
  hasDartIn,
  isCorner,
  isCut,
  isDartCut,
  princessBeginsIn,
  topMoved,
  walkedBy,
} from "../../../../src/core/alterations/fit/whatChanged";
import { piecePoint } from "../../../../src/core/geometry/point";
import { setOf } from "../../../../src/core/pattern/pieceSet";
import type { Piece } from "../../../../src/core/pattern/piece";
import { noSurgery, type SurgeryTrace } from "../../../../src/core/surgery/cutAndMove";
import { cornerPiece, dartFor, type CornerOf } from "../../../support/cornerPiece";

const CORNERS: readonly CornerOf[] = [
  ["centreNeck", 0, 0, "neck"],
  ["underarm", 200, 0, "side"],
  ["sideBust", 200, 120, "side"],
  ["sideWaist", 200, 300, "waist"],
  ["waistDartOuter", 115, 300, "waist", "waistDart"],
  ["waistDartInner", 85, 300, "waist"],
  ["centreWaist", 0, 300, "centre"],
  ["centreBust", 0, 120, "centre"],
];
const front = cornerPiece({
  corners: CORNERS,
  inside: { waistDartApex: [100, 150] },
  darts: [dartFor("waistDart", "waist")],
  levelLines: [{ level: "bust", along: { points: ["centreBust", "sideBust"] } }],
});
const gathered: Piece = { ...front, darts: [{ ...dartFor("waistDart", "waist"), gathered: true }] };
const cutAt = (...heights: readonly (readonly number[])[]): SurgeryTrace => ({
  ...noSurgery(front),
  cuts: heights.map((ys) => ys.map((y, i) => piecePoint(i === 0 ? 0 : 200, y))),
});

describe("a piece", () => {
  it("has corners of its outline, and darts that are folded in a seam", () => {
    expect([isCorner(front, "sideWaist"), isCorner(front, "waistDartApex"), isCorner(front, "sideNeck")]).toEqual([
      true,
      false,
      false,
    ]);
    expect([hasDartIn(front, "waist"), hasDartIn(front, "side"), hasDartIn(gathered, "waist")]).toEqual([
      true,
      false,
      false,
    ]);
    const two: Piece = { ...front, darts: [...front.darts, dartFor("sideDart", "side")] };
    expect([hasDartIn(two, "side"), hasDartIn(two, "waist"), hasDartIn({ ...front, darts: [] }, "waist")]).toEqual([
      true,
      true,
      false,
    ]);
  });

  it("has its princess seam begin in the seam beside its top, on either side", () => {
    const centre = cornerPiece({
      name: "centreFront",
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ["sideNeck", 50, 0, "shoulder"],
        ["princessTop", 90, 10, "princess"],
        ["princessWaist", 80, 300, "waist"],
        ["centreWaist", 0, 300, "centre"],
      ],
    });
    const side = cornerPiece({
      name: "sideFront",
      corners: [
        ["princessTop", 90, 10, "armhole"],
        ["underarm", 200, 100, "side"],
        ["sideWaist", 200, 300, "waist"],
        ["princessWaist", 110, 300, "princess"],
      ],
    });
    expect((["shoulder", "armhole", "neck", "waist"] as const).map((seam) => princessBeginsIn(centre, seam))).toEqual([
      true,
      false,
      false,
      false,
    ]);
    expect((["shoulder", "armhole", "side", "waist"] as const).map((seam) => princessBeginsIn(side, seam))).toEqual([
      false,
      true,
      false,
      false,
    ]);
  });

  it("is cut where a trace is its own", () => {
    expect(isCut(front, [noSurgery({ ...front, name: "back" }), noSurgery(front)])).toBe(true);
    expect(isCut(front, [noSurgery({ ...front, name: "back" })])).toBe(false);
    expect(isCut(front, [])).toBe(false);
  });
});

describe("a dart", () => {
  it("is cut by what runs right across between its end and its mouth", () => {
    expect([200, 151, 299].map((y) => isDartCut(front, [cutAt([y, y])]))).toEqual([true, true, true]);
    expect([149, 301].map((y) => isDartCut(front, [cutAt([y, y])]))).toEqual([false, false]);
    // Aslant: at the middle of the piece 200 down, and 100.
    expect([isDartCut(front, [cutAt([100, 300])]), isDartCut(front, [cutAt([0, 200])])]).toEqual([true, false]);
    // Over a corner it is the ends that count; and any cut, of any trace of the piece.
    expect(isDartCut(front, [cutAt([200, 0, 200])])).toBe(true);
    expect(isDartCut(front, [cutAt([10, 10]), cutAt([20, 20], [200, 200])])).toBe(true);
  });

  it("is not by a cut on another piece, one of no length, or where it is gathered", () => {
    expect(isDartCut(front, [{ ...cutAt([200, 200]), piece: "back" }])).toBe(false);
    expect(isDartCut(front, [cutAt([])])).toBe(false);
    expect(isDartCut(front, [])).toBe(false);
    expect(isDartCut(gathered, [cutAt([200, 200])])).toBe(false);
    const two: Piece = {
      ...gathered,
      points: {
        ...front.points,
        sideDartInner: { at: piecePoint(200, 190), level: "bust" },
        sideDartOuter: { at: piecePoint(200, 220), level: "bust" },
        sideDartApex: { at: piecePoint(130, 160), level: "bust" },
      },
      darts: [...gathered.darts, dartFor("sideDart", "side")],
    };
    // From 160 to the middle of its mouth at 205.
    expect([isDartCut(two, [cutAt([200, 200])]), isDartCut(two, [cutAt([210, 210])])]).toEqual([true, false]);
  });
});

describe("what was gained", () => {
  const moved = (piece: Piece, name: "centreWaist" | "sideBust" | "princessTop", x: number, y: number): Piece => ({
    ...piece,
    points: { ...piece.points, [name]: { at: piecePoint(x, y), level: "bust" } },
  });
  const centreFront: Piece = moved({ ...front, name: "centreFront" }, "princessTop", 90, 10);

  it("by a centre front beyond the amount, and by the top of its seam", () => {
    const before = setOf([centreFront]);
    const after = setOf([moved(moved(centreFront, "centreWaist", 0, 313), "princessTop", 93, 14)]);
    expect(walkedBy(before, after, 10)).toBe(3);
    expect(walkedBy(before, after, 15)).toBe(-2);
    expect(topMoved(before, after)).toBe(5);
    const none = setOf([front]);
    expect([walkedBy(none, none, 10), walkedBy(none, before, 10), walkedBy(before, none, 10)]).toEqual([0, 0, 0]);
    expect([topMoved(none, none), topMoved(none, before), topMoved(before, none)]).toEqual([0, 0, 0]);
  });

  it("round the bust, of both halves and all pieces", () => {
    const back: Piece = { ...front, name: "back" };
    const basque: Piece = { ...front, name: "frontBasque", levelLines: [] };
    const before = setOf([front, back, basque]);
    const after = setOf([moved(front, "sideBust", 203, 120), moved(back, "sideBust", 198, 120), basque]);
    expect(bustGained(before, after)).toBeCloseTo(2 * (3 - 2), 9);
    expect(bustGained(before, before)).toBe(0);
  });
});
