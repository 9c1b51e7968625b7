/** Sewn length of a seam on one piece: its edges, darts closed. */
import { edgeLength } from "../geometry/edgeCurve";
import type { Piece, SeamName } from "../pattern/piece";
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
