/** Where two cubic Béziers meet. Places to CURVE_ACCURACY mm. */
import { END_PARAMETER, PARAMETER_ACCURACY, ROUNDING, SAME_POINT, SHORTEST_CUT } from "../tolerance";
import { cubicPointAt, type Cubic } from "./bezier";
import { cubicNearest } from "./bezierNearest";
import { cubicSplit } from "./bezierSplit";
import { addMeeting, endMeetings, inOrder, liesOn, type Candidate } from "./meetings";
import { distance, type Frame, type Point } from "./point";
import type { Meeting } from "./segment";

/** Newton doubles its digits each step, so a start that needs more than this is cut further instead. */
const NEWTON_STEPS = 12;
/** Damped steps towards a touch, where each one only halves the error. */
const TOUCH_STEPS = 60;
/** Cuts of both curves together: fifty each reach the spacing of doubles. */
const MOST_CUTS = 100;
/** Pairs of pieces looked at in one search; curves of a bodice need some hundreds. */
const MOST_LOOKS = 20_000;

/**
 * Where two cubics meet, in order along the first.
 *
 * An end of either that lies within SAME_POINT of the other counts, with its exact parameter; so does a touch within
 * SAME_POINT. A touch is one meeting, somewhere on the stretch where the two are within SAME_POINT of each other;
 * crossings less than SHORTEST_CUT apart may be returned as one. Where the curves run along each other the ends of the
 * shared stretch are returned. A curve's meetings with itself are those of cubicSelfCrossing.
 *
 * Pieces are cut in half while their hulls overlap. Once no direction of the one is parallel to any of the other they
 * meet at most once, and Newton finds the place. A piece that lies on the other curve is set aside as a stretch of
 * touch; pieces still parallel at SHORTEST_CUT are brought together by damped least squares.
 *
 * @source recursive subdivision with hull tests: Sederberg and Parry 1986; damping: Levenberg 1944
 */
export function cubicIntersections<F extends Frame>(c: Cubic<F>, d: Cubic<NoInfer<F>>): readonly Meeting<F>[] {
  if (areHullsApart(c, d)) return [];
  const found = endMeetings(c, d);
  const touches: Touch<F>[] = [];
  meet({ whole: c, part: c, from: 0, to: 1 }, { whole: d, part: d, from: 0, to: 1 }, MOST_CUTS, {
    found,
    touches,
    looks: 0,
  });
  // Neighbouring stretches are one touch, which addMeeting sees to.
  for (const touch of touches) addMeeting(found, touch.closest, c, d);
  return inOrder(found);
}

/** A piece of a curve: the curve it was cut from, its own control points and its parameters on the whole. */
interface Piece<F extends Frame> {
  readonly whole: Cubic<F>;
  readonly part: Cubic<F>;
  readonly from: number;
  readonly to: number;
}

/** A stretch of the first curve along which the second is within SAME_POINT, and where it comes closest. */
interface Touch<F extends Frame> {
  readonly from: number;
  readonly to: number;
  readonly closest: Candidate<F>;
}

interface Search<F extends Frame> {
  looks: number;
  readonly found: Candidate<F>[];
  readonly touches: Touch<F>[];
}

function meet<F extends Frame>(p: Piece<F>, q: Piece<F>, cuts: number, search: Search<F>): void {
  if (areHullsApart(p.part, q.part)) return;
  search.looks += 1;
  if (crossAtMostOnce(p.part, q.part)) {
    const crossing = newton(p, q);
    if (crossing !== null) {
      addMeeting(search.found, crossing, p.whole, q.whole);
      return;
    }
  }
  if (search.touches.some(({ from, to }) => from <= p.from && p.to <= to)) return;
  if (liesOn(p.part, q.whole)) {
    const middle = cubicNearest(q.whole, cubicPointAt(p.part, 0.5));
    search.touches.push({
      from: p.from,
      to: p.to,
      closest: gapAt(p.whole, q.whole, (p.from + p.to) / 2, middle.t, "touch"),
    });
    return;
  }
  const lengthP = polygonLength(p.part);
  const lengthQ = polygonLength(q.part);
  // Where the search would take too long it is settled here: what then seems to touch is told as touching.
  if (cuts === 0 || search.looks > MOST_LOOKS || Math.max(lengthP, lengthQ) <= SHORTEST_CUT) {
    const closest = closestPlace(p, q);
    if (closest.gap <= SAME_POINT) search.touches.push({ from: closest.t1, to: closest.t1, closest });
    return;
  }
  // The longer one is cut, so that both shrink alike.
  if (lengthP >= lengthQ) {
    for (const half of halves(p)) meet(half, q, cuts - 1, search);
  } else {
    for (const half of halves(q)) meet(p, half, cuts - 1, search);
  }
}

