/** Truing the legs: two legs that are to be sewn together are brought to one length. */
import { directionOf, distance, polar, type PiecePoint } from "../geometry/point";
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
  const { inner, outer, half } = evenLegs(apex, pointOf(piece, dart.inner), pointOf(piece, dart.outer), dart.drawnLegs);
  if (half === 0) return { piece, inner: 0, outer: 0 };
  const shortened = moveMouthEnd(moveMouthEnd(piece, dart.inner, inner), dart.outer, outer);
  return { piece: shortened, inner: half, outer: -half };
}

/** Where the mouth ends come to lie, and by how much the inner leg gets longer; 0 where there is nothing to true. */
export function evenLegs(apex: PiecePoint, inner: PiecePoint, outer: PiecePoint, drawnLegs: Mm = 0) {
  const half = (distance(apex, outer) - distance(apex, inner) - drawnLegs) / 2;
  if (Math.abs(half) < SOLVER_ACCURACY) return { inner, outer, half: 0 };
  return {
    inner: polar(inner, directionOf(apex, inner), half),
    outer: polar(outer, directionOf(apex, outer), -half),
    half,
  };
}
