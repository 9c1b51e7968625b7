/** Moving a mouth end: the seam beside it is redrawn to reach it, its control going along. */
import { shift, type PiecePoint } from "../geometry/point";
import { invariant } from "../result";
import { pointOf, type Edge, type Piece, type PointName } from "../pattern/piece";

/** The piece with one named outline point moved, the controls beside it moved alike. */
export function moveMouthEnd(piece: Piece, name: PointName, to: PiecePoint): Piece {
  const from = pointOf(piece, name);
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  if (dx === 0 && dy === 0) return piece;
  const edges = piece.edges.map((edge): Edge => {
    if (edge.curve === null || (edge.from !== name && edge.to !== name)) return edge;
    return {
      ...edge,
      curve: {
        c1: edge.from === name ? shift(edge.curve.c1, dx, dy) : edge.curve.c1,
        c2: edge.to === name ? shift(edge.curve.c2, dx, dy) : edge.curve.c2,
      },
    };
  });
  return { ...piece, edges, points: { ...piece.points, [name]: { ...invariant(piece.points[name], name), at: to } } };
}