function halves<F extends Frame>({ whole, part, from, to }: Piece<F>): readonly [Piece<F>, Piece<F>] {
  const mid = (from + to) / 2;
  const [first, second] = cubicSplit(part, 0.5);
  return [
    { whole, part: first, from, to: mid },
    { whole, part: second, from: mid, to },
  ];
}

const polygonLength = <F extends Frame>(c: Cubic<F>): number =>
  distance(c.a, c.c1) + distance(c.c1, c.c2) + distance(c.c2, c.b);

/** Whether the hulls of the control points are more than SAME_POINT apart along x, y or across either chord. */
function areHullsApart<F extends Frame>(c: Cubic<F>, d: Cubic<NoInfer<F>>): boolean {
  return (
    areApartAlong(c, d, 1, 0) ||
    areApartAlong(c, d, 0, 1) ||
    areApartAlong(c, d, c.a.y - c.b.y, c.b.x - c.a.x) ||
    areApartAlong(c, d, d.a.y - d.b.y, d.b.x - d.a.x)
  );
}

/** Whether the projections on the direction (x, y) are more than SAME_POINT apart. */
function areApartAlong<F extends Frame>(c: Cubic<F>, d: Cubic<F>, x: number, y: number): boolean {
  const c0 = c.a.x * x + c.a.y * y;
  const c1 = c.c1.x * x + c.c1.y * y;
  const c2 = c.c2.x * x + c.c2.y * y;
  const c3 = c.b.x * x + c.b.y * y;
  const d0 = d.a.x * x + d.a.y * y;
  const d1 = d.c1.x * x + d.c1.y * y;
  const d2 = d.c2.x * x + d.c2.y * y;
  const d3 = d.b.x * x + d.b.y * y;
  const slack = SAME_POINT * Math.sqrt(x * x + y * y);
  return (
    Math.min(c0, c1, c2, c3) > Math.max(d0, d1, d2, d3) + slack ||
    Math.min(d0, d1, d2, d3) > Math.max(c0, c1, c2, c3) + slack
  );
}

/**
 * Whether every leg of the one control polygon turns the same way to every leg of the other. Directions of the curves
 * lie between those of the legs, so no two are then parallel, as those between two meetings would have to be.
 */
function crossAtMostOnce<F extends Frame>(c: Cubic<F>, d: Cubic<F>): boolean {
  const side = Math.sign(cross(c.a, c.c1, d.a, d.c1));
  return (
    side !== 0 &&
    side * cross(c.a, c.c1, d.c1, d.c2) > 0 &&
    side * cross(c.a, c.c1, d.c2, d.b) > 0 &&
    side * cross(c.c1, c.c2, d.a, d.c1) > 0 &&
    side * cross(c.c1, c.c2, d.c1, d.c2) > 0 &&
    side * cross(c.c1, c.c2, d.c2, d.b) > 0 &&
    side * cross(c.c2, c.b, d.a, d.c1) > 0 &&
    side * cross(c.c2, c.b, d.c1, d.c2) > 0 &&
    side * cross(c.c2, c.b, d.c2, d.b) > 0
  );
}

const cross = <F extends Frame>(p: Point<F>, q: Point<F>, r: Point<F>, s: Point<F>): number =>
  (q.x - p.x) * (s.y - r.y) - (q.y - p.y) * (s.x - r.x);

const slopeAt = (p0: number, p1: number, p2: number, p3: number, t: number): number => {
  const s = 1 - t;
  return 3 * (s * s * (p1 - p0) + 2 * s * t * (p2 - p1) + t * t * (p3 - p2));
};

