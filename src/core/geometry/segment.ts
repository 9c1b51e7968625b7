/** Straight segments and lines: nearest points, intersections, distances, reflections. Lengths in mm. */
import { SAME_POINT } from "../tolerance";
import type { Mm } from "../units";
import { between, distance, pointLike, type Frame, type Point } from "./point";

/** The place on a curve nearest to a point: its parameter, the place itself and how far off it is, in mm. */
export interface Nearest<F extends Frame> {
  readonly t: number;
  readonly point: Point<F>;
  readonly distance: Mm;
}

/** Where two curves meet: the parameter on the first, the one on the second, and the place. */
export interface Meeting<F extends Frame> {
  readonly t1: number;
  readonly t2: number;
  readonly point: Point<F>;
}

/**
 * The nearest place on the segment from a to b; its parameter is within 0..1. A segment without length is the point a.
 *
 * @source the foot of the perpendicular, held between the ends
 */
export function segmentNearest<F extends Frame>(a: Point<F>, b: Point<NoInfer<F>>, p: Point<NoInfer<F>>): Nearest<F> {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / square));
  const point = t === 1 ? b : between(a, b, t);
  return { t, point, distance: distance(point, p) };
}

/**
 * Where the segments a–b and c–d meet, ordered along a–b.
 *
 * An end that lies within SAME_POINT of the other segment counts as a meeting and is returned with its exact
 * parameter and place. Two segments that cross give one meeting; two that run along each other give both ends of the
 * shared stretch (one, if it is shorter than SAME_POINT); otherwise none.
 *
 * @source the solution of a + t1·(b - a) = c + t2·(d - c) by cross products
 */
export function segmentIntersections<F extends Frame>(
  a: Point<F>,
  b: Point<NoInfer<F>>,
  c: Point<NoInfer<F>>,
  d: Point<NoInfer<F>>,
): readonly Meeting<F>[] {
  const ends: Meeting<F>[] = [];
  const keep = (t1: number, t2: number, point: Point<F>): void => {
    if (!ends.some((end) => distance(end.point, point) <= SAME_POINT)) ends.push({ t1, t2, point });
  };
  for (const t2 of [0, 1]) {
    const end = t2 === 0 ? c : d;
    const near = segmentNearest(a, b, end);
    if (near.distance <= SAME_POINT) {
      // Where two ends coincide both parameters are exact.
      const t1 = distance(a, end) <= SAME_POINT ? 0 : distance(b, end) <= SAME_POINT ? 1 : near.t;
      keep(t1, t2, end);
    }
  }
  for (const t1 of [0, 1]) {
    const end = t1 === 0 ? a : b;
    const near = segmentNearest(c, d, end);
    if (near.distance <= SAME_POINT) keep(t1, near.t, end);
  }
  if (ends.length > 1) {
    ends.sort((p, q) => p.t1 - q.t1);
    return ends.filter((_, index) => index === 0 || index === ends.length - 1);
  }
  if (ends.length === 1) return ends;
  const ux = b.x - a.x;
  const uy = b.y - a.y;
  const vx = d.x - c.x;
  const vy = d.y - c.y;
  const cross = ux * vy - uy * vx;
  if (cross === 0) return [];
  const wx = c.x - a.x;
  const wy = c.y - a.y;
  const t1 = (wx * vy - wy * vx) / cross;
  const t2 = (wx * uy - wy * ux) / cross;
  return t1 >= 0 && t1 <= 1 && t2 >= 0 && t2 <= 1 ? [{ t1, t2, point: between(a, b, t1) }] : [];
}

/**
 * How far p lies from the endless line through a and b, in mm: positive on the side to which +x turns towards +y
 * (right of the way from a to b on screen). Where a and b coincide it is the plain distance from a.
 *
 * @source twice the area of the triangle a, b, p over its base
 */
export function lineDistance<F extends Frame>(p: Point<F>, a: Point<NoInfer<F>>, b: Point<NoInfer<F>>): Mm {
  const base = distance(a, b);
  if (base === 0) return distance(a, p);
  return ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / base;
}

/**
 * The mirror image of p in the endless line through a and b. Where a and b coincide there is no line and p is
 * reflected in the point a.
 *
 * @source p moved by twice its perpendicular to the line
 */
export function reflectInLine<F extends Frame>(p: Point<F>, a: Point<NoInfer<F>>, b: Point<NoInfer<F>>): Point<F> {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const square = dx * dx + dy * dy;
  const share = square === 0 ? 0 : ((p.x - a.x) * dx + (p.y - a.y) * dy) / square;
  return pointLike(p, 2 * (a.x + share * dx) - p.x, 2 * (a.y + share * dy) - p.y);
}
