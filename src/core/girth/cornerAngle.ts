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

/** The turn that belongs to a corner within a seam, degrees: none, but where the pattern itself was drawn with one. */
export const turnWithin = (piece: Piece, point: PointName): number => piece.drawnTurns?.[point] ?? 0;

/** The inner corner that belongs there, degrees: square at the centre line, but where the pattern itself was drawn otherwise. */
export const squareAt = (piece: Piece, point: PointName): number => {
  const drawn = piece.drawnTurns?.[point];
  return drawn === undefined ? SQUARE : STRAIGHT - drawn;
};

/** What two corners make that are sewn together, degrees: a straight line, but where the pattern itself was drawn otherwise. */
export const straightAt = (one: Piece, other: Piece, point: PointName): number => {
  const [a, b] = [one.drawnTurns?.[point], other.drawnTurns?.[point]];
  return a === undefined || b === undefined ? STRAIGHT : 2 * STRAIGHT - a - b;
};

const SQUARE = 90;
const STRAIGHT = 180;
