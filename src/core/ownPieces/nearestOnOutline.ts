/** Places on a closed outline: the one nearest to where she points, and one a little further along. */
import {
  edgeLength,
  edgeLengthBetween,
  edgeNearest,
  edgeParameterAtLength,
  edgePointAt,
  type EdgeCurve,
} from "../geometry/edgeCurve";
import { distance, type Frame, type Point } from "../geometry/point";
import type { Mm } from "../units";

/**
 * @param edges in order, each beginning where the one before ends
 * @returns null where there are none
 */
export function nearestOnOutline<F extends Frame>(
  edges: readonly EdgeCurve<F>[],
  to: Point<NoInfer<F>>,
): Point<F> | null {
  const place = placeOn(edges, to);
  return place === null ? null : place.point;
}

/**
 * The point `by` mm further along a closed outline, backwards where that is below nothing; it goes round and round.
 *
 * @param from a point on it, or the nearest on it is meant
 */
export function movedAlong<F extends Frame>(
  edges: readonly EdgeCurve<F>[],
  from: Point<NoInfer<F>>,
  by: Mm,
): Point<F> | null {
  const place = placeOn(edges, from);
  if (place === null) return null;
  const lengths = edges.map(edgeLength);
  const total = lengths.reduce((sum, length) => sum + length, 0);
  if (total === 0) return place.point;
  const wanted = place.along + by;
  let left = wanted - Math.floor(wanted / total) * total;
  for (const [at, edge] of edges.entries()) {
    const length = lengths[at] ?? 0;
    if (left <= length) return edgePointAt(edge, edgeParameterAtLength(edge, left));
    left -= length;
  }
  return place.point;
}

interface Place<F extends Frame> {
  readonly point: Point<F>;
  readonly along: Mm;
}

function placeOn<F extends Frame>(edges: readonly EdgeCurve<F>[], to: Point<NoInfer<F>>): Place<F> | null {
  let best: (Place<F> & { readonly apart: Mm }) | null = null;
  let before: Mm = 0;
  for (const edge of edges) {
    const { point, t } = edgeNearest(edge, to);
    const apart = distance(point, to);
    if (best === null || apart < best.apart) best = { point, apart, along: before + edgeLengthBetween(edge, 0, t) };
    before += edgeLength(edge);
  }
  return best;
}
