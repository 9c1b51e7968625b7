/** What one piece says of the others that it is sewn to. */
import { edgeLength } from "../geometry/edgeCurve";
import { distance, type PiecePoint } from "../geometry/point";
import { curveOf, edgeFrom, pointsBetween } from "../pattern/ring";
import { pointOf, type Piece, type PointName } from "../pattern/piece";
import { remember } from "../remember";
import type { Mm } from "../units";
import type { BuiltPiece, FromOthers } from "./buildPiece";

/** The context with what a piece adds to it; the very same as long as the piece is. */
export const contextOf = remember(
  ["made", "others"],
  ({ made, others }: { readonly made: BuiltPiece; readonly others: FromOthers }): FromOthers => {
    const sideDepth = new Map(others.sideDepth);
    const bustPoint = new Map<string, PiecePoint>(others.bustPoint);
    const princessUpper = new Map(others.princessUpper);
    const strapLength = new Map(others.strapLength);
    for (const [index, piece] of made.pieces.entries()) {
      const label = made.traced[index]?.label;
      if (label === undefined) continue;
      if (hasCorners(piece, "underarm", "sideBust")) sideDepth.set(label, sewnBetween(piece, "underarm", "sideBust"));
      const bust = piece.points.bustPoint?.at;
      if (bust !== undefined) bustPoint.set(label, bust);
      if (hasCorners(piece, "princessTop", "princessBust"))
        princessUpper.set(label, sewnBetween(piece, "princessTop", "princessBust"));
      if (hasCorners(piece, "strapBackOuter", "strapFrontOuter"))
        strapLength.set(label, distance(pointOf(piece, "strapBackOuter"), pointOf(piece, "strapFrontOuter")));
    }
    return { sideDepth, bustPoint, princessUpper, strapLength };
  },
);

const hasCorners = (piece: Piece, ...names: readonly PointName[]): boolean =>
  names.every((name) => piece.edges.some(({ from }) => from === name));

/** Length of the ring from one corner on to another, mouths of darts left out; mm. */
function sewnBetween(piece: Piece, from: PointName, to: PointName): Mm {
  const along = pointsBetween(piece, from, to);
  let length: Mm = 0;
  for (const name of along) {
    const edge = piece.edges[edgeFrom(piece, name)];
    if (name !== to && edge !== undefined && edge.mouthOf === null) length += edgeLength(curveOf(piece, edge));
  }
  return length;
}
