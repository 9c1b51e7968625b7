/** Moving a mouth end: the seam beside it is redrawn to reach it, its control going along. */
import { shift, type PiecePoint } from "../geometry/point";
import { invariant } from "../result";
import { isBend, pointOf, type Edge, type Piece, type PointName } from "../pattern/piece";
import { stretchAt, withEndMoved } from "../pattern/seamStretch";

/**
 * The piece with one named outline point moved, the controls beside it moved alike; where the seam beside it has bends, all of
 * it as far as its next corner.
 */
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
  const points = { ...piece.points, [name]: { ...invariant(piece.points[name], name), at: to } };
  if (isBend(name)) return { ...piece, edges, points };
  piece.edges.forEach((edge, index) => {
    if (edge.from !== name && edge.to !== name) return;
    const stretch = stretchAt(piece, index);
    if (stretch.length === 1) return;
    const bent = withEndMoved(piece, stretch, edge.from === name ? "start" : "end", to);
    for (const at of stretch) {
      const drawn = invariant(bent.edges[at], "edge");
      edges[at] = drawn;
      if (isBend(drawn.to)) points[drawn.to] = invariant(bent.points[drawn.to], drawn.to);
    }
  });
  return { ...piece, edges, points };
}
