/**
 * Parallels of curves, and where they meet: what lies beside a line by an allowance, outside it or inside.
 */
import { edgePointAt, edgeTangentAt, type EdgeCurve } from "../geometry/edgeCurve";
import { between, directionOf, distance, polar, type PiecePoint } from "../geometry/point";
import { invariant } from "../result";
import { CUTTING_ACCURACY, LINES_PARALLEL, SAME_POINT } from "../tolerance";
import { radians, type Mm, type Radians } from "../units";

/** A line that starts at a point and goes one way. */
export interface Ray {
  readonly from: PiecePoint;
  readonly way: Radians;
}

export const backwards = (way: Radians): Radians => radians(way + Math.PI);

/** Longer than any piece: how far a stretch is continued to look for where it meets another, mm. */
const FAR: Mm = 2000;
/**
 * Points on the parallel of a curve, dense enough that the straight way from one to the next is near it.
 *
 * @param off to the outside of a ring that goes +x towards +y; negative: to its inside. mm
 */
export function parallelOf(curve: EdgeCurve<"piece">, off: Mm, accuracy = CUTTING_ACCURACY): readonly PiecePoint[] {
  const at = (t: number): PiecePoint => beside(edgePointAt(curve, t), edgeTangentAt(curve, t), off);
  if (curve.curve === null) return [at(0), at(1)];
  const points: PiecePoint[] = [at(0)];
  // Halved until the middle of a stretch lies on it, and its quarters too, since an S has its middle on the chord.
  const add = (t0: number, p0: PiecePoint, t1: number, p1: PiecePoint, depth: number): void => {
    const middle = at((t0 + t1) / 2);
    const near = [0.25, 0.5, 0.75].every((s) => offChord(at(t0 + (t1 - t0) * s), p0, p1) < accuracy / 2);
    if (depth >= 2 && (near || depth >= 10)) {
      points.push(p1);
      return;
    }
    add(t0, p0, (t0 + t1) / 2, middle, depth + 1);
    add((t0 + t1) / 2, middle, t1, p1, depth + 1);
  };
  add(0, at(0), 1, at(1), 0);
  return points;
}

/** Square outside a line that goes a way, on a ring that goes clockwise on screen. */
export const beside = (at: PiecePoint, way: Radians, off: Mm): PiecePoint =>
  off === 0 ? at : polar(at, radians(way - Math.PI / 2), off);

export function offChord(p: PiecePoint, a: PiecePoint, b: PiecePoint): Mm {
  const base = distance(a, b);
  return base === 0 ? distance(a, p) : Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / base;
}

/** Where a line of points first meets another that is continued straight before its first; how many points each has passed. */
export function meetLines(
  line: readonly PiecePoint[],
  other: readonly PiecePoint[],
  continued: Radians,
): { readonly at: PiecePoint; readonly index: number; readonly along: number } | null {
  for (let along = 0; along + 1 < line.length; along += 1) {
    const [from, to] = [invariant(line[along], "point"), invariant(line[along + 1], "point")];
    const length = distance(from, to);
    if (length < SAME_POINT) continue;
    const found = meetLine({ from, way: directionOf(from, to) }, other, continued);
    if (found !== null && distance(from, found.at) <= length + SAME_POINT) return { ...found, along };
  }
  return null;
}

/** Takes points off the start (or the end) of a parallel: all that lie before where it is met. */
export function shorten(points: PiecePoint[], count: number, atStart: boolean): void {
  if (atStart) points.splice(0, count);
  else if (count > 0) points.splice(points.length - count, count);
}

/** Where a ray meets a line of points that is continued straight before its first; `index` counts the points passed over. */
export function meetLine(
  ray: Ray,
  points: readonly PiecePoint[],
  continued: Radians,
): { readonly at: PiecePoint; readonly index: number } | null {
  const first = invariant(points[0], "point");
  let from = polar(first, continued, FAR);
  for (let index = 0; index < points.length; index += 1) {
    const to = invariant(points[index], "point");
    const found = meetSegment(ray, from, to);
    if (found !== null) return { at: found, index };
    from = to;
  }
  return null;
}

export function meetSegment(ray: Ray, a: PiecePoint, b: PiecePoint): PiecePoint | null {
  const length = distance(a, b);
  if (length < SAME_POINT) return null;
  const [ux, uy] = [Math.cos(ray.way), Math.sin(ray.way)];
  const [vx, vy] = [b.x - a.x, b.y - a.y];
  const cross = ux * vy - uy * vx;
  if (Math.abs(cross) < LINES_PARALLEL * length) return null;
  const [wx, wy] = [a.x - ray.from.x, a.y - ray.from.y];
  const along = (wx * vy - wy * vx) / cross;
  const share = (wx * uy - wy * ux) / cross;
  const slack = SAME_POINT / length;
  return along > -SAME_POINT && share >= -slack && share <= 1 + slack ? between(a, b, share) : null;
}

/** Where two rays, the second taken backwards, meet; null where they do not. */
export function meet(one: Ray, other: Ray): PiecePoint | null {
  const back = backwards(other.way);
  return meetSegment(one, other.from, polar(other.from, back, FAR));
}
