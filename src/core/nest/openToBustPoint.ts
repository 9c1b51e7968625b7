/** Printed pieces made ready for their bust to be altered: the darts that serve it reach the bust point again. */
import type { Pattern } from "../decisions/pattern";
import { shift, type PiecePoint } from "../geometry/point";
import { draftFrontBlock } from "../draft/frontBlock";
import { draftMeasuresFor } from "../draft/draftMeasures";
import { pieceIn, withPiece, type PieceSet } from "../pattern/pieceSet";
import { pointOf, type NamedPoint, type Piece, type PieceName, type PointName } from "../pattern/piece";
import { invariant } from "../result";
import { withArmholeHinge } from "../surgery/fullBust";

/**
 * @param size place of the base size in the chart; where a piece has no armhole to turn about, our draft's lies as far from the
 *             bust point
 */
export function openToBustPoint(pieces: PieceSet, name: PieceName, pattern: Pattern, size: number): PieceSet {
  const piece = pieceIn(pieces, name);
  if (piece.name === "centreFront") return pieces;
  const bustPoint: NamedPoint = { at: pointOf(piece, "bustPoint"), level: "bust" };
  const points: Partial<Record<PointName, NamedPoint>> = { ...piece.points };
  for (const { apex, aimsAt } of piece.darts) if (aimsAt === "bustPoint") points[apex] = bustPoint;
  points.bustLineInner ??= bustPoint;
  points.bustLineOuter ??= bustPoint;
  if (piece.name === "cup" && points.armholeHinge === undefined)
    points.armholeHinge = { at: beside(piece, draftOf(pattern, size), "armholeHinge"), level: "shoulder" };
  return withPiece(pieces, { ...piece, points, levelLines: piece.levelLines.map(throughBustPoint) });
}

type Line = Piece["levelLines"][number];

/** Along a line that is altered at the bust point, its two halves are told apart. */
function throughBustPoint(line: Line): Line {
  if (line.level !== "bust" || "seam" in line.along || line.along.points.includes("bustLineInner")) return line;
  const points = line.along.points.filter((name) => name !== "bustPoint");
  const [centre, ...outer] = points;
  return { ...line, along: { points: [invariant(centre, "centre"), "bustLineInner", "bustLineOuter", ...outer] } };
}

/** Where the side neck of the front lies, in the frame of its piece; of a cup, as far from the bust point as in our draft. */
export const sideNeckOf = (piece: Piece, pattern: Pattern, size: number): PiecePoint =>
  piece.points.sideNeck?.at ?? beside(piece, draftOf(pattern, size), "sideNeck");

const draftOf = ({ chart, ease }: Pattern, size: number): Piece =>
  withArmholeHinge(draftFrontBlock(draftMeasuresFor(invariant(chart.sizes[size], "row"), chart, ease)));

function beside(piece: Piece, draft: Piece, name: PointName): PiecePoint {
  const [from, to] = [pointOf(draft, "bustPoint"), pointOf(draft, name)];
  return shift(pointOf(piece, "bustPoint"), to.x - from.x, to.y - from.y);
}
