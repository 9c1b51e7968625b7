/**
 * Width across the chest or the back, at the armhole: the part beside the armhole is cut off, from the middle of the
 * shoulder straight down and out to the lower armhole, and slid. The end of the shoulder is brought back to where it
 * was and the lower armhole drawn to the old underarm. So shoulder, side seam and bust line stay as they are, and the
 * armhole alone lies further out or in.
 */
import { moveMouthEnd } from "../../dart/mouthEnd";
import { edgeCrossingsAtY, edgePointAt } from "../../geometry/edgeCurve";
import { distance, piecePoint, type PiecePoint } from "../../geometry/point";
import { shiftMotion } from "../../geometry/rigid";
import { pointOf, type Piece } from "../../pattern/piece";
import { moveBeyondCut } from "../../surgery/beyondCut";
import type { Operated } from "../../surgery/cutAndMove";
import { placeAt, stretchTo } from "../../pattern/seamStretch";
import { curveOf } from "../../pattern/ring";
import { pointAt } from "../../surgery/wedge";
import { SAME_LINE } from "../../tolerance";
import type { Mm } from "../../units";

/** Where the cut comes out on the last edge of the armhole, from above (our own choice). */
const ON_LOWER_ARMHOLE = 0.3;
/** How far inside the armhole the cut runs at most on a piece without a shoulder (our own choice). */
const INSIDE: Mm = 30;

/** Whether a piece has the fullest turn of an armhole and its underarm. */
export const hasArmhole = (piece: Piece | undefined): piece is Piece =>
  piece?.points.armholeTouch !== undefined && piece.points.underarm !== undefined;

/** How far from the underarm the cut comes out on the armhole, straight. */
export const fromUnderarm = (piece: Piece): Mm =>
  distance(pointOf(piece, "underarm"), pointAt(piece, placeAt(piece, stretchTo(piece, "underarm"), ON_LOWER_ARMHOLE)));

/** Where the cut meets the armhole above and below. */
function placesOfCut(piece: Piece) {
  const hasShoulder = piece.points.shoulderTip !== undefined;
  return {
    hasShoulder,
    into: placeAt(piece, stretchTo(piece, hasShoulder ? "shoulderTip" : "armholeTouch"), 0.5),
    outOf: placeAt(piece, stretchTo(piece, "underarm"), ON_LOWER_ARMHOLE),
  };
}

/** How far inside the armhole the cut runs on a piece without a shoulder: where that tapers, no further than half across. */
export function insideArmhole(piece: Piece): Mm {
  const { into, outOf } = placesOfCut(piece);
  const acrossAt = ({ x, y }: PiecePoint): Mm =>
    x -
    Math.max(
      ...piece.edges.flatMap((edge) => {
        const curve = curveOf(piece, edge);
        return edgeCrossingsAtY(curve, y)
          .map((t) => edgePointAt(curve, t).x)
          .filter((found) => found < x - SAME_LINE);
      }),
    );
  return Math.min(INSIDE, ...[into, outOf].map((place) => acrossAt(pointAt(piece, place)) / 2));
}

/** The armhole part slid outward by an amount (inward where negative). */
export function slideArmhole(piece: Piece, amount: Mm): Operated {
  const { hasShoulder, into, outOf } = placesOfCut(piece);
  const [from, to] = [pointAt(piece, into), pointAt(piece, outOf)];
  const inside = hasShoulder ? from.x : from.x - insideArmhole(piece);
  const corners: PiecePoint[] = hasShoulder
    ? [piecePoint(inside, to.y)]
    : [piecePoint(inside, to.y), piecePoint(inside, from.y)];
  const done = moveBeyondCut(piece, {
    into,
    outOf,
    corners,
    motion: shiftMotion(piecePoint(0, 0), piecePoint(amount, 0)),
  });
  return hasShoulder
    ? { ...done, piece: moveMouthEnd(done.piece, "shoulderTip", pointOf(piece, "shoulderTip")) }
    : done;
}
