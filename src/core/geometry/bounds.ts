/** Upright boxes around figures, in mm. */
import { CoreBug } from "../result";
import type { Mm } from "../units";
import { pointLike, type Frame, type Point } from "./point";

/** The corner with the least x and y, and the one with the greatest. */
export interface Bounds<F extends Frame> {
  readonly min: Point<F>;
  readonly max: Point<F>;
}

/** The smallest box that holds both. */
export const joinBounds = <F extends Frame>(p: Bounds<F>, q: Bounds<NoInfer<F>>): Bounds<F> => ({
  min: pointLike(p.min, Math.min(p.min.x, q.min.x), Math.min(p.min.y, q.min.y)),
  max: pointLike(p.min, Math.max(p.max.x, q.max.x), Math.max(p.max.y, q.max.y)),
});

/** Whether two boxes come within `slack` mm of each other, or overlap. */
export const areBoundsNear = <F extends Frame>(p: Bounds<F>, q: Bounds<NoInfer<F>>, slack: Mm): boolean =>
  p.min.x <= q.max.x + slack && q.min.x <= p.max.x + slack && p.min.y <= q.max.y + slack && q.min.y <= p.max.y + slack;

/** Whether the point lies in the box widened by `slack` mm. */
export const isWithinBounds = <F extends Frame>(p: Point<F>, box: Bounds<NoInfer<F>>, slack: Mm): boolean =>
  p.x >= box.min.x - slack && p.x <= box.max.x + slack && p.y >= box.min.y - slack && p.y <= box.max.y + slack;

/**
 * The smallest upright box that holds some points.
 *
 * @throws CoreBug for none
 */
export function boundsOfPoints<F extends Frame>(points: readonly Point<F>[]): Bounds<F> {
  const [first] = points;
  if (first === undefined) throw new CoreBug("no points have no bounds");
  let [x0, y0, x1, y1] = [first.x, first.y, first.x, first.y];
  for (const { x, y } of points) {
    x0 = Math.min(x0, x);
    y0 = Math.min(y0, y);
    x1 = Math.max(x1, x);
    y1 = Math.max(y1, y);
  }
  return { min: pointLike(first, x0, y0), max: pointLike(first, x1, y1) };
}

/** How the box of some points lies and how large it is; a side without length counts as 1 mm, to be divided by. */
export function extentOf<F extends Frame>(
  points: readonly Point<F>[],
): {
  readonly x: Mm;
  readonly y: Mm;
  readonly width: Mm;
  readonly height: Mm;
} {
  const { min, max } = boundsOfPoints(points);
  return { x: min.x, y: min.y, width: max.x - min.x || 1, height: max.y - min.y || 1 };
}
