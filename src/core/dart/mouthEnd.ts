/** Moving a mouth end: the seam beside it is redrawn to reach it, its control going along. */
import { shift, type PiecePoint } from "../geometry/point";
import { invariant } from "../result";
import { isBend, pointOf, type Edge, type NamedPoint, type Piece, type PointName } from "../pattern/piece";
import { placedAt, redrawn, withCurve } from "../pattern/redraw";
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
  const edges: Edge[] = [...piece.edges];
  const beside: number[] = [];
  for (const [index, edge] of piece.edges.entries()) {
    if (edge.from !== name && edge.to !== name) continue;
    beside.push(index);
    if (edge.curve === null) continue;
    const { c1, c2 } = edge.curve;
    edges[index] = withCurve(edge, {
      c1: edge.from === name ? shift(c1, dx, dy) : c1,
      c2: edge.to === name ? shift(c2, dx, dy) : c2,
    });
  }
  const points: Partial<Record<PointName, NamedPoint>> = { ...piece.points };
  points[name] = placedAt(invariant(piece.points[name], name), to);
  if (isBend(name)) return redrawn(piece, points, edges);
  for (const index of beside) {
    const edge = invariant(piece.edges[index], "edge");
    if (!isBend(edge.from) && !isBend(edge.to)) continue;
    const stretch = stretchAt(piece, index);
    if (stretch.length === 1) continue;
    const bent = withEndMoved(piece, stretch, edge.from === name ? "start" : "end", to);
    for (const at of stretch) {
      const drawn = invariant(bent.edges[at], "edge");
      edges[at] = drawn;
      if (isBend(drawn.to)) points[drawn.to] = invariant(bent.points[drawn.to], drawn.to);
    }
  }
  return redrawn(piece, points, edges);
}
