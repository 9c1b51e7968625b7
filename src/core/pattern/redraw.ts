/**
 * Pieces, edges and points with a part of them drawn anew. Their fields are written out, not spread: copies are then all built
 * alike, and are made and read several times as fast. All surgery goes through here, some hundred times a plan.
 */
import type { PiecePoint } from "../geometry/point";
import { pointNames, type Dart, type Edge, type NamedPoint, type Piece, type PointName } from "./piece";

/** The same edge along another line. */
export const withCurve = ({ from, to, seam, mouthOf }: Edge, curve: Edge["curve"]): Edge => ({
  from,
  to,
  seam,
  curve,
  mouthOf,
});

/** The same seam between other corners, along another line. */
export const withEnds = ({ seam, mouthOf }: Edge, from: PointName, to: PointName, curve: Edge["curve"]): Edge => ({
  from,
  to,
  seam,
  curve,
  mouthOf,
});

/** The same point in another place. */
export const placedAt = ({ level, towards }: NamedPoint, at: PiecePoint): NamedPoint =>
  towards === undefined ? { at, level } : { at, level, towards };

/** The points with one of them put in another place, or put to them. */
export function withPoint(points: Piece["points"], name: PointName, point: NamedPoint): Piece["points"] {
  const all: Partial<Record<PointName, NamedPoint>> = { ...points };
  all[name] = point;
  return all;
}

/** The points without some of them. Put together anew: a record that something was deleted from is slow to copy ever after. */
export function withoutPoint(points: Piece["points"], gone: readonly PointName[]): Piece["points"] {
  const left: Partial<Record<PointName, NamedPoint>> = {};
  for (const name of pointNames({ points })) {
    const point = points[name];
    if (point !== undefined && !gone.includes(name)) left[name] = point;
  }
  return left;
}

/** The piece drawn anew. What a pattern that is not ours has noted on it stays. */
export function redrawn(
  piece: Piece,
  points: Piece["points"],
  edges: readonly Edge[],
  darts: readonly Dart[] = piece.darts,
): Piece {
  const { name, levelLines, centreOnFold, drawnTurns, seamEase } = piece;
  return drawnTurns === undefined && seamEase === undefined
    ? { name, points, edges, darts, levelLines, centreOnFold }
    : { ...piece, points, edges, darts };
}
