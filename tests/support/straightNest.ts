/**
 * A nest of straight lines, drawn by hand: all its girths are sums that can be done in the head. The waist lies level, so a half
 * piece's finished waist is the place of its side waist less its dart; the bust line lies level too, and no dart crosses it.
 */
import { piecePoint } from "../../src/core/geometry/point";
import type { TracedNest } from "../../src/core/ownPieces/ownReading";
import type { Edge, LevelName, NamedPoint, Piece, PieceName, PointName, SeamName } from "../../src/core/pattern/piece";

export interface StraightSize {
  readonly label: string;
  /** Half pieces: widths at the bust and at the waist, where darts are open. */
  readonly front: { readonly bust: number; readonly waist: number; readonly dart: number };
  readonly back: { readonly bust: number; readonly waist: number; readonly dart: number };
}

type Corner = readonly [PointName, number, number, LevelName, SeamName, ("waistDart" | "sideDart")?];

function pieceOf(name: PieceName, corners: readonly Corner[], inside: readonly Corner[], darts: Piece["darts"]): Piece {
  const points: Partial<Record<PointName, NamedPoint>> = {};
  for (const [point, x, y, level] of [...corners, ...inside]) points[point] = { at: piecePoint(x, y), level };
  const edges = corners.map(([from, , , , seam, mouthOf = null], index): Edge => {
    const [to] = corners[(index + 1) % corners.length] ?? corners[0] ?? [from];
    return { from, to, seam, curve: null, mouthOf };
  });
  return {
    name,
    points,
    edges,
    darts,
    levelLines: [
      { level: "bust", along: { points: ["centreBust", "sideBust"] } },
      { level: "waist", along: { seam: "waist" } },
    ],
    centreOnFold: name === "front",
  };
}

const waistDart = (aimsAt: PointName | null): Piece["darts"][number] => ({
  name: "waistDart",
  seam: "waist",
  inner: "waistDartInner",
  outer: "waistDartOuter",
  apex: "waistDartApex",
  aimsAt,
});

/** Heights: neck 0 to 80, underarm 200, bust 250, waist 400. */
export function straightFront({ bust, waist, dart }: StraightSize["front"]): Piece {
  return pieceOf(
    "front",
    [
      ["centreNeck", 0, 80, "neck", "neck"],
      ["sideNeck", 70, 0, "neck", "shoulder"],
      ["shoulderTip", 170, 40, "shoulder", "armhole"],
      ["armholeTouch", 160, 140, "shoulder", "armhole"],
      ["underarm", bust, 200, "underarm", "side"],
      ["sideBust", bust, 250, "bust", "side"],
      ["sideDartInner", bust + (waist - bust) * 0.2, 280, "bust", "side", "sideDart"],
      ["sideDartOuter", bust + (waist - bust) * 0.4, 310, "bust", "side"],
      ["sideWaist", waist, 400, "waist", "waist"],
      ["waistDartOuter", 95 + dart / 2, 400, "bust", "waist", "waistDart"],
      ["waistDartInner", 95 - dart / 2, 400, "bust", "waist"],
      ["centreWaist", 0, 400, "waist", "centre"],
      ["centreBust", 0, 250, "bust", "centre"],
    ],
    [
      ["bustPoint", 95, 250, "bust", "neck"],
      ["waistDartApex", 95, 275, "bust", "neck"],
      ["sideDartApex", 130, 262, "bust", "neck"],
    ],
    [
      {
        name: "sideDart",
        seam: "side",
        inner: "sideDartInner",
        outer: "sideDartOuter",
        apex: "sideDartApex",
        aimsAt: "bustPoint",
      },
      waistDart("bustPoint"),
    ],
  );
}

export function straightBack({ bust, waist, dart }: StraightSize["back"]): Piece {
  return pieceOf(
    "back",
    [
      ["centreNeck", 0, 20, "neck", "neck"],
      ["sideNeck", 70, 0, "neck", "shoulder"],
      ["shoulderTip", 175, 40, "shoulder", "armhole"],
      ["armholeTouch", 170, 140, "shoulder", "armhole"],
      ["underarm", bust, 200, "underarm", "side"],
      ["sideBust", bust, 250, "bust", "side"],
      ["sideWaist", waist, 400, "waist", "waist"],
      ["waistDartOuter", 95 + dart / 2, 400, "bust", "waist", "waistDart"],
      ["waistDartInner", 95 - dart / 2, 400, "bust", "waist"],
      ["centreWaist", 0, 400, "waist", "centre"],
      ["centreBust", 0, 250, "bust", "centre"],
    ],
    [["waistDartApex", 95, 260, "bust", "neck"]],
    [waistDart(null)],
  );
}

export const straightNest = (sizes: readonly StraightSize[], cup: string | null = null): TracedNest => ({
  sizes: sizes.map(({ label, front, back }) => ({ label, pieces: [straightFront(front), straightBack(back)] })),
  cup,
  labels: {},
});
