/**
 * Edges of outlines: a straight line or a cubic Bézier from `a` to `b`. The same questions are asked of both. Lengths
 * in mm; the parameter t runs from 0 at `a` to 1 at `b`, and on a line it is the share of its length.
 */
import { SAME_POINT } from "../tolerance";
import type { Mm, Radians } from "../units";
import { cubicZeros } from "./bernstein";
import { cubicMap, cubicPointAt, cubicReverse, cubicTangentAt, type Cubic } from "./bezier";
import { cubicBounds, cubicHullBounds } from "./bezierBounds";
import { cubicFlatten } from "./bezierFlatten";
import { cubicSegmentIntersections } from "./bezierIntersect";
import { cubicLength, cubicLengthBetween, cubicParameterAtLength } from "./bezierLength";
import { cubicNearest } from "./bezierNearest";
import { cubicIntersections } from "./bezierPair";
import { cubicPart, cubicSplit } from "./bezierSplit";
import type { Bounds } from "./bounds";
import { between, directionOf, distance, pointLike, type Frame, type Point } from "./point";
import { segmentIntersections, segmentNearest, type Meeting, type Nearest } from "./segment";

/** A straight line where `curve` is null, else the cubic with these two controls. */
export interface EdgeCurve<F extends Frame> {
  readonly a: Point<F>;
  readonly b: Point<F>;
  readonly curve: { readonly c1: Point<F>; readonly c2: Point<F> } | null;
}

/** A straight edge. */
export const lineEdge = <F extends Frame>(a: Point<F>, b: Point<NoInfer<F>>): EdgeCurve<F> => ({ a, b, curve: null });

/** An edge along a cubic. */
export const cubicEdge = <F extends Frame>({ a, c1, c2, b }: Cubic<F>): EdgeCurve<F> => ({ a, b, curve: { c1, c2 } });

/** The cubic an edge follows, or null where it is straight. */
export const cubicOfEdge = <F extends Frame>({ a, b, curve }: EdgeCurve<F>): Cubic<F> | null =>
  curve === null ? null : { a, c1: curve.c1, c2: curve.c2, b };

/** The length in mm; see cubicLength for its accuracy. */
export function edgeLength<F extends Frame>(edge: EdgeCurve<F>): Mm {
  const cubic = cubicOfEdge(edge);
  return cubic === null ? distance(edge.a, edge.b) : cubicLength(cubic);
}

/** The length between two parameters in mm, negative when t1 is before t0. */
export function edgeLengthBetween<F extends Frame>(edge: EdgeCurve<F>, t0: number, t1: number): Mm {
  const cubic = cubicOfEdge(edge);
  return cubic === null ? distance(edge.a, edge.b) * (t1 - t0) : cubicLengthBetween(cubic, t0, t1);
}

/** The point at parameter t; exactly `a` at 0 and exactly `b` at 1. */
export function edgePointAt<F extends Frame>(edge: EdgeCurve<F>, t: number): Point<F> {
  const cubic = cubicOfEdge(edge);
  if (cubic !== null) return cubicPointAt(cubic, t);
  return t === 1 ? edge.b : between(edge.a, edge.b, t);
}

/** The direction of travel at parameter t, in radians within (-π, π]; see cubicTangentAt. 0 on an edge without length. */
export function edgeTangentAt<F extends Frame>(edge: EdgeCurve<F>, t: number): Radians {
  const cubic = cubicOfEdge(edge);
  return cubic === null ? directionOf(edge.a, edge.b) : cubicTangentAt(cubic, t);
}

/** The edge cut in two at parameter t (0..1); both parts share the cut as one point. */
export function edgeSplit<F extends Frame>(edge: EdgeCurve<F>, t: number): readonly [EdgeCurve<F>, EdgeCurve<F>] {
  const cubic = cubicOfEdge(edge);
  if (cubic === null) {
    const cut = edgePointAt(edge, t);
    return [lineEdge(edge.a, cut), lineEdge(cut, edge.b)];
  }
  const [first, second] = cubicSplit(cubic, t);
  return [cubicEdge(first), cubicEdge(second)];
}

/** The part of the edge from parameter t0 to t1; backwards when t1 is before t0. */
export function edgePart<F extends Frame>(edge: EdgeCurve<F>, t0: number, t1: number): EdgeCurve<F> {
  const cubic = cubicOfEdge(edge);
  return cubic === null ? lineEdge(edgePointAt(edge, t0), edgePointAt(edge, t1)) : cubicEdge(cubicPart(cubic, t0, t1));
}

/** The same edge travelled from `b` to `a`. */
export function edgeReverse<F extends Frame>(edge: EdgeCurve<F>): EdgeCurve<F> {
  const cubic = cubicOfEdge(edge);
  return cubic === null ? lineEdge(edge.b, edge.a) : cubicEdge(cubicReverse(cubic));
}

/** The nearest place on the whole edge; see cubicNearest for its accuracy. */
export function edgeNearest<F extends Frame>(edge: EdgeCurve<F>, p: Point<NoInfer<F>>): Nearest<F> {
  const cubic = cubicOfEdge(edge);
  return cubic === null ? segmentNearest(edge.a, edge.b, p) : cubicNearest(cubic, p);
}

/**
 * The parameter at which the edge is `length` mm long, counted from its start. A length before the start gives 0 and
 * one past the end gives 1; one that is not a number gives NaN.
 */
export function edgeParameterAtLength<F extends Frame>(edge: EdgeCurve<F>, length: Mm): number {
  const cubic = cubicOfEdge(edge);
  if (cubic !== null) return cubicParameterAtLength(cubic, length);
  const total = distance(edge.a, edge.b);
  if (length <= 0) return 0;
  return length >= total ? 1 : length / total;
}

