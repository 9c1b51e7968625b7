/**
 * The princess-line styles: a seam from the armhole or from the shoulder over the bust point to the waist in place of
 * the bust dart and the waist dart of the front.
 */
import type { StyleName } from "../decisions/pattern";
import { ok, type Result } from "../result";
import { BLOCK_DIFFERENCE } from "../draft/draftMeasures";
import { pieceIn, withPiece, type PieceSet } from "../pattern/pieceSet";
import type { DartName, Piece } from "../pattern/piece";
import type { FullBustFailure } from "../surgery/fullBust";
import { pivotDart } from "../surgery/pivotDart";
import { adjustPrincessBust } from "../surgery/princessBust";
import { drawPrincess } from "../surgery/princessSeam";
import { splitAtBustPoint, type PrincessPieces } from "../surgery/splitAtBustPoint";
import type { BustAdjusted, Style } from "./style";
import { radians, type Mm } from "../units";

/** Neither armhole nor shoulder bends: what turns at their ends is the princess seam, and that is drawn anew. */
const NO_TURN = radians(0);

/** Where on the upper armhole edge, from the shoulder tip to the touch, the seam begins (common practice, no source). */
const ON_UPPER_ARMHOLE = 0.7;

/** The block's front with its bust dart pivoted from the shoulder to the armhole; darts still reach the bust point. */
export const withArmholeDart = (block: Piece): Piece =>
  pivotDart(block, {
    close: "shoulderDart",
    open: "armholeDart",
    edgeFrom: "shoulderTip",
    t: ON_UPPER_ARMHOLE,
    pivot: "bustPoint",
  }).piece;

const frontsOf = (pieces: PieceSet): PrincessPieces => ({
  centreFront: pieceIn(pieces, "centreFront"),
  sideFront: pieceIn(pieces, "sideFront"),
});

const withFronts = (pieces: PieceSet, { centreFront, sideFront }: PrincessPieces): PieceSet =>
  withPiece(withPiece(pieces, centreFront), sideFront);

function adjustBust(pieces: PieceSet, spread: Mm): Result<BustAdjusted, FullBustFailure> {
  const done = adjustPrincessBust(frontsOf(pieces), spread);
  if (!done.ok) return done;
  const { turn, drop } = done.value;
  return ok({
    pieces: withFronts(pieces, done.value.pieces),
    turn,
    drop,
    smoothed: NO_TURN,
    get traces() {
      return done.value.traces;
    },
  });
}

const princessStyle = (name: StyleName, upperDart: DartName, prepare: (block: Piece) => Piece): Style => ({
  name,
  bustPiece: "centreFront",
  waistPieces: { front: ["centreFront", "sideFront"], back: ["back"] },
  open: (front, back, difference) => {
    const pieces = withFronts({ back }, drawPrincess(splitAtBustPoint(prepare(front), upperDart)));
    if (difference === BLOCK_DIFFERENCE) return ok(pieces);
    const cup = adjustBust(pieces, (difference - BLOCK_DIFFERENCE) / 2);
    return cup.ok ? ok(cup.value.pieces) : cup;
  },
  adjustBust,
  // No dart is left to end; between sizes the two seams drift apart by fractions of a millimetre, so they are walked.
  finish: (pieces) => withFronts(pieces, drawPrincess(frontsOf(pieces))),
});

/** The seam runs from the middle of the armhole, a little above it. */
export const princessArmholeStyle: Style = princessStyle("princessArmhole", "armholeDart", withArmholeDart);

/** The seam runs from the middle of the shoulder. */
export const princessShoulderStyle: Style = princessStyle("princessShoulder", "shoulderDart", (block) => block);
