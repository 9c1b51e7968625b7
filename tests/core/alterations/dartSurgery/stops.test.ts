/** How far short of its point a moved dart ends, and what is told of an alteration on one half. */
import { describe, expect, it } from "vitest";
import { applyAlteration } from "../../../../src/core/alterations/applyAlteration";
import type { Alteration } from "../../../../src/core/decisions/alteration";
import { piecePoint } from "../../../../src/core/geometry/point";
import { pieceIn, setOf, type PieceSet } from "../../../../src/core/pattern/pieceSet";
import { pointOf, type DartHome, type DartName, type Piece, type PieceName } from "../../../../src/core/pattern/piece";
import { cornerPiece, dartFor, type CornerOf } from "../../../support/cornerPiece";

const CORNERS: readonly CornerOf[] = [
  ["centreNeck", 0, 0, "neck"],
  ["sideNeck", 60, 0, "shoulder"],
  ["shoulderTip", 160, 0, "armhole"],
  ["underarm", 200, 100, "side"],
  ["sideBust", 200, 120, "side"],
  ["sideWaist", 200, 320, "waist"],
  ["waistDartOuter", 116, 320, "waist", "waistDart"],
  ["waistDartInner", 84, 320, "waist"],
  ["centreWaist", 0, 320, "centre"],
  ["centreBust", 0, 120, "centre"],
];
const bust = piecePoint(100, 120);
/** Its dart ends so far below the bust point. */
const pieceOf = (name: "front" | "back", stop: number): Piece =>
  cornerPiece({
    name,
    corners: CORNERS,
    inside: { ...(name === "front" ? { bustPoint: [100, 120] as const } : {}), waistDartApex: [100, 120 + stop] },
    darts: [dartFor("waistDart", "waist", name === "front" ? "bustPoint" : null)],
  });
function applied(pieces: PieceSet, alteration: Alteration) {
  const done = applyAlteration(pieces, alteration, { bustPoint: bust });
  if (!done.ok) throw new Error(JSON.stringify(done.failure));
  return done.value;
}
const pivot = (piece: PieceName, dart: DartName, to: DartHome, share = 1): Alteration => ({
  kind: "dartPivot",
  id: "a",
  dart: { piece, dart },
  to,
  share,
});
const stopOf = (piece: Piece, dart: DartName, point = bust): number => {
  const { x, y } = pointOf(piece, `${dart}Apex`);
  return Math.hypot(x - point.x, y - point.y);
};

