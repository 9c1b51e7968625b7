/** Where a new dart opens, on straight seams with and without bends in them. */
import { describe, expect, it } from "vitest";
import {
  atLength,
  hasHome,
  placeOfDart,
  seamOfHome,
  sewnLengthTo,
} from "../../../../src/core/alterations/dartSurgery/places";
import { piecePoint } from "../../../../src/core/geometry/point";
import { DART_HOMES } from "../../../../src/core/pattern/dartNames";
import type { DartHome, Piece } from "../../../../src/core/pattern/piece";
import { radians } from "../../../../src/core/units";
import { cornerPiece, type CornerOf } from "../../../support/cornerPiece";

const CORNERS: readonly CornerOf[] = [
  ["centreNeck", 0, 0, "neck"],
  ["sideNeck", 60, 0, "shoulder"],
  ["shoulderTip", 160, 0, "armhole"],
  ["armholeTouch", 160, 60, "armhole"],
  ["underarm", 200, 60, "side"],
  ["sideBust", 200, 100, "side"],
  ["sideWaist", 200, 300, "waist"],
  ["centreWaist", 0, 300, "centre"],
  ["centreBust", 0, 100, "centre"],
];
const near = (name: string, t: number) => [name, expect.closeTo(t, 6)];

describe("a dart opened", () => {
  const front = cornerPiece({ corners: CORNERS });
  const at = (home: DartHome, piece: Piece = front, x = 100, y = 100, below = Math.PI / 2) => {
    const { edge, t } = placeOfDart(piece, home, piecePoint(x, y), radians(below));
    return [piece.edges[edge]?.from, t];
  };

  it("lies by the trade's places on each seam (common practice, no source)", () => {
    // 45 mm below the bust line of 200; four fifths of 240; two thirds of 100: 6.7 from the corner, kept 8 clear.
    expect(at("side")).toEqual(near("sideBust", 45 / 200));
    expect(at("french")).toEqual(near("sideBust", 152 / 200));
    expect(at("armhole")).toEqual(near("armholeTouch", 8 / 40));
    expect(at("shoulder")).toEqual(near("sideNeck", 0.5));
    expect(at("neck")).toEqual(near("centreNeck", 0.5));
    // 5 mm below the bust line, kept 8 clear; as far below a point that lies lower.
    expect(at("centre")).toEqual(near("centreWaist", 192 / 200));
    expect(at("centre", front, 100, 150)).toEqual(near("centreWaist", 145 / 200));
    expect(at("centre", front, 100, 50)).toEqual(near("centreWaist", 192 / 200));
    const plain = cornerPiece({ corners: CORNERS.filter(([name]) => name !== "centreBust") });
    expect(at("centre", plain, 100, 150)).toEqual(near("centreWaist", 145 / 300));
    // Lower than the centre line goes: at its middle, 150 of 300.
    expect(at("centre", front, 100, 320)).toEqual(near("centreWaist", 150 / 200));
    expect(at("waist")).toEqual(near("sideWaist", 0.5));
    // Aslant: at 45 degrees outwards from (100, 200), and off the waist at all.
    expect(at("waist", front, 100, 200, Math.PI / 4)).toEqual(near("sideWaist", 0));
    expect(at("waist", front, 100, 200, -Math.PI / 2)).toEqual(near("sideWaist", 0.5));
    expect(DART_HOMES.filter((home) => !hasHome(front, home))).toEqual(["underBust"]);
    expect([seamOfHome("french"), seamOfHome("underBust")]).toEqual(["side", "underBust"]);
  });

  it("is counted from where the seam begins, its corners and mouths left out", () => {
    const mouthed = cornerPiece({
      corners: [
        ["underarm", 0, 0, "side"],
        ["sideDartInner", 0, 40, "side", "sideDart"],
        ["sideDartOuter", 0, 60, "side"],
        ["sideBust", 0, 100, "side"],
        ["sideWaist", 0, 200, "waist"],
      ],
    });
    expect(
      (["sideDartInner", "sideBust", "sideWaist", "underarm"] as const).map((c) => sewnLengthTo(mouthed, "side", c)),
    ).toEqual([40, 80, 180, 0]);
    const of = (length: number) => {
      const { edge, t } = atLength(mouthed, "side", length);
      return [mouthed.edges[edge]?.from, Math.round(t * 1e6) / 1e6];
    };
    expect([of(20), of(40), of(60), of(130), of(500)]).toEqual([
      ["underarm", 0.5],
      ["underarm", 0.8],
      ["sideDartOuter", 0.5],
      ["sideBust", 0.5],
      ["sideBust", 0.92],
    ]);
    expect(atLength(mouthed, "waist", 10)).toEqual({ edge: 4, t: expect.any(Number) });
  });
});

