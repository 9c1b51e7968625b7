/** The dart cap: the shape of the seam line across the mouth, so that the folded dart is caught whole in the seam. */
import { edgeTangentAt } from "../geometry/edgeCurve";
import { angleAt, directionOf, distance, midpoint, polar, type PiecePoint } from "../geometry/point";
import { invariant } from "../result";
import { homeOf, liesAlongBust } from "../pattern/dartNames";
import { dartOf, pointOf, type DartName, type Piece } from "../pattern/piece";
import { radians } from "../units";
import { curveOf, edgeFrom, edgeTo } from "../pattern/ring";

/**
 * The stitch line across the mouth of a dart whose bulk is folded towards the centre (upright darts) or down (those
 * along the bust, and French darts), seam cut through all layers while it is folded. A dart that is gathered has none.
 *
 * The bulk lies on the seam beside one leg; the stretch of that seam within half the dart's angle of the leg, reflected
 * across the leg, is half the cap, and reflected again across the dart's middle is the other half.
 *
 * @returns from the inner mouth end to the outer one, three or more points; piece frame
 * @source law of sines: a seam meeting the leg at β is met by the middle line at L sin β / sin(β + θ/2)
 */
export function dartCap(piece: Piece, name: DartName): readonly PiecePoint[] {
  const dart = dartOf(piece, name);
  const apex = pointOf(piece, dart.apex);
  const inner = pointOf(piece, dart.inner);
  const outer = pointOf(piece, dart.outer);
  const middle = midpoint(inner, outer);
  if (dart.gathered === true) return [inner, middle, outer];
  const half = angleAt(apex, inner, outer) / 2;
  const isDown = isFoldedDown(name);
  const foldedOnto = isDown ? outer : inner;
  const foldedName = isDown ? dart.outer : dart.inner;
  const middleLine = directionOf(apex, middle);
  const beta = angleOfSeamAtLeg(piece, foldedName, apex);
  const leg = distance(apex, foldedOnto);
  const sum = beta + half;
  // A seam lying nearly along the leg never meets the middle line: leave the mouth straight.
  if (Math.sin(sum) <= 0) return [inner, middle, outer];
  const tip = polar(apex, middleLine, (leg * Math.sin(beta)) / Math.sin(sum));
  return [inner, tip, outer];
}

/** Which way a dart's bulk is pressed (common practice, no source). */
export const isFoldedDown = (name: DartName): boolean => liesAlongBust(name) || homeOf(name) === "french";

/** The angle between the leg (towards the apex) and the seam running away from the dart, at one mouth end. */
function angleOfSeamAtLeg(piece: Piece, end: ReturnType<typeof dartOf>["inner"], apex: PiecePoint): number {
  const at = pointOf(piece, end);
  const before = invariant(piece.edges[edgeTo(piece, end)], "edge");
  const away =
    before.mouthOf === null
      ? radians(edgeTangentAt(curveOf(piece, before), 1) + Math.PI)
      : edgeTangentAt(curveOf(piece, invariant(piece.edges[edgeFrom(piece, end)], "edge")), 0);
  return angleAt(at, apex, polar(at, away, 1));
}
