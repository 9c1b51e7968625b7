/** Pieces of straight lines on round numbers, so that every length is read off them. */
import { piecePoint } from "../../../src/core/geometry/point";
import type {
  Dart,
  DartName,
  Edge,
  NamedPoint,
  Piece,
  PieceName,
  PointName,
  SeamName,
} from "../../../src/core/pattern/piece";

/** A corner, and the seam that goes on from it; a dart's name where that is its mouth. */
export type Corner = readonly [point: PointName, x: number, y: number, seam: SeamName, mouthOf?: DartName];

export function pieceOf(
  name: PieceName,
  corners: readonly Corner[],
  inside: readonly (readonly [PointName, number, number])[] = [],
  darts: readonly Dart[] = [],
  levelLines: Piece["levelLines"] = [],
): Piece {
  const points: Partial<Record<PointName, NamedPoint>> = {};
  for (const [point, x, y] of [...corners, ...inside]) points[point] = { at: piecePoint(x, y), level: "bust" };
  const edges = corners.map(([from, , , seam, mouthOf = null], index): Edge => {
    const [to] = corners[(index + 1) % corners.length] ?? [from];
    return { from, to, seam, curve: null, mouthOf };
  });
  return { name, points, edges, darts, levelLines, centreOnFold: false };
}

export const dart = (name: DartName, seam: SeamName, aimsAt: PointName | null): Dart => ({
  name,
  seam,
  inner: `${name}Inner`,
  outer: `${name}Outer`,
  apex: `${name}Apex`,
  aimsAt,
});

/** @param wider by how much bust and waist lie further out, and by how much the mouth of the waist dart is wider */
export const handFront = (wider = { bust: 0, waist: 0, mouth: 0 }): Piece =>
  pieceOf(
    "front",
    [
      ["centreNeck", 0, 80, "neck"],
      ["sideNeck", 70, 0, "shoulder"],
      ["shoulderTip", 170, 40, "armhole"],
      ["armholeTouch", 160, 140, "armhole"],
      ["underarm", 240 + wider.bust, 200, "side"],
      ["sideBust", 237 + wider.bust, 220, "side"],
      ["sideDartInner", 234 + wider.bust, 240, "side", "sideDart"],
      ["sideDartOuter", 230 + wider.bust, 270, "side"],
      ["sideWaist", 220 + wider.waist, 400, "waist"],
      ["waistDartOuter", 130 + wider.mouth, 400, "waist", "waistDart"],
      ["waistDartInner", 90, 400, "waist"],
      ["centreWaist", 0, 400, "centre"],
    ],
    [
      ["bustPoint", 100, 255],
      ["centreBust", 0, 255],
      ["sideDartApex", 125, 255],
      ["waistDartApex", 110, 280],
    ],
    [dart("sideDart", "side", "bustPoint"), dart("waistDart", "waist", "bustPoint")],
    [
      { level: "bust", along: { points: ["centreBust", "sideBust"] } },
      { level: "waist", along: { seam: "waist" } },
    ],
  );

/** @param armhole where it comes nearest to the centre between two of its corners */
export const handBack = (): Piece =>
  pieceOf(
    "back",
    [
      ["centreNeck", 10, 20, "neck"],
      ["sideNeck", 80, 0, "shoulder"],
      ["shoulderTip", 180, 30, "armhole"],
      ["armholeTouch", 170, 140, "armhole"],
      ["underarm", 250, 200, "side"],
      ["sideWaist", 230, 420, "waist"],
      ["centreWaist", 10, 420, "centre"],
    ],
    [["centreBust", 10, 260]],
  );

export const handCentreFront = (): Piece =>
  pieceOf("centreFront", [
    ["centreNeck", 0, 80, "neck"],
    ["sideNeck", 70, 0, "shoulder"],
    ["princessTop", 120, 20, "princess"],
    ["princessBust", 100, 255, "princess"],
    ["princessWaist", 90, 400, "waist"],
    ["centreWaist", 0, 400, "centre"],
  ]);

export const handSideFront = (): Piece =>
  pieceOf("sideFront", [
    ["princessTop", 120, 20, "shoulder"],
    ["shoulderTip", 170, 40, "armhole"],
    ["armholeTouch", 160, 140, "armhole"],
    ["underarm", 240, 200, "side"],
    ["sideWaist", 220, 400, "waist"],
    ["princessWaist", 130, 400, "princess"],
    ["princessBust", 100, 250, "princess"],
  ]);

export const handCup = (): Piece =>
  pieceOf(
    "cup",
    [
      ["centreNeck", 0, 160, "neck"],
      ["strapInner", 90, 80, "strap"],
      ["strapOuter", 110, 80, "armhole"],
      ["underarm", 240, 200, "side"],
      ["sideUnderBust", 225, 300, "underBust"],
      ["underBustDartOuter", 120, 310, "underBust", "underBustDart"],
      ["underBustDartInner", 80, 310, "underBust"],
      ["underBustCentre", 0, 300, "centre"],
    ],
    [
      ["bustPoint", 100, 230],
      ["underBustDartApex", 100, 250],
    ],
    [dart("underBustDart", "underBust", "bustPoint")],
  );

export const handBand = (): Piece =>
  pieceOf("frontBand", [
    ["underBustCentre", 0, 300, "underBust"],
    ["bandTopMiddle", 110, 305, "underBust"],
    ["sideUnderBust", 210, 300, "side"],
    ["sideWaist", 200, 400, "waist"],
    ["waistMiddle", 100, 405, "waist"],
    ["centreWaist", 0, 400, "centre"],
  ]);

export const handBasque = (name: "frontBasque" | "backBasque"): Piece =>
  pieceOf(
    name,
    [
      ["centreWaist", 0, 400, "waist"],
      ["waistDartInner", 80, 400, "waist", "waistDart"],
      ["waistDartOuter", 100, 400, "waist"],
      ["sideWaist", 200, 400, "side"],
      ["sideHip", 250, 600, "side"],
      ["sideHem", 255, 640, "hem"],
      ["centreHem", 0, 640, "centre"],
      ["centreHip", 0, 600, "centre"],
    ],
    [["waistDartApex", 90, 500]],
    [dart("waistDart", "waist", null)],
    [{ level: "hip", along: { points: ["centreHip", "sideHip"] } }],
  );
