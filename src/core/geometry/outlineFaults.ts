/** What can be wrong with a closed outline. */
import { CURVE_ACCURACY, SAME_POINT, SHORTEST_EDGE } from "../tolerance";
import type { Mm } from "../units";
import { cubicSelfCrossing } from "./bezierIntersect";
import { areBoundsNear } from "./bounds";
import { cubicOfEdge, edgeHullBounds, edgeIntersections, edgeLength, type EdgeCurve } from "./edgeCurve";
import { distance, type Frame, type Point } from "./point";

/** Where an outline meets itself: the two edges by index (the same one for a loop), their parameters, the place. */
export interface SelfCrossing<F extends Frame> {
  readonly edge1: number;
  readonly edge2: number;
  readonly t1: number;
  readonly t2: number;
  readonly point: Point<F>;
}

/** A fault, with the edge (by index) and the numbers in mm that show it. */
export type OutlineFault<F extends Frame> =
  | { readonly code: "outline/no-edges" }
  | { readonly code: "outline/not-finite"; readonly edge: number }
  | { readonly code: "outline/gap"; readonly edge: number; readonly next: number; readonly gap: Mm }
  | { readonly code: "outline/short-edge"; readonly edge: number; readonly length: Mm; readonly shortest: Mm }
  | ({ readonly code: "outline/self-crossing" } & SelfCrossing<F>);

/**
 * Where the outline crosses or touches itself, apart from the points that neighbouring edges share. Each place is
 * returned once, although at a corner several edges meet there; where edges run along each other, both ends are.
 */
export function selfCrossings<F extends Frame>(edges: readonly EdgeCurve<F>[]): readonly SelfCrossing<F>[] {
  const found: SelfCrossing<F>[] = [];
  const keep = (crossing: SelfCrossing<F>): void => {
    if (!found.some(({ point }) => distance(point, crossing.point) <= CURVE_ACCURACY)) found.push(crossing);
  };
  const boxes = edges.map(edgeHullBounds);
  edges.forEach((e1, edge1) => {
    const cubic = cubicOfEdge(e1);
    const loop = cubic === null ? null : cubicSelfCrossing(cubic);
    const isWholeOutline = edges.length === 1 && loop?.t1 === 0 && loop.t2 === 1;
    if (loop !== null && !isWholeOutline) keep({ edge1, edge2: edge1, ...loop });
    for (let edge2 = edge1 + 1; edge2 < edges.length; edge2++) {
      const e2 = edges[edge2];
      const [box1, box2] = [boxes[edge1], boxes[edge2]];
      if (e2 === undefined || box1 === undefined || box2 === undefined) continue;
      if (!areBoundsNear(box1, box2, SAME_POINT)) continue;
      const isNext = edge2 === edge1 + 1;
      const isBefore = edge1 === 0 && edge2 === edges.length - 1;
      if (isNext !== isBefore && isOnlyCornerShared(isNext ? e1 : e2, isNext ? e2 : e1)) continue;
      for (const { t1, t2, point } of edgeIntersections(e1, e2)) {
        // An edge that comes back to its own end is not lost here: that is a loop of its own.
        if (isNext && distance(e1.b, point) <= CURVE_ACCURACY) continue;
        if (isBefore && distance(e2.b, point) <= CURVE_ACCURACY) continue;
        keep({ edge1, edge2, t1, t2, point });
      }
    }
  });
  return found;
}

/**
 * Whether the line through the corner that halves the angle between two neighbouring edges parts their control points:
 * then they share nothing else. This settles most corners in a few operations; false means only that it is not sure.
 */
function isOnlyCornerShared<F extends Frame>(e1: EdgeCurve<F>, e2: EdgeCurve<F>): boolean {
  const corner = e2.a;
  if (distance(e1.b, corner) > 0) return false;
  const back = e1.curve?.c2 ?? e1.a;
  const ahead = e2.curve?.c1 ?? e2.b;
  const backLength = distance(back, corner);
  const aheadLength = distance(ahead, corner);
  if (backLength === 0 || aheadLength === 0) return false;
  const x = (ahead.x - corner.x) / aheadLength - (back.x - corner.x) / backLength;
  const y = (ahead.y - corner.y) / aheadLength - (back.y - corner.y) / backLength;
  const side = (p: Point<F>): number => (p.x - corner.x) * x + (p.y - corner.y) * y;
  return (
    side(e1.a) < -SAME_POINT &&
    side(e2.b) > SAME_POINT &&
    (e1.curve === null || (side(e1.curve.c1) < -SAME_POINT && side(e1.curve.c2) < -SAME_POINT)) &&
    (e2.curve === null || (side(e2.curve.c1) > SAME_POINT && side(e2.curve.c2) > SAME_POINT))
  );
}

/**
 * All faults of a closed outline, none for a sound one. An outline with numbers that are not finite shows only those,
 * since nothing else can be judged. The gap of an edge is the one between its end and the start of the next.
 */
export function validateOutline<F extends Frame>(edges: readonly EdgeCurve<F>[]): readonly OutlineFault<F>[] {
  if (edges.length === 0) return [{ code: "outline/no-edges" }];
  const faults: OutlineFault<F>[] = [];
  edges.forEach((edge, index) => {
    if (!isFiniteEdge(edge)) faults.push({ code: "outline/not-finite", edge: index });
  });
  if (faults.length > 0) return faults;
  edges.forEach((edge, index) => {
    const next = (index + 1) % edges.length;
    const gap = distance(edge.b, (edges[next] ?? edge).a);
    if (gap > SAME_POINT) faults.push({ code: "outline/gap", edge: index, next, gap });
    const length = edgeLength(edge);
    if (length < SHORTEST_EDGE)
      faults.push({ code: "outline/short-edge", edge: index, length, shortest: SHORTEST_EDGE });
  });
  for (const crossing of selfCrossings(edges)) faults.push({ code: "outline/self-crossing", ...crossing });
  return faults;
}

const isFiniteEdge = <F extends Frame>({ a, b, curve }: EdgeCurve<F>): boolean =>
  isFinitePoint(a) && isFinitePoint(b) && (curve === null || (isFinitePoint(curve.c1) && isFinitePoint(curve.c2)));

const isFinitePoint = <F extends Frame>({ x, y }: Point<F>): boolean => Number.isFinite(x) && Number.isFinite(y);
