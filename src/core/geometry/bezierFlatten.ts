/** Cubic Béziers as chains of straight lines. */
import { CoreBug } from "../result";
import type { Mm } from "../units";
import { cubicPointAt, type Cubic } from "./bezier";
import type { Frame, Point } from "./point";

/**
 * Points along the curve, both ends among them, whose straight connections stay within `tolerance` mm of it.
 *
 * The points are evenly spaced in t; their number comes from the greatest second difference of the control points,
 * which bounds the second derivative and with it how far a chord can leave the arc.
 *
 * @throws CoreBug if the tolerance is not positive or the curve not finite
 * @source Wang's bound: n² ≥ d(d - 1) / 8 · max|P(i) - 2P(i+1) + P(i+2)| / tolerance, with degree d = 3
 */
export function cubicFlatten<F extends Frame>(c: Cubic<F>, tolerance: Mm): readonly Point<F>[] {
  const ux = c.a.x - 2 * c.c1.x + c.c2.x;
  const uy = c.a.y - 2 * c.c1.y + c.c2.y;
  const vx = c.c1.x - 2 * c.c2.x + c.b.x;
  const vy = c.c1.y - 2 * c.c2.y + c.b.y;
  const bend = Math.sqrt(Math.max(ux * ux + uy * uy, vx * vx + vy * vy));
  const pieces = Math.max(1, Math.ceil(Math.sqrt((0.75 * bend) / tolerance)));
  if (!(tolerance > 0) || !Number.isFinite(pieces)) throw new CoreBug(`cannot flatten a curve to ${tolerance} mm`);
  const points: Point<F>[] = [c.a];
  for (let i = 1; i < pieces; i++) points.push(cubicPointAt(c, i / pieces));
  points.push(c.b);
  return points;
}
