/** Truing the legs: two legs that are to be sewn together are brought to one length. */
import { directionOf, distance, polar } from "../geometry/point";
import { dartOf, pointOf, type DartName, type Piece } from "../pattern/piece";
import { SOLVER_ACCURACY } from "../tolerance";
import type { Mm } from "../units";
import { moveMouthEnd } from "./mouthEnd";

export interface TruedLegs {
  readonly piece: Piece;
  /** What each mouth end moved along its leg: positive away from the apex. */
  readonly inner: Mm;
  readonly outer: Mm;
}

/** Both mouth ends moved along their legs to the mean of the two lengths, or to what the pattern drew them apart by; the angle stays. */
export function trueLegs(piece: Piece, name: DartName): TruedLegs {
  const dart = dartOf(piece, name);
  const apex = pointOf(piece, dart.apex);
  const inner = pointOf(piece, dart.inner);
  const outer = pointOf(piece, dart.outer);
  const legInner = distance(apex, inner);
  const legOuter = distance(apex, outer);
  const half = (legOuter - legInner - (dart.drawnLegs ?? 0)) / 2;
  if (Math.abs(half) < SOLVER_ACCURACY) return { piece, inner: 0, outer: 0 };
  const lengthened = moveMouthEnd(piece, dart.inner, polar(inner, directionOf(apex, inner), half));
  const shortened = moveMouthEnd(lengthened, dart.outer, polar(outer, directionOf(apex, outer), -half));
  return { piece: shortened, inner: half, outer: -half };
}
