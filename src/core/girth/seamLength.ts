/** Sewn length of a seam on one piece: its edges, darts closed. */
import { edgeLength } from "../geometry/edgeCurve";
import { pointOf, type Piece, type PointName, type SeamName } from "../pattern/piece";
import type { Mm } from "../units";
import { curveOf } from "../pattern/ring";

/** Sum of the arc lengths of the seam's edges without the mouths of darts; mm. 0 where the piece has no such seam. */
export function seamLength(piece: Piece, seam: SeamName): Mm {
  let sum = 0;
  for (const edge of piece.edges) {
    if (edge.seam === seam && edge.mouthOf === null) sum += edgeLength(curveOf(piece, edge));
  }
  return sum;
}

/** The part of a seam down to a named point of it, from its upper end; mm, darts closed. */
export function seamLengthDownTo(piece: Piece, seam: SeamName, point: PointName): Mm {
  const { y } = pointOf(piece, point);
  const isAbove = (name: PointName): boolean => pointOf(piece, name).y <= y;
  return piece.edges
    .filter((edge) => edge.seam === seam && edge.mouthOf === null && isAbove(edge.from) && isAbove(edge.to))
    .reduce((sum, edge) => sum + edgeLength(curveOf(piece, edge)), 0);
}
