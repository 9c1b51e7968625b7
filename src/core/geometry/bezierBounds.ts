/** Boxes around cubic Béziers, in mm. */
import { cubicTurns, cubicValue } from "./bernstein";
import type { Cubic } from "./bezier";
import type { Bounds } from "./bounds";
import { pointLike, type Frame } from "./point";

/**
 * The smallest upright box that holds the curve.
 *
 * @source each coordinate is extreme at an end or where its own derivative vanishes
 */
export function cubicBounds<F extends Frame>(c: Cubic<F>): Bounds<F> {
  const { a, c1, c2, b } = c;
  let minX = Math.min(a.x, b.x);
  let maxX = Math.max(a.x, b.x);
  let minY = Math.min(a.y, b.y);
  let maxY = Math.max(a.y, b.y);
  // Controls between the ends cannot push the curve out, which spares most edges the square root.
  if (Math.min(c1.x, c2.x) < minX || Math.max(c1.x, c2.x) > maxX) {
    for (const t of cubicTurns(a.x, c1.x, c2.x, b.x)) {
      const x = cubicValue(a.x, c1.x, c2.x, b.x, t);
      minX = Math.min(minX, x);
      maxX = Math.max(maxX, x);
    }
  }
  if (Math.min(c1.y, c2.y) < minY || Math.max(c1.y, c2.y) > maxY) {
    for (const t of cubicTurns(a.y, c1.y, c2.y, b.y)) {
      const y = cubicValue(a.y, c1.y, c2.y, b.y, t);
      minY = Math.min(minY, y);
      maxY = Math.max(maxY, y);
    }
  }
  return { min: pointLike(a, minX, minY), max: pointLike(a, maxX, maxY) };
}

/** The box of the four control points: it holds the curve (convex hull property), costs less, and may be larger. */
export const cubicHullBounds = <F extends Frame>({ a, c1, c2, b }: Cubic<F>): Bounds<F> => ({
  min: pointLike(a, Math.min(a.x, c1.x, c2.x, b.x), Math.min(a.y, c1.y, c2.y, b.y)),
  max: pointLike(a, Math.max(a.x, c1.x, c2.x, b.x), Math.max(a.y, c1.y, c2.y, b.y)),
});
