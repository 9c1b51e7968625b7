/** Rigid motions of the plane: a turn and a shift, without stretching or mirroring. */
import { radians, type Mm, type Radians } from "../units";
import { cubicMap, type Cubic } from "./bezier";
import { edgeMap, type EdgeCurve } from "./edgeCurve";
import { pointLike, type Frame, type Point } from "./point";

/** Turns by `angle` about the frame's origin, then moves the origin to `origin`. Positive turns +x towards +y. */
export interface Rigid<F extends Frame> {
  readonly angle: Radians;
  readonly cosine: number;
  readonly sine: number;
  readonly origin: Point<F>;
}

const rigid = <F extends Frame>(angle: Radians, origin: Point<F>): Rigid<F> => ({
  angle,
  cosine: Math.cos(angle),
  sine: Math.sin(angle),
  origin,
});

/** A turn by `angle` about `centre`, followed by a shift of (dx, dy) mm. */
export function rigidMotion<F extends Frame>(centre: Point<F>, angle: Radians, dx: Mm = 0, dy: Mm = 0): Rigid<F> {
  const { cosine, sine } = rigid(angle, centre);
  const x = centre.x - (cosine * centre.x - sine * centre.y) + dx;
  const y = centre.y - (sine * centre.x + cosine * centre.y) + dy;
  return rigid(angle, pointLike(centre, x, y));
}

/** The shift that takes `from` to `to`, without a turn. */
export const shiftMotion = <F extends Frame>(from: Point<F>, to: Point<NoInfer<F>>): Rigid<F> =>
  rigid(radians(0), pointLike(from, to.x - from.x, to.y - from.y));

/** The motion that does `first` and then `next`. Angles add up and are not reduced to one turn. */
export const composeRigid = <F extends Frame>(first: Rigid<F>, next: Rigid<NoInfer<F>>): Rigid<F> =>
  // The sum is turned into a cosine anew, so that a long chain of motions does not start to stretch.
  rigid(radians(first.angle + next.angle), moveRigidly(next, first.origin));

/** The motion that undoes this one. */
export function invertRigid<F extends Frame>(motion: Rigid<F>): Rigid<F> {
  const { cosine, sine, origin } = motion;
  const back = pointLike(origin, -(cosine * origin.x + sine * origin.y), sine * origin.x - cosine * origin.y);
  return rigid(radians(-motion.angle), back);
}

/** The point after the motion. */
export const moveRigidly = <F extends Frame>(motion: Rigid<F>, p: Point<NoInfer<F>>): Point<F> =>
  pointLike(
    motion.origin,
    motion.cosine * p.x - motion.sine * p.y + motion.origin.x,
    motion.sine * p.x + motion.cosine * p.y + motion.origin.y,
  );

/** The cubic after the motion: its length and shape stay. */
export const moveCubicRigidly = <F extends Frame>(motion: Rigid<F>, c: Cubic<NoInfer<F>>): Cubic<F> =>
  cubicMap(c, (p) => moveRigidly(motion, p));

/** The edge after the motion: its length and shape stay. */
export const moveEdgeRigidly = <F extends Frame>(motion: Rigid<F>, edge: EdgeCurve<NoInfer<F>>): EdgeCurve<F> =>
  edgeMap(edge, (p) => moveRigidly(motion, p));