describe("a dart moved to another seam", () => {
  it.each([
    // From the waist, where 15 to 25 mm are usual, to a seam where 20 to 40 are: the middle of these.
    ["side", 18, 30],
    ["shoulder", 18, 30],
  ] as const)("to the %s ends as is usual there", (to, own, wanted) => {
    const done = applied(setOf([pieceOf("front", own)]), pivot("front", "waistDart", to));
    expect(done.trace.values.stop).toBeCloseTo(wanted, 9);
    expect(Math.abs(stopOf(pieceIn(done.pieces, "front"), `${to}Dart`) - wanted)).toBeLessThan(0.1);
  });

  it("from one seam to another of the same kind keeps its own stop, as far as is usual", () => {
    const side = applied(setOf([pieceOf("front", 18)]), pivot("front", "waistDart", "side")).pieces;
    const on = applied(side, pivot("front", "sideDart", "shoulder"));
    expect(on.trace.values.stop).toBeCloseTo(30, 2);
    const back = applied(on.pieces, pivot("front", "shoulderDart", "waist"));
    expect(back.trace.values.stop).toBeCloseTo(20, 9);
  });

  it("to one that is there leaves that one's, and what is left of the old one its own", () => {
    const shoulder = applied(setOf([pieceOf("front", 18)]), pivot("front", "waistDart", "shoulder", 0.5)).pieces;
    const more = applied(shoulder, pivot("front", "waistDart", "shoulder", 0.5));
    const piece = pieceIn(more.pieces, "front");
    expect(more.trace.values.stop).toBeCloseTo(30, 1);
    expect(Math.abs(stopOf(piece, "waistDart") - 18)).toBeLessThan(0.1);
    expect(Math.abs(stopOf(piece, "shoulderDart") - 30)).toBeLessThan(0.1);
  });

  it("that was split is one again, ended no further off than is usual", () => {
    const two = applied(setOf([pieceOf("front", 24)]), {
      kind: "dartSplit",
      id: "a",
      dart: { piece: "front", dart: "waistDart" },
      into: 2,
    });
    // 5 mm shorter for one more.
    expect(two.trace.values.stop).toBeCloseTo(29, 6);
    const one = applied(two.pieces, pivot("front", "waistDart2", "waist"));
    expect(one.trace.values.stop).toBeCloseTo(25, 6);
    const near = applied(setOf([pieceOf("front", 15)]), {
      kind: "dartSplit",
      id: "a",
      dart: { piece: "front", dart: "waistDart" },
      into: 2,
    });
    expect(applied(near.pieces, pivot("front", "waistDart2", "waist")).trace.values.stop).toBeCloseTo(20, 1);
  });

  it("of a back turns about its own end: there it ends, or 20 mm off it where that is still one", () => {
    const back = setOf([pieceOf("back", 60)]);
    const end = piecePoint(100, 180);
    const whole = applied(back, pivot("back", "waistDart", "neck"));
    expect(whole.trace.values.stop).toBe(0);
    expect(stopOf(pieceIn(whole.pieces, "back"), "neckDart", end)).toBeLessThan(0.01);
    const part = applied(back, pivot("back", "waistDart", "neck", 0.5));
    expect(part.trace.values.stop).toBe(20);
    expect(Math.abs(stopOf(pieceIn(part.pieces, "back"), "neckDart", end) - 20)).toBeLessThan(0.01);
    expect(stopOf(pieceIn(part.pieces, "back"), "waistDart", end)).toBeLessThan(0.01);
  });

  it("cuts to the point from both its places, and turns what lies between", () => {
    const { trace } = applied(setOf([pieceOf("front", 18)]), pivot("front", "waistDart", "side"));
    const [done] = trace.surgery;
    expect(done?.cuts.map((cut) => cut.at(-1))).toEqual([bust, bust]);
    // Both its places, the corners between them, and the point itself.
    const outline = done?.parts[0]?.before.map(({ a }) => [Math.round(a.x), Math.round(a.y)]) ?? [];
    expect(outline).toContainEqual([100, 120]);
    expect(outline).toContainEqual([200, 320]);
    expect(outline).toHaveLength(4);
  });

  it.each([
    ["dartGather", {}],
    ["dartLegs", { bow: 1 }],
  ] as const)("%s is told as made on that piece, with nothing cut", (kind, more) => {
    const asked = { kind, id: "a", dart: { piece: "front", dart: "waistDart" }, ...more } as Alteration;
    const { trace } = applied(setOf([pieceOf("front", 18)]), asked);
    expect(trace.surgery.map(({ piece, cuts, parts }) => [piece, cuts, parts])).toEqual([["front", [], []]]);
  });
});

describe("a whole amount on one half", () => {
  const basque = (name: "frontBasque" | "backBasque"): Piece =>
    cornerPiece({
      name,
      corners: [
        ["centreWaist", 0, 0, "waist"],
        ["sideWaist", 60, 0, "side"],
        ["sideHip", 60, 200, "side"],
        ["sideHem", 60, 240, "hem"],
        ["centreHem", 0, 240, "centre"],
      ],
    });
  const hip = (amount: number, half?: "left") =>
    applyAlteration(
      setOf([basque("frontBasque"), basque("backBasque")]),
      { kind: "fit", id: "a", fit: "sideSeamHip", amount, ...(half === undefined ? {} : { half }) },
      { bustPoint: bust },
    );

  it("is twice that in all, and refused with the half of what could be", () => {
    // A quarter of 60 mm at each of four edges: 60 in all.
    const tooMuch = (most: number) => ({ ok: false, failure: { code: "alteration/too-much", most } });
    expect([hip(-70), hip(-35, "left")]).toEqual([tooMuch(-60), tooMuch(-30)]);
    expect([hip(-60).ok, hip(-30, "left").ok]).toEqual([true, true]);
  });
});