/** The crossing of two pieces from their middles by Newton, or null if it leaves them. */
function newton<F extends Frame>(p: Piece<F>, q: Piece<F>): Candidate<F> | null {
  const c = p.whole;
  const d = q.whole;
  let t1 = (p.from + p.to) / 2;
  let t2 = (q.from + q.to) / 2;
  for (let step = 0; step < NEWTON_STEPS; step++) {
    const onC = cubicPointAt(c, t1);
    const onD = cubicPointAt(d, t2);
    const x = onD.x - onC.x;
    const y = onD.y - onC.y;
    const ux = slopeAt(c.a.x, c.c1.x, c.c2.x, c.b.x, t1);
    const uy = slopeAt(c.a.y, c.c1.y, c.c2.y, c.b.y, t1);
    const vx = slopeAt(d.a.x, d.c1.x, d.c2.x, d.b.x, t2);
    const vy = slopeAt(d.a.y, d.c1.y, d.c2.y, d.b.y, t2);
    const determinant = ux * vy - uy * vx;
    if (determinant === 0) return null;
    const step1 = (x * vy - y * vx) / determinant;
    const step2 = (x * uy - y * ux) / determinant;
    t1 += step1;
    t2 += step2;
    if (Math.abs(step1) <= PARAMETER_ACCURACY && Math.abs(step2) <= PARAMETER_ACCURACY) {
      const isInside = isBetween(t1, p.from, p.to) && isBetween(t2, q.from, q.to);
      if (!isInside) return null;
      return gapAt(c, d, Math.min(1, Math.max(0, t1)), Math.min(1, Math.max(0, t2)), "crossing");
    }
  }
  return null;
}

const isBetween = (t: number, from: number, to: number): boolean =>
  t >= from - END_PARAMETER && t <= to + END_PARAMETER;

/** The place near the middles of two small pieces where the curves come closest, by damped least squares. */
function closestPlace<F extends Frame>(p: Piece<F>, q: Piece<F>): Candidate<F> {
  const c = p.whole;
  const d = q.whole;
  let best = gapAt(c, d, (p.from + p.to) / 2, (q.from + q.to) / 2, "touch");
  let damping = SAME_POINT;
  for (let step = 0; step < TOUCH_STEPS && best.gap > 0; step++) {
    const onC = cubicPointAt(c, best.t1);
    const onD = cubicPointAt(d, best.t2);
    const x = onD.x - onC.x;
    const y = onD.y - onC.y;
    const ux = slopeAt(c.a.x, c.c1.x, c.c2.x, c.b.x, best.t1);
    const uy = slopeAt(c.a.y, c.c1.y, c.c2.y, c.b.y, best.t1);
    const vx = slopeAt(d.a.x, d.c1.x, d.c2.x, d.b.x, best.t2);
    const vy = slopeAt(d.a.y, d.c1.y, d.c2.y, d.b.y, best.t2);
    const uu = ux * ux + uy * uy;
    const vv = vx * vx + vy * vy;
    const uv = ux * vx + uy * vy;
    const extra = damping * (uu + vv);
    const determinant = (uu + extra) * (vv + extra) - uv * uv;
    if (!(determinant > 0)) return best;
    const ru = ux * x + uy * y;
    const rv = -(vx * x + vy * y);
    const step1 = (ru * (vv + extra) + rv * uv) / determinant;
    const step2 = (rv * (uu + extra) + ru * uv) / determinant;
    const t1 = Math.min(1, Math.max(0, best.t1 + step1));
    const t2 = Math.min(1, Math.max(0, best.t2 + step2));
    const next = gapAt(c, d, t1, t2, "touch");
    if (next.gap < best.gap) {
      best = next;
      damping = Math.max(ROUNDING, damping / 10);
    } else {
      damping *= 10;
      if (Math.abs(step1) <= PARAMETER_ACCURACY && Math.abs(step2) <= PARAMETER_ACCURACY) return best;
    }
  }
  return best;
}

function gapAt<F extends Frame>(
  c: Cubic<F>,
  d: Cubic<F>,
  t1: number,
  t2: number,
  kind: Candidate<F>["kind"],
): Candidate<F> {
  const point = cubicPointAt(c, t1);
  return { t1, t2, point, kind, gap: distance(point, cubicPointAt(d, t2)) };
}
