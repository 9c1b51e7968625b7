/** Walking and cutting the closed ring of a piece's edges. Nothing here bends or stretches anything. */
import { edgeSplit, type EdgeCurve } from "../geometry/edgeCurve";
import { midpoint, type PiecePoint } from "../geometry/point";
import { CoreBug, invariant } from "../result";
import type { Mm } from "../units";
import { pointNames, pointOf, type Edge, type NamedPoint, type Piece, type PointName } from "./piece";
import { redrawn, withEnds, withPoint } from "./redraw";

export const curveOf = (piece: Piece, edge: Edge): EdgeCurve<"piece"> => ({
  a: pointOf(piece, edge.from),
  b: pointOf(piece, edge.to),
  curve: edge.curve,
});

export const outlineOf = (piece: Piece): EdgeCurve<"piece">[] => piece.edges.map((edge) => curveOf(piece, edge));

/** Index of the edge that starts at a point; a CoreBug where there is none. */
export function edgeFrom(piece: Piece, from: PointName): number {
  for (let index = 0; index < piece.edges.length; index += 1) if (piece.edges[index]?.from === from) return index;
  throw new CoreBug(`${piece.name} has no edge from ${from}`);
}

/** Index of the edge that ends at a point; a CoreBug where there is none. */
export function edgeTo(piece: Piece, to: PointName): number {
  for (let index = 0; index < piece.edges.length; index += 1) if (piece.edges[index]?.to === to) return index;
  throw new CoreBug(`${piece.name} has no edge to ${to}`);
}

/** Cuts the edge at a curve parameter and names the new corner; the outline keeps its shape. */
export function insertPoint(
  piece: Piece,
  edgeIndex: number,
  t: number,
  name: PointName,
  level: NamedPoint["level"],
): Piece {
  const edge = invariant(piece.edges[edgeIndex], "edge");
  const [first, second] = edgeSplit(curveOf(piece, edge), t);
  const edges = [...piece.edges];
  edges.splice(edgeIndex, 1, withEnds(edge, edge.from, name, first.curve), withEnds(edge, name, edge.to, second.curve));
  return redrawn(piece, withPoint(piece.points, name, { at: first.b, level }), edges);
}

/** The points from one corner of the ring to another, both included, going the way of the edges. */
export function pointsBetween(piece: Piece, from: PointName, to: PointName): Set<PointName> {
  const found = new Set<PointName>([from]);
  let index = edgeFrom(piece, from);
  for (let steps = 0; steps < piece.edges.length; steps += 1) {
    const edge = invariant(piece.edges[index], "edge");
    found.add(edge.to);
    if (edge.to === to) return found;
    index = (index + 1) % piece.edges.length;
  }
  throw new CoreBug(`${piece.name}: ${to} is not reached from ${from}`);
}

/** The middle of a dart's mouth. */
export const mouthMiddle = (piece: Piece, inner: PointName, outer: PointName): PiecePoint =>
  midpoint(pointOf(piece, inner), pointOf(piece, outer));

/** How far the furthest point or handle of a piece lies from where its centre line begins; Infinity where one lies nowhere. */
export function furthestOf(piece: Piece): Mm {
  let most: Mm = 0;
  const look = ({ x, y }: PiecePoint): void => {
    const out = Math.hypot(x, y);
    // Whatever is no number lies nowhere.
    most = Number.isFinite(out) ? Math.max(most, out) : Infinity;
  };
  for (const name of pointNames(piece)) look(pointOf(piece, name));
  for (const { curve } of piece.edges) {
    if (curve === null) continue;
    look(curve.c1);
    look(curve.c2);
  }
  return most;
}
