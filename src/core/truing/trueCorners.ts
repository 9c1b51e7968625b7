/** Truing of corners: square at the centre line, straight together where two pieces are joined; lengths kept. */
import { CENTRE_CORNERS } from "../pattern/centreCorners";
import type { TruingChange } from "./changes";
import { cornerAtDegrees, squareAt, squareWithin, straightAt } from "../girth/cornerAngle";
import { pieceIn, piecesOf, withPiece } from "../pattern/pieceSet";
import { joinsOf } from "../pattern/sewnTogether";
import type { Piece, PointName } from "../pattern/piece";
import { invariant } from "../result";
import { fitHandles } from "../surgery/fitHandles";
import { smoothStretchAt, stretchLength } from "../pattern/seamStretch";
import { edgeTurned } from "../surgery/straightThrough";
import { JOINED_CORNER_DEGREES } from "../tolerance";
import { radiansFromDegrees } from "../units";
import { hasCorner, offCentre, runningOn, type EdgeEnd } from "./joins";
import type { Truing } from "./truing";

export const squareCorners: Truing = (pieces, changes) =>
  piecesOf(pieces).reduce((set, { name }) => {
    for (const corner of CENTRE_CORNERS) {
      const piece = pieceIn(set, name);
      if (!hasCorner(piece, corner)) continue;
      const off = cornerAtDegrees(piece, corner) - squareAt(piece, corner);
      if (Math.abs(off) <= squareWithin(piece, corner)) continue;
      set = withPiece(set, narrowed(piece, offCentre(piece, corner), off, corner, changes));
    }
    return set;
  }, pieces);

export const straightenJoins: Truing = (pieces, changes) =>
  joinsOf(pieces).reduce((set, { point, first, second }) => {
    const [one, other] = [pieceIn(set, first), pieceIn(set, second)];
    const off = cornerAtDegrees(one, point) + cornerAtDegrees(other, point) - straightAt(one, other, point);
    if (Math.abs(off) <= JOINED_CORNER_DEGREES) return set;
    const turned = [one, other].map((piece) => narrowed(piece, runningOn(piece, point), off / 2, point, changes));
    return turned.reduce(withPiece, set);
  }, pieces);

/** A corner made smaller by an angle: the end of one of its edges turned, the edge as long as before. */
function narrowed(
  piece: Piece,
  { index, end }: EdgeEnd,
  degrees: number,
  corner: PointName,
  changes: TruingChange[],
): Piece {
  const edge = invariant(piece.edges[index], "edge");
  changes.push({ piece: piece.name, seam: edge.seam, what: "cornerSquared", point: corner, amount: Math.abs(degrees) });
  const turned = edgeTurned(piece, index, end, radiansFromDegrees(end === "start" ? degrees : -degrees));
  return fitHandles(turned, [index], stretchLength(piece, smoothStretchAt(piece, index)));
}
