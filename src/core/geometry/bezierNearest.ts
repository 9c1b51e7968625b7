/** The nearest place on a cubic Bézier, in mm. */
import { PARAMETER_ACCURACY, SOLVER_ACCURACY } from "../tolerance";
import { cubicPointAt, type Cubic } from "./bezier";
import { distance, type Frame, type Point } from "./point";
import type { Nearest } from "./segment";

/** Halvings of 0..1 before the search takes what Newton finds: a millionth of a millionth of the curve. */
const MOST_HALVINGS = 40;
const MOST_STEPS = 60;

/** What the search has found so far. */
interface Best {
  t: number;
  square: number;
}

/**
 * The nearest place on the whole curve, not only near some guess: no other is nearer by more than SOLVER_ACCURACY. Its
 * parameter is within 0..1, and exactly 0 or 1 where an end is as near as any other place.
 *
 * The squared distance is a polynomial of degree 6 in t. Its Bernstein ordinates bound it from below, so an interval
 * whose ordinates all exceed the best value found is dropped; one whose ordinates fall and then rise holds a single
 * minimum, which Newton finds; any other is halved.
 *
 * @source branch and bound on Bernstein ordinates; variation diminishing property: Farin, ch. 5
 */
export function cubicNearest<F extends Frame>(c: Cubic<F>, p: Point<NoInfer<F>>): Nearest<F> {
  const x0 = c.a.x - p.x;
  const y0 = c.a.y - p.y;
  const x1 = c.c1.x - p.x;
  const y1 = c.c1.y - p.y;
  const x2 = c.c2.x - p.x;
  const y2 = c.c2.y - p.y;
  const x3 = c.b.x - p.x;
  const y3 = c.b.y - p.y;
  const d0 = x0 * x0 + y0 * y0;
  const d6 = x3 * x3 + y3 * y3;
  const best: Best = d0 <= d6 ? { t: 0, square: d0 } : { t: 1, square: d6 };
  search(
    d0,
    x0 * x1 + y0 * y1,
    (2 * (x0 * x2 + y0 * y2) + 3 * (x1 * x1 + y1 * y1)) / 5,
    (x0 * x3 + y0 * y3 + 9 * (x1 * x2 + y1 * y2)) / 10,
    (2 * (x1 * x3 + y1 * y3) + 3 * (x2 * x2 + y2 * y2)) / 5,
    x2 * x3 + y2 * y3,
    d6,
    0,
    1,
    MOST_HALVINGS,
    c,
    p,
    best,
  );
  const point = best.t === 0 ? c.a : best.t === 1 ? c.b : cubicPointAt(c, best.t);
  return { t: best.t, point, distance: distance(point, p) };
}

function search<F extends Frame>(
  d0: number,
  d1: number,
  d2: number,
  d3: number,
  d4: number,
  d5: number,
  d6: number,
  from: number,
  to: number,
  halvings: number,
  c: Cubic<F>,
  p: Point<F>,
  best: Best,
): void {
  const toBeat = Math.sqrt(best.square) - SOLVER_ACCURACY;
  if (!(toBeat > 0)) return;
  if (Math.min(d0, d1, d2, d3, d4, d5, d6) >= toBeat * toBeat) return;
  let turns = 0;
  let way = Math.sign(d1 - d0);
  for (let i = 1; i < 6; i++) {
    const next = Math.sign(i === 1 ? d2 - d1 : i === 2 ? d3 - d2 : i === 3 ? d4 - d3 : i === 4 ? d5 - d4 : d6 - d5);
    if (next !== 0 && way !== 0 && next !== way) turns++;
    if (next !== 0) way = next;
  }
  // Level, only falling, only rising, or rising then falling: the least value is at an end, which is known already.
  if (turns === 0 || (turns === 1 && way < 0)) return;
  if (turns === 1 || halvings === 0) {
    keep(c, p, lowest(c, p, from, to), best);
    return;
  }
  const mid = (from + to) / 2;
  const e0 = (d0 + d1) / 2;
  const e1 = (d1 + d2) / 2;
  const e2 = (d2 + d3) / 2;
  const e3 = (d3 + d4) / 2;
  const e4 = (d4 + d5) / 2;
  const e5 = (d5 + d6) / 2;
  const f0 = (e0 + e1) / 2;
  const f1 = (e1 + e2) / 2;
  const f2 = (e2 + e3) / 2;
  const f3 = (e3 + e4) / 2;
  const f4 = (e4 + e5) / 2;
  const g0 = (f0 + f1) / 2;
  const g1 = (f1 + f2) / 2;
  const g2 = (f2 + f3) / 2;
  const g3 = (f3 + f4) / 2;
  const h0 = (g0 + g1) / 2;
  const h1 = (g1 + g2) / 2;
  const h2 = (g2 + g3) / 2;
  const k0 = (h0 + h1) / 2;
  const k1 = (h1 + h2) / 2;
  const middle = (k0 + k1) / 2;
  if (middle < best.square) keep(c, p, mid, best);
  search(d0, e0, f0, g0, h0, k0, middle, from, mid, halvings - 1, c, p, best);
  search(middle, k1, h2, g3, f4, e5, d6, mid, to, halvings - 1, c, p, best);
}

/** Takes the place at t if it is nearer than the best; its distance is measured anew, free of the ordinates' rounding. */
function keep<F extends Frame>(c: Cubic<F>, p: Point<F>, t: number, best: Best): void {
  const at = cubicPointAt(c, t);
  const square = (at.x - p.x) * (at.x - p.x) + (at.y - p.y) * (at.y - p.y);
  if (square >= best.square) return;
  best.t = t;
  best.square = square;
}

/** The parameter of the one minimum of the distance between two parameters: the zero of (B - p) · B'. */
function lowest<F extends Frame>(c: Cubic<F>, p: Point<F>, from: number, to: number): number {
  let low = from;
  let high = to;
  let t = (from + to) / 2;
  for (let step = 0; step < MOST_STEPS; step++) {
    const s = 1 - t;
    const px = s * (s * c.a.x + t * c.c1.x) + t * (s * c.c1.x + t * c.c2.x);
    const py = s * (s * c.a.y + t * c.c1.y) + t * (s * c.c1.y + t * c.c2.y);
    const qx = s * (s * c.c1.x + t * c.c2.x) + t * (s * c.c2.x + t * c.b.x);
    const qy = s * (s * c.c1.y + t * c.c2.y) + t * (s * c.c2.y + t * c.b.y);
    const x = s * px + t * qx - p.x;
    const y = s * py + t * qy - p.y;
    const vx = 3 * (qx - px);
    const vy = 3 * (qy - py);
    const ax = 6 * (s * (c.c2.x - 2 * c.c1.x + c.a.x) + t * (c.b.x - 2 * c.c2.x + c.c1.x));
    const ay = 6 * (s * (c.c2.y - 2 * c.c1.y + c.a.y) + t * (c.b.y - 2 * c.c2.y + c.c1.y));
    const slope = x * vx + y * vy;
    if (slope === 0) return t;
    if (slope > 0) high = t;
    else low = t;
    const newton = t - slope / (vx * vx + vy * vy + x * ax + y * ay);
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - t) <= PARAMETER_ACCURACY) return next;
    t = next;
  }
  return t;
}