describe("a dart opened in a seam with bends", () => {
  const bent = (...bends: readonly number[]): Piece =>
    cornerPiece({
      corners: [
        ["underarm", 0, 0, "side"],
        ...bends.map((y, i): CornerOf => [i === 0 ? "bend001" : "bend002", 0, y, "side"]),
        ["sideWaist", 0, 100, "waist"],
        ["centreWaist", -100, 100, "centre"],
      ],
    });
  const of = (piece: Piece, length: number) => {
    const { edge, t } = atLength(piece, "side", length);
    return [piece.edges[edge]?.from, Math.round(t * 1e5) / 1e5];
  };
  const round = (share: number): number => Math.round(share * 1e5) / 1e5;

  it("lies 8 mm clear of its corners, 2 mm of a bend", () => {
    const piece = bent(30, 60);
    expect([of(piece, 15), of(piece, 1), of(piece, 99)]).toEqual([
      ["underarm", 0.5],
      ["underarm", round(8 / 30)],
      ["bend002", 0.8],
    ]);
    expect([of(piece, 29), of(piece, 31), of(piece, 45), of(piece, 59.5), of(piece, 61)]).toEqual([
      ["underarm", round(28 / 30)],
      ["bend001", round(2 / 30)],
      ["bend001", 0.5],
      ["bend001", round(28 / 30)],
      ["bend002", 0.05],
    ]);
  });

  it("is not in a stretch under 4 mm, but in the nearer one beside it", () => {
    const short = bent(30, 33);
    expect([of(short, 31), of(short, 32)]).toEqual([
      ["underarm", round(28 / 30)],
      ["bend002", round(2 / 67)],
    ]);
    expect(of(bent(30, 34), 32)).toEqual(["bend001", 0.5]);
  });

  it("lies clear by a third of a short one", () => {
    const short = cornerPiece({
      corners: [
        ["underarm", 0, 0, "side"],
        ["bend001", 0, 7, "side"],
        ["sideWaist", 0, 15, "waist"],
        ["centreWaist", -100, 15, "centre"],
      ],
    });
    expect([of(short, 1), of(short, 14)]).toEqual([
      ["underarm", round(5 / 7)],
      ["bend001", round(3 / 8)],
    ]);
  });

  it("plumb below its point lies clear of them too", () => {
    const waist = cornerPiece({
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ["sideWaist", 200, 300, "waist"],
        ["bend001", 120, 300, "waist"],
        ["centreWaist", 0, 300, "centre"],
      ],
    });
    const below = (x: number) => {
      const { edge, t } = placeOfDart(waist, "waist", piecePoint(x, 200), radians(Math.PI / 2));
      return [waist.edges[edge]?.from, t];
    };
    expect(below(160)).toEqual(near("sideWaist", 0.5));
    expect(below(121)).toEqual(near("sideWaist", 78 / 80));
    expect(below(60)).toEqual(near("bend001", 0.5));
    expect(below(3)).toEqual(near("bend001", 112 / 120));
  });
});
