/** Corners of a piece's outline. */
import { edgeTangentAt } from "../geometry/edgeCurve";
import { turnBetween } from "../geometry/point";
import { invariant } from "../result";
import type { Piece, PointName } from "../pattern/piece";
import { degreesFrom, radians } from "../units";
import { curveOf, edgeFrom, edgeTo } from "../pattern/ring";

/** Turn of the outline at a named point, degrees: 0 runs straight on, positive turns clockwise on screen. */
export function turnAtDegrees(piece: Piece, point: PointName): number {
  const before = invariant(piece.edges[edgeTo(piece, point)], "edge");
  const after = invariant(piece.edges[edgeFrom(piece, point)], "edge");
  const arriving = edgeTangentAt(curveOf(piece, before), 1);
  const leaving = edgeTangentAt(curveOf(piece, after), 0);
  return degreesFrom(radians(turnBetween(arriving, leaving)));
}

/** Inner corner of the piece at a named point, degrees; the outlines run clockwise, so a square corner turns by 90. */
export const cornerAtDegrees = (piece: Piece, point: PointName): number => 180 - turnAtDegrees(piece, point);
