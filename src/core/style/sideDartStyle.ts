/**
 * The style "side dart and waist dart": made from the block by the operations a dressmaker uses. The shoulder dart is
 * pivoted to the side seam, the front adjusted to the cup, and both darts ended short of the bust point.
 */
import { invariant, ok, type Result } from "../result";
import { aimDart, drawnStop } from "../dart/dartEnd";
import { trueSeamEvenly } from "../dart/trueSeamEvenly";
import { BLOCK_DIFFERENCE } from "../draft/draftMeasures";
import { seamLength } from "../girth/seamLength";
import { edgeLength, edgeParameterAtLength } from "../geometry/edgeCurve";
import type { PiecePoint } from "../geometry/point";
import { homeOf } from "../pattern/dartNames";
import type { DartEndReading } from "../dart/dartEndReading";
import { dartOf, pointOf, type DartName, type Piece } from "../pattern/piece";
import { noSurgery } from "../surgery/cutAndMove";
import { adjustFullBust, type FullBust, type FullBustFailure } from "../surgery/fullBust";
import { pivotDart } from "../surgery/pivotDart";
import { curveOf, edgeFrom } from "../pattern/ring";
import { radians, type Mm } from "../units";
import { pieceIn, withPiece } from "../pattern/pieceSet";
import type { Style } from "./style";

/** mm below the bust line, along the side seam, where the side dart is opened (common practice, no source). */
const SIDE_DART_BELOW_BUST: Mm = 45;
const NO_TURN = radians(0);

/** The block's front with its bust dart pivoted from the shoulder to the side seam; darts still reach the bust point. */
export function withSideDart(block: Piece): Piece {
  const side = invariant(block.edges[edgeFrom(block, "sideBust")], "side edge");
  const curve = curveOf(block, side);
  const along = Math.min(SIDE_DART_BELOW_BUST, edgeLength(curve) / 3);
  return pivotDart(block, {
    close: "shoulderDart",
    open: "sideDart",
    edgeFrom: "sideBust",
    t: edgeParameterAtLength(curve, along),
    pivot: "bustPoint",
  }).piece;
}

/** The front made for another cup difference than the block's. */
function forCup(front: Piece, difference: Mm): Result<FullBust, FullBustFailure> {
  if (difference === BLOCK_DIFFERENCE)
    return ok({ piece: front, turn: NO_TURN, drop: 0, smoothed: NO_TURN, trace: noSurgery(front) });
  return adjustFullBust(front, (difference - BLOCK_DIFFERENCE) / 2);
}

const usual = (): null => null;

const isAtWaist = (name: DartName): boolean => homeOf(name) === "waist";

/** The one that lies first, as it is sewn. */
function bustDarts(front: Piece): readonly DartName[] {
  const all = front.darts.filter(({ aimsAt }) => aimsAt === "bustPoint").map(({ name }) => name);
  return [...all.filter((name) => !isAtWaist(name)), ...all.filter(isAtWaist)];
}

/** The bust darts ended at the drawn stop from a bust point, and the seams trued over the shut darts. */
function endBustDarts(
  front: Piece,
  bustPoint: PiecePoint,
  difference: Mm,
  endOf: (dart: DartName) => DartEndReading | null = usual,
): Piece {
  let piece = front;
  for (const dart of bustDarts(front)) {
    const { along, across } = endOf(dart) ?? { along: drawnStop(dart, difference), across: 0 };
    const ended = aimDart(piece, dart, bustPoint, along, across);
    piece = trueSeamEvenly(ended, dart, seamLength(front, dartOf(front, dart).seam));
  }
  return piece;
}

/** The style as a whole: a front and a back, as drafted. */
export const sideDartStyle: Style = {
  name: "sideDart",
  bustPiece: "front",
  waistPieces: { front: ["front"], back: ["back"] },
  open: (block, back, difference) => {
    const front = forCup(withSideDart(block), difference);
    return front.ok ? ok({ front: front.value.piece, back }) : front;
  },
  adjustBust: (pieces, spread) => {
    const done = adjustFullBust(pieceIn(pieces, "front"), spread);
    if (!done.ok) return done;
    const { piece, turn, drop, smoothed } = done.value;
    return ok({
      pieces: withPiece(pieces, piece),
      turn,
      drop,
      smoothed,
      get traces() {
        return [done.value.trace];
      },
    });
  },
  finish: (pieces, bustPoint, difference, endOf) =>
    withPiece(pieces, endBustDarts(pieceIn(pieces, "front"), bustPoint, difference, endOf)),
};

/** The printed front of one size and cup, or why that cup cannot be made from it. */
export function sideDartFront(block: Piece, difference: Mm): Result<Piece, FullBustFailure> {
  const cup = forCup(withSideDart(block), difference);
  if (!cup.ok) return cup;
  return ok(endBustDarts(cup.value.piece, pointOf(cup.value.piece, "bustPoint"), difference));
}
