/** The nearest place on any of several lines: those whose box lies further off than what was found are not searched. */
import { edgeHullBounds, edgeNearest, type EdgeCurve } from "../geometry/edgeCurve";
import type { PiecePoint } from "../geometry/point";
import type { Nearest } from "../geometry/segment";
import { SAME_POINT } from "../tolerance";

/** Of lines that are as near as each other the first; null where there are none. */
export function nearestOfAll(lines: readonly EdgeCurve<"piece">[]): (at: PiecePoint) => Nearest<"piece"> | null {
  const boxed = lines.map((line) => ({ line, box: edgeHullBounds(line) }));
  return (at) => {
    let best: Nearest<"piece"> | null = null;
    for (const { line, box } of boxed) {
      const dx = Math.max(0, box.min.x - at.x, at.x - box.max.x);
      const dy = Math.max(0, box.min.y - at.y, at.y - box.max.y);
      if (best !== null && Math.hypot(dx, dy) > best.distance + SAME_POINT) continue;
      const near = edgeNearest(line, at);
      if (best === null || near.distance < best.distance) best = near;
    }
    return best;
  };
}
