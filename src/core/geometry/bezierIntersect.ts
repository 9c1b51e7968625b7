/** Where a cubic Bézier meets a straight segment, and itself. Places to CURVE_ACCURACY mm. */
import { END_PARAMETER, SAME_POINT, SOLVER_ACCURACY } from "../tolerance";
import { cubicZeros } from "./bernstein";
import { cubicPointAt, type Cubic } from "./bezier";
import { addMeeting, endMeetings, inOrder, sharedStretch } from "./meetings";
import { between, distance, type Frame, type Point } from "./point";
import { lineDistance, type Meeting } from "./segment";

/**
 * Where the cubic meets the segment from p to q, in order along the cubic: t1 on the cubic, t2 on the segment.
 *
 * An end of either that lies within SAME_POINT of the other counts, with its exact parameter; so does a touch within
 * SAME_POINT. Meetings along which the two stay within SAME_POINT are one. Where they run along each other the two
 * ends of the shared stretch are returned.
 *
 * @source zeros of the distance from the line, whose Bernstein ordinates are those of the control points
 */
export function cubicSegmentIntersections<F extends Frame>(
  c: Cubic<F>,
  p: Point<NoInfer<F>>,
  q: Point<NoInfer<F>>,
): readonly Meeting<F>[] {
  const dx = q.x - p.x;
  const dy = q.y - p.y;
  const square = dx * dx + dy * dy;
  const line: Cubic<F> = { a: p, c1: between(p, q, 1 / 3), c2: between(p, q, 2 / 3), b: q };
  // A segment without length has no side to be on, but its ends may still lie on the curve.
  if (square <= SAME_POINT * SAME_POINT) return inOrder(endMeetings(c, line));
  const f0 = lineDistance(c.a, p, q);
  const f1 = lineDistance(c.c1, p, q);
  const f2 = lineDistance(c.c2, p, q);
  const f3 = lineDistance(c.b, p, q);
  if (Math.min(f0, f1, f2, f3) > SAME_POINT || Math.max(f0, f1, f2, f3) < -SAME_POINT) return [];
  const found = endMeetings(c, line);
  const shared = sharedStretch(found, c, line);
  if (shared !== null) return inOrder(shared);
  for (const t1 of cubicZeros(f0, f1, f2, f3, SAME_POINT)) {
    const point = cubicPointAt(c, t1);
    const t2 = ((point.x - p.x) * dx + (point.y - p.y) * dy) / square;
    if (t2 < 0 || t2 > 1) continue;
    const gap = Math.abs(lineDistance(point, p, q));
    addMeeting(found, { t1, t2, point, kind: gap > SOLVER_ACCURACY ? "touch" : "crossing", gap }, c, line);
  }
  return inOrder(found);
}

/**
 * Where a cubic crosses itself: the two parameters, t1 before t2, and the place; null if it does not. A cusp is no
 * crossing. A curve that ends where it starts gives 0 and 1.
 *
 * @source B(t) = B(u) divided by t - u is linear in t + u and t² + tu + u², so both follow by Cramer's rule
 */
export function cubicSelfCrossing<F extends Frame>(c: Cubic<F>): Meeting<F> | null {
  const linX = 3 * (c.c1.x - c.a.x);
  const linY = 3 * (c.c1.y - c.a.y);
  const quadX = 3 * (c.c2.x - 2 * c.c1.x + c.a.x);
  const quadY = 3 * (c.c2.y - 2 * c.c1.y + c.a.y);
  const cubX = c.b.x - c.a.x + 3 * (c.c1.x - c.c2.x);
  const cubY = c.b.y - c.a.y + 3 * (c.c1.y - c.c2.y);
  const determinant = cubX * quadY - cubY * quadX;
  if (determinant === 0) return null;
  const sum = -(cubX * linY - cubY * linX) / determinant;
  const squares = -(linX * quadY - linY * quadX) / determinant;
  const product = sum * sum - squares;
  const discriminant = sum * sum - 4 * product;
  if (!(discriminant > 0)) return null;
  const root = Math.sqrt(discriminant);
  const t1 = snapped((sum - root) / 2);
  const t2 = snapped((sum + root) / 2);
  if (t1 < 0 || t2 > 1 || t1 >= t2) return null;
  const point = cubicPointAt(c, t1);
  // Nearly parallel coefficients leave the two parameters uncertain; and a loop no larger than a point is a cusp.
  const middle = cubicPointAt(c, (t1 + t2) / 2);
  if (distance(point, cubicPointAt(c, t2)) > SAME_POINT || distance(point, middle) <= SAME_POINT) return null;
  return { t1, t2, point };
}

const snapped = (t: number): number => (Math.abs(t) <= END_PARAMETER ? 0 : Math.abs(t - 1) <= END_PARAMETER ? 1 : t);
