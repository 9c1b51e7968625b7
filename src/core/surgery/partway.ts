/** A rigid motion stopped on its way, for showing it as it goes. */
import { pointLike, type Frame } from "../geometry/point";
import { rigidMotion, type Rigid } from "../geometry/rigid";
import { PARAMETER_ACCURACY } from "../tolerance";
import { radians, type Radians } from "../units";

/**
 * The motion at a share of its way: nothing at 0, the whole at 1. A turn about a hinge stays a turn about that hinge, a
 * shift goes straight, and what does both turns about the one point that it leaves where it is.
 *
 * @param share 0 to 1; beyond, the motion is carried on
 * @source the fixed point of p -> R(a) p + o is (1 - R(a))^-1 o; a turn by s a about it shifts the origin by
 *         (1 - R(s a)) (1 - R(a))^-1 o, which is o turned by (s - 1) a / 2, times sin(s a / 2) / sin(a / 2): exact for
 *         small angles too, where the fixed point lies far away
 */
export function partway<F extends Frame>(motion: Rigid<F>, share: number): Rigid<F> {
  const { angle, origin } = motion;
  const half = Math.sin(angle / 2);
  const start = pointLike(origin, 0, 0);
  // A shift, or whole turns: there is no one point that stays.
  if (Math.abs(half) < PARAMETER_ACCURACY)
    return rigidMotion(start, scaled(angle, share), share * origin.x, share * origin.y);
  const size = Math.sin((share * angle) / 2) / half;
  const turn = ((share - 1) * angle) / 2;
  const [cosine, sine] = [Math.cos(turn), Math.sin(turn)];
  return rigidMotion(
    start,
    scaled(angle, share),
    size * (cosine * origin.x - sine * origin.y),
    size * (sine * origin.x + cosine * origin.y),
  );
}

const scaled = (angle: Radians, share: number): Radians => radians(share * angle);