/**
 * The parameters at which the edge meets the level line at `y` mm, in order along the edge, without doubles. An end or
 * a turn that comes within SAME_POINT of the line without crossing it counts. A level edge on the line gives 0 and 1.
 */
export function edgeCrossingsAtY<F extends Frame>(edge: EdgeCurve<F>, y: Mm): readonly number[] {
  const y0 = edge.a.y - y;
  const y3 = edge.b.y - y;
  if (edge.curve !== null) return cubicZeros(y0, edge.curve.c1.y - y, edge.curve.c2.y - y, y3, SAME_POINT);
  if (Math.abs(y0) <= SAME_POINT && Math.abs(y3) <= SAME_POINT) return [0, 1];
  if (y0 === 0) return [0];
  if (y3 === 0) return [1];
  if (y0 < 0 !== y3 < 0) return [y0 / (y0 - y3)];
  return Math.abs(y0) <= SAME_POINT ? [0] : Math.abs(y3) <= SAME_POINT ? [1] : [];
}

/** The same at a place across. */
export function edgeCrossingsAtX<F extends Frame>({ a, b, curve }: EdgeCurve<F>, x: Mm): readonly number[] {
  const turned = (p: Point<F>): Point<F> => pointLike(p, p.y, p.x);
  const upright = {
    a: turned(a),
    b: turned(b),
    curve: curve === null ? null : { c1: turned(curve.c1), c2: turned(curve.c2) },
  };
  return edgeCrossingsAtY(upright, x);
}

/**
 * Where two edges meet, in order along the first; shared end points count. See segmentIntersections and
 * cubicIntersections for what is returned where edges touch or run along each other.
 */
export function edgeIntersections<F extends Frame>(e1: EdgeCurve<F>, e2: EdgeCurve<NoInfer<F>>): readonly Meeting<F>[] {
  if (!areHullsNear(e1, e2, SAME_POINT)) return [];
  const c1 = cubicOfEdge(e1);
  const c2 = cubicOfEdge(e2);
  if (c1 !== null && c2 !== null) return cubicIntersections(c1, c2);
  if (c1 !== null) return cubicSegmentIntersections(c1, e2.a, e2.b);
  if (c2 === null) return segmentIntersections(e1.a, e1.b, e2.a, e2.b);
  return cubicSegmentIntersections(c2, e1.a, e1.b)
    .map(({ t1, t2, point }) => ({ t1: t2, t2: t1, point }))
    .toSorted((p, q) => p.t1 - q.t1);
}

/** Points along the edge, both ends among them, whose straight connections stay within `tolerance` mm of it. */
export function edgeFlatten<F extends Frame>(edge: EdgeCurve<F>, tolerance: Mm): readonly Point<F>[] {
  const cubic = cubicOfEdge(edge);
  return cubic === null ? [edge.a, edge.b] : cubicFlatten(cubic, tolerance);
}

/** The edge with its points mapped; exact for affine maps (rigid motions, scaling, change of frame). */
export function edgeMap<F extends Frame, G extends Frame>(
  edge: EdgeCurve<F>,
  map: (p: Point<F>) => Point<G>,
): EdgeCurve<G> {
  const cubic = cubicOfEdge(edge);
  return cubic === null ? { a: map(edge.a), b: map(edge.b), curve: null } : cubicEdge(cubicMap(cubic, map));
}

/** The smallest upright box that holds the edge. */
export function edgeBounds<F extends Frame>(edge: EdgeCurve<F>): Bounds<F> {
  const cubic = cubicOfEdge(edge);
  return cubic === null ? endBounds(edge) : cubicBounds(cubic);
}

/** The box of the edge's points and controls: it holds the edge, costs less than edgeBounds, and may be larger. */
export function edgeHullBounds<F extends Frame>(edge: EdgeCurve<F>): Bounds<F> {
  const cubic = cubicOfEdge(edge);
  return cubic === null ? endBounds(edge) : cubicHullBounds(cubic);
}

/** Whether the boxes of points and controls of two edges come within a margin of each other: looked at, not made. */
const areHullsNear = <F extends Frame>(e1: EdgeCurve<F>, e2: EdgeCurve<NoInfer<F>>, margin: Mm): boolean =>
  leastX(e1) <= mostX(e2) + margin &&
  leastX(e2) <= mostX(e1) + margin &&
  leastY(e1) <= mostY(e2) + margin &&
  leastY(e2) <= mostY(e1) + margin;

const leastX = <F extends Frame>({ a, b, curve }: EdgeCurve<F>): Mm =>
  curve === null ? Math.min(a.x, b.x) : Math.min(a.x, curve.c1.x, curve.c2.x, b.x);
const mostX = <F extends Frame>({ a, b, curve }: EdgeCurve<F>): Mm =>
  curve === null ? Math.max(a.x, b.x) : Math.max(a.x, curve.c1.x, curve.c2.x, b.x);
const leastY = <F extends Frame>({ a, b, curve }: EdgeCurve<F>): Mm =>
  curve === null ? Math.min(a.y, b.y) : Math.min(a.y, curve.c1.y, curve.c2.y, b.y);
const mostY = <F extends Frame>({ a, b, curve }: EdgeCurve<F>): Mm =>
  curve === null ? Math.max(a.y, b.y) : Math.max(a.y, curve.c1.y, curve.c2.y, b.y);

const endBounds = <F extends Frame>({ a, b }: EdgeCurve<F>): Bounds<F> => ({
  min: pointLike(a, Math.min(a.x, b.x), Math.min(a.y, b.y)),
  max: pointLike(a, Math.max(a.x, b.x), Math.max(a.y, b.y)),
});
