/**
 * Width across the chest or the back, at the armhole: the part beside the armhole is cut off, from the middle of the
 * shoulder straight down (or along inside the armhole) and out to the lower armhole, and slid. The end of the shoulder is brought back to where it
 * was and the lower armhole drawn to the old underarm. So shoulder, side seam and bust line stay as they are, and the
 * armhole alone lies further out or in.
 */
import { moveMouthEnd } from "../../dart/mouthEnd";
import { edgeCrossingsAtY, edgeFlatten, edgePointAt } from "../../geometry/edgeCurve";
import { distance, piecePoint, type PiecePoint } from "../../geometry/point";
import { shiftMotion } from "../../geometry/rigid";
import { pointOf, type Piece } from "../../pattern/piece";
import { moveBeyondCut, type OutlinePlace } from "../../surgery/beyondCut";
import { drawnFurther, type Operated } from "../../surgery/cutAndMove";
import { placeAt, stretchTo } from "../../pattern/seamStretch";
import { curveOf } from "../../pattern/ring";
import { pointAt } from "../../surgery/wedge";
import { PLACED_ACCURACY, SAME_LINE } from "../../tolerance";
import type { Mm } from "../../units";

/** Where the cut comes out on the last edge of the armhole, from above (our own choice). */
const ON_LOWER_ARMHOLE = 0.3;
/** How far inside the armhole the cut runs at most, where it cannot run plumb from the shoulder (our own choice). */
const INSIDE: Mm = 30;

/** Whether a piece has the fullest turn of an armhole and its underarm. */
export const hasArmhole = (piece: Piece | undefined): piece is Piece =>
  piece?.points.armholeTouch !== undefined && piece.points.underarm !== undefined;

/** How far from the underarm the cut comes out on the armhole, straight. */
export const fromUnderarm = (piece: Piece): Mm =>
  distance(pointOf(piece, "underarm"), pointAt(piece, placeAt(piece, stretchTo(piece, "underarm"), ON_LOWER_ARMHOLE)));

interface Cut {
  readonly into: OutlinePlace;
  readonly outOf: OutlinePlace;
  readonly corners: readonly PiecePoint[];
  /** How far inside the armhole it runs; null where it runs plumb from the shoulder. */
  readonly inside: Mm | null;
}

/**
 * Where the cut runs: plumb from the middle of the shoulder. A side front leans so that this would leave it, and one whose
 * seam begins in the armhole has no shoulder: there it runs inside the armhole, no further than half across what tapers.
 */
export function cutInside(piece: Piece): Cut {
  const hasShoulder = piece.points.shoulderTip !== undefined;
  const into = placeAt(piece, stretchTo(piece, hasShoulder ? "shoulderTip" : "armholeTouch"), 0.5);
  const outOf = placeAt(piece, stretchTo(piece, "underarm"), ON_LOWER_ARMHOLE);
  const [from, to] = [pointAt(piece, into), pointAt(piece, outOf)];
  if (hasShoulder && piece.name !== "sideFront")
    return { into, outOf, corners: [piecePoint(from.x, to.y)], inside: null };
  const above = hasShoulder ? innermostOf(piece) : from;
  const inside = Math.min(INSIDE, ...[above, to].map((place) => acrossAt(piece, place) / 2));
  const x = above.x - inside;
  return { into, outOf, corners: [piecePoint(x, to.y), piecePoint(x, above.y)], inside };
}

/** The place of the armhole nearest the centre line. */
function innermostOf(piece: Piece): PiecePoint {
  const places = piece.edges
    .filter(({ seam, mouthOf }) => seam === "armhole" && mouthOf === null)
    .flatMap((edge) => edgeFlatten(curveOf(piece, edge), PLACED_ACCURACY));
  return places.reduce((found, place) => (place.x < found.x ? place : found), pointOf(piece, "armholeTouch"));
}

/** From a place of the armhole level to the other side of the piece. */
const acrossAt = (piece: Piece, { x, y }: PiecePoint): Mm =>
  x -
  Math.max(
    ...piece.edges.flatMap((edge) => {
      const curve = curveOf(piece, edge);
      return edgeCrossingsAtY(curve, y)
        .map((t) => edgePointAt(curve, t).x)
        .filter((found) => found < x - SAME_LINE);
    }),
  );

/** The armhole part slid outward by an amount (inward where negative). */
export function slideArmhole(piece: Piece, amount: Mm): Operated {
  const { into, outOf, corners } = cutInside(piece);
  const done = moveBeyondCut(piece, {
    into,
    outOf,
    corners,
    motion: shiftMotion(piecePoint(0, 0), piecePoint(amount, 0)),
  });
  return piece.points.shoulderTip !== undefined
    ? drawnFurther(done, moveMouthEnd(done.piece, "shoulderTip", pointOf(piece, "shoulderTip")))
    : done;
}
