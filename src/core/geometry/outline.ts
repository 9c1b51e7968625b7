/**
 * Closed outlines: rings of edges, each starting where the one before ends and the last ending where the first starts.
 * Areas, boxes, insides and level cuts here; faults are found in outlineFaults.ts and handed on.
 */
import { CoreBug } from "../result";
import { SAME_POINT } from "../tolerance";
import type { Mm } from "../units";
import { cubicTurns, cubicValue } from "./bernstein";
import { joinBounds, isWithinBounds, type Bounds } from "./bounds";
import { edgeBounds, edgeCrossingsAtY, edgeHullBounds, edgeNearest, edgePointAt, type EdgeCurve } from "./edgeCurve";
import { pointLike, type Frame, type Point } from "./point";

export { selfCrossings, validateOutline } from "./outlineFaults";

export type Outline<F extends Frame> = readonly EdgeCurve<F>[];

/**
 * The area in mm²: positive where the outline turns +x towards +y (clockwise on screen), negative the other way round.
 * Exact for lines and cubics. Parts that a self-crossing outline goes round twice or backwards count so. 0 for no edges.
 *
 * @source Green's theorem: half the integral of x dy - y dx, in closed form for a cubic (20 × area is the sum of
 *         6, 3, 1, 3, 3, 6 times the cross products of the control points 01, 02, 03, 12, 13, 23)
 */
export function signedArea<F extends Frame>(edges: Outline<F>): number {
  const first = edges[0];
  if (first === undefined) return 0;
  // Measured from a point of the outline itself, since from a far origin large terms would cancel.
  const ox = first.a.x;
  const oy = first.a.y;
  let area = 0;
  for (const { a, b, curve } of edges) {
    const x0 = a.x - ox;
    const y0 = a.y - oy;
    const x3 = b.x - ox;
    const y3 = b.y - oy;
    if (curve === null) {
      area += (x0 * y3 - y0 * x3) / 2;
      continue;
    }
    const x1 = curve.c1.x - ox;
    const y1 = curve.c1.y - oy;
    const x2 = curve.c2.x - ox;
    const y2 = curve.c2.y - oy;
    area +=
      (6 * (x0 * y1 - y0 * x1 + x2 * y3 - y2 * x3) +
        3 * (x0 * y2 - y0 * x2 + x1 * y2 - y1 * x2 + x1 * y3 - y1 * x3) +
        (x0 * y3 - y0 * x3)) /
      20;
  }
  return area;
}

/**
 * The smallest upright box that holds the outline.
 *
 * @throws CoreBug for no edges
 */
export function outlineBounds<F extends Frame>(edges: Outline<F>): Bounds<F> {
  const [first, ...others] = edges;
  if (first === undefined) throw new CoreBug("an outline without edges has no bounds");
  return others.reduce((box, edge) => joinBounds(box, edgeBounds(edge)), edgeBounds(first));
}

/**
 * Whether the point lies inside the outline or within SAME_POINT of it. Where the outline crosses itself, what it goes
 * round twice is outside.
 *
 * @source crossing number of a level ray, on stretches of edge that do not turn in y; half-open, so that a corner
 *         counts once
 */
export function isInOutline<F extends Frame>(edges: Outline<F>, p: Point<NoInfer<F>>): boolean {
  let isInside = false;
  edges.forEach((edge, index) => {
    // Its end is the start of the next, to the last bit, or a ray through a tiny gap would miscount.
    const next = edges[(index + 1) % edges.length] ?? edge;
    if (rayCrossings(edge, next.a, p) % 2 === 1) isInside = !isInside;
  });
  if (isInside) return true;
  return edges.some(
    (edge) => isWithinBounds(p, edgeHullBounds(edge), SAME_POINT) && edgeNearest(edge, p).distance <= SAME_POINT,
  );
}

/** How often the ray from p towards +x crosses the edge, whose last point is given apart. */
function rayCrossings<F extends Frame>({ a, b, curve }: EdgeCurve<F>, end: Point<F>, p: Point<F>): number {
  if (curve === null) {
    if (a.y <= p.y === end.y <= p.y) return 0;
    return a.x + ((p.y - a.y) / (end.y - a.y)) * (end.x - a.x) > p.x ? 1 : 0;
  }
  const { c1, c2 } = curve;
  const low = Math.min(a.y, c1.y, c2.y, end.y);
  const high = Math.max(a.y, c1.y, c2.y, end.y);
  if (p.y < low || p.y > high || p.x > Math.max(a.x, c1.x, c2.x, b.x)) return 0;
  let crossings = 0;
  let fromT = 0;
  let fromY = a.y;
  for (const toT of [...cubicTurns(a.y, c1.y, c2.y, end.y), 1]) {
    const toY = cubicValue(a.y, c1.y, c2.y, end.y, toT);
    if (fromY <= p.y !== toY <= p.y) {
      const t = levelBetween(a.y - p.y, c1.y - p.y, c2.y - p.y, end.y - p.y, fromT, toT);
      if (cubicValue(a.x, c1.x, c2.x, b.x, t) > p.x) crossings++;
    }
    fromT = toT;
    fromY = toY;
  }
  return crossings;
}

/** There are no more doubles between 0 and 1 to halve to, even beside 0. */
const MOST_STEPS = 1100;

/** The zero of a stretch that does not turn, by plain halving down to neighbouring doubles. */
function levelBetween(f0: number, f1: number, f2: number, f3: number, from: number, to: number): number {
  const rises = cubicValue(f0, f1, f2, f3, from) < cubicValue(f0, f1, f2, f3, to);
  let low = from;
  let high = to;
  let mid = (low + high) / 2;
  for (let step = 0; step < MOST_STEPS && mid > low && mid < high; step += 1) {
    if (cubicValue(f0, f1, f2, f3, mid) > 0 === rises) high = mid;
    else low = mid;
    mid = (low + high) / 2;
  }
  return mid;
}

/**
 * Where the level line at `y` mm meets the outline: the x of each place in mm, ascending, without doubles. Corners and
 * turns that only touch the line count once; a level edge on the line gives both its ends.
 */
export function outlineCrossingsAtY<F extends Frame>(edges: Outline<F>, y: Mm): readonly Mm[] {
  const all = edges.flatMap((edge) => edgeCrossingsAtY(edge, y).map((t) => edgePointAt(edge, t).x));
  all.sort((p, q) => p - q);
  return all.filter((x, index) => index === 0 || x - (all[index - 1] ?? -Infinity) > SAME_POINT);
}

/** A stretch of a level line, in mm. */
export interface Span {
  readonly from: Mm;
  readonly to: Mm;
}

/** The stretches of the level line at `y` mm that lie inside the outline or along it, from left to right. */
export function outlineSpansAtY<F extends Frame>(edges: Outline<F>, y: Mm): readonly Span[] {
  const first = edges[0];
  if (first === undefined) return [];
  const spans: Span[] = [];
  const crossings = outlineCrossingsAtY(edges, y);
  crossings.forEach((to, index) => {
    const from = crossings[index - 1];
    if (from === undefined || !isInOutline(edges, pointLike(first.a, (from + to) / 2, y))) return;
    const last = spans.at(-1);
    if (last !== undefined && last.to === from) spans[spans.length - 1] = { from: last.from, to };
    else spans.push({ from, to });
  });
  return spans;
}

/** How wide the outline is at the level `y`, in mm: the sum of its spans there. */
export const outlineWidthAtY = <F extends Frame>(edges: Outline<F>, y: Mm): Mm =>
  outlineSpansAtY(edges, y).reduce((sum, { from, to }) => sum + (to - from), 0);
