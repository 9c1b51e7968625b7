/**
 * Cubic Béziers: points, directions and curvature. Lengths, splits, bounds, nearest points and intersections are in
 * the files beside this one. Lengths in mm, parameters t from 0 at `a` to 1 at `b`.
 */
import { END_PARAMETER, SAME_POINT, SOLVER_ACCURACY } from "../tolerance";
import { radians, type Radians } from "../units";
import { pointLike, type Frame, type Point } from "./point";

/** From `a` to `b`, leaving towards `c1` and arriving from `c2`. Any of the four may coincide. */
export interface Cubic<F extends Frame> {
  readonly a: Point<F>;
  readonly c1: Point<F>;
  readonly c2: Point<F>;
  readonly b: Point<F>;
}

/**
 * The point at parameter t; exactly `a` at 0 and exactly `b` at 1. A t outside 0..1 continues the same polynomial.
 *
 * @source Bernstein form of a cubic: Farin, Curves and Surfaces for CAGD, ch. 5
 */
export function cubicPointAt<F extends Frame>(c: Cubic<F>, t: number): Point<F> {
  const s = 1 - t;
  const w0 = s * s * s;
  const w1 = 3 * s * s * t;
  const w2 = 3 * s * t * t;
  const w3 = t * t * t;
  return pointLike(
    c.a,
    w0 * c.a.x + w1 * c.c1.x + w2 * c.c2.x + w3 * c.b.x,
    w0 * c.a.y + w1 * c.c1.y + w2 * c.c2.y + w3 * c.b.y,
  );
}

/**
 * The direction of travel at parameter t, in radians within (-π, π].
 *
 * Where the speed vanishes the first derivative says nothing, so the next one decides: at an end whose control point
 * coincides with it (within SAME_POINT) the direction is that towards the next distinct control point, which is the
 * limit from inside. At a cusp within the curve it is the direction of leaving. Four coinciding points give 0.
 *
 * @source l'Hôpital's rule on B'(t) / |B'(t)|
 */
export function cubicTangentAt<F extends Frame>(c: Cubic<F>, t: number): Radians {
  if (Math.abs(t) <= END_PARAMETER) return firstDirection(c.a, c.c1, c.c2, c.b, 1);
  if (Math.abs(t - 1) <= END_PARAMETER) return firstDirection(c.b, c.c2, c.c1, c.a, -1);
  const s = 1 - t;
  const d0x = c.c1.x - c.a.x;
  const d0y = c.c1.y - c.a.y;
  const d1x = c.c2.x - c.c1.x;
  const d1y = c.c2.y - c.c1.y;
  const d2x = c.b.x - c.c2.x;
  const d2y = c.b.y - c.c2.y;
  const vx = s * s * d0x + 2 * s * t * d1x + t * t * d2x;
  const vy = s * s * d0y + 2 * s * t * d1y + t * t * d2y;
  if (vx * vx + vy * vy > SOLVER_ACCURACY * SOLVER_ACCURACY) return radians(Math.atan2(vy, vx));
  const ax = s * (d1x - d0x) + t * (d2x - d1x);
  const ay = s * (d1y - d0y) + t * (d2y - d1y);
  if (ax * ax + ay * ay > SOLVER_ACCURACY * SOLVER_ACCURACY) return radians(Math.atan2(ay, ax));
  return radians(Math.atan2(d2y - 2 * d1y + d0y, d2x - 2 * d1x + d0x));
}

/** Direction from an end to the first point distinct from it, reversed when `sign` is -1. */
function firstDirection<F extends Frame>(
  end: Point<F>,
  p: Point<NoInfer<F>>,
  q: Point<NoInfer<F>>,
  far: Point<NoInfer<F>>,
  sign: 1 | -1,
): Radians {
  const to = isApart(end, p) ? p : isApart(end, q) ? q : far;
  // Adding 0 turns -0 into 0, so that a level edge going back is π and never -π.
  return radians(Math.atan2(sign * (to.y - end.y) + 0, sign * (to.x - end.x) + 0));
}

const isApart = <F extends Frame>(p: Point<F>, q: Point<NoInfer<F>>): boolean =>
  (q.x - p.x) * (q.x - p.x) + (q.y - p.y) * (q.y - p.y) > SAME_POINT * SAME_POINT;

/**
 * The signed curvature at parameter t, in 1/mm: positive where the curve turns +x towards +y. Infinite where the speed
 * vanishes while the curve turns, 0 where it stays straight.
 *
 * @source κ = (B' × B'') / |B'|³
 */
export function cubicCurvatureAt<F extends Frame>(c: Cubic<F>, t: number): number {
  const s = 1 - t;
  const d0x = c.c1.x - c.a.x;
  const d0y = c.c1.y - c.a.y;
  const d1x = c.c2.x - c.c1.x;
  const d1y = c.c2.y - c.c1.y;
  const d2x = c.b.x - c.c2.x;
  const d2y = c.b.y - c.c2.y;
  const vx = 3 * (s * s * d0x + 2 * s * t * d1x + t * t * d2x);
  const vy = 3 * (s * s * d0y + 2 * s * t * d1y + t * t * d2y);
  const ax = 6 * (s * (d1x - d0x) + t * (d2x - d1x));
  const ay = 6 * (s * (d1y - d0y) + t * (d2y - d1y));
  const cross = vx * ay - vy * ax;
  const speed = Math.sqrt(vx * vx + vy * vy);
  // With c1 on a, B' is 0 and the turn first shows in B'' × B''', whose sign the infinite curvature takes.
  if (speed <= SOLVER_ACCURACY) {
    const turn = ax * (d2y - 2 * d1y + d0y) - ay * (d2x - 2 * d1x + d0x);
    return turn === 0 ? 0 : Math.sign(turn) * Infinity;
  }
  return cross / (speed * speed * speed);
}

/** The same curve travelled from `b` to `a`. */
export const cubicReverse = <F extends Frame>(c: Cubic<F>): Cubic<F> => ({ a: c.b, c1: c.c2, c2: c.c1, b: c.a });

/** The curve with every control point mapped; exact for affine maps (rigid motions, scaling, change of frame). */
export const cubicMap = <F extends Frame, G extends Frame>(c: Cubic<F>, map: (p: Point<F>) => Point<G>): Cubic<G> => ({
  a: map(c.a),
  c1: map(c.c1),
  c2: map(c.c2),
  b: map(c.b),
});
