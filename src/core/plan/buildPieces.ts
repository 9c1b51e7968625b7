/** From blocks to the wearer's pieces: blended at each level, made up in the style, adjusted for the bust. */
import type { PieceSet } from "../alterations/pieceSet";
import { moveMouthEnd } from "../dart/mouthEnd";
import { blendPiece, levelSizes, type LevelSizes } from "../blend/blendPiece";
import { seamLength } from "../girth/seamLength";
import { levelWidth } from "../girth/levelWidth";

import { piecePoint, shift, type PiecePoint } from "../geometry/point";
import { pointOf, type Piece } from "../pattern/piece";
import type { Blocks } from "../pattern/printedNest";
import { fail, must, ok, type Result } from "../result";
import { endBustDarts, forCup, withSideDart } from "../style/sideDartStyle";
import { adjustFullBust, type FullBust, type FullBustFailure } from "../surgery/fullBust";
import type { Measures } from "../measures/measure";
import type { Mm } from "../units";

/** Whole finished waist for each size at the waist, the frame's darts kept; mm. */
export function finishedWaists(blocks: Blocks, frame: number): readonly Mm[] {
  return blocks.front.map((_, size) => {
    const at = levelSizes(frame, size, frame);
    return 2 * (blendedWaist(blocks.front, at) + blendedWaist(blocks.back, at));
  });
}

/** Blends the waist seam alone: that is all the finished waist needs. */
function blendedWaist(sizes: readonly Piece[], at: LevelSizes): Mm {
  return seamLength(blendPiece(sizes, at, "waist"), "waist");
}

/** Whole finished hip of each size; null where the pattern ends at the waist. */
export function finishedHips({ frontBasque, backBasque }: Blocks): readonly Mm[] | null {
  if (frontBasque.length === 0) return null;
  return frontBasque.map(
    (front, size) =>
      2 * (must(levelWidth(front, "hip"), "hip line") + must(levelWidth(must(backBasque[size], "size"), "hip"), "hip line")),
  );
}

export interface Built {
  /** Blended, in the cup version, before the bust alteration. */
  readonly cut: PieceSet;
  /** After it: what the wearer's own slips start from. */
  readonly blended: PieceSet;
  readonly bust: Result<FullBust, FullBustFailure> | null;
  readonly bustPoint: { readonly printed: PiecePoint; readonly own: PiecePoint | null };
  /** The front with the darts that the wearer's own cup asks for; null where no such front can be made. */
  readonly wanted: Piece | null;
}

export interface BuildInputs {
  readonly blocks: Blocks;
  readonly at: LevelSizes;
  readonly cupDifference: Mm;
  /** Whole bust change to make, and the whole difference between the wearer's cup and the version's. */
  readonly alteration: Mm;
  readonly residual: Mm;
  readonly measures: Measures;
}

/** Builds the pieces for the picks. */
export function buildPieces(inputs: BuildInputs): Result<Built, FullBustFailure> {
  const { blocks, at, cupDifference } = inputs;
  const cup = forCup(withSideDart(blendPiece(blocks.front, at)), cupDifference);
  if (!cup.ok) return fail(cup.failure);
  const open = cup.value.piece;
  const cutFront = endBustDarts(open, pointOf(open, "bustPoint"), cupDifference);
  const bust = inputs.alteration === 0 ? null : adjustFullBust(open, inputs.alteration / 2);
  const altered = bust !== null && bust.ok ? bust.value.piece : null;
  const front =
    altered === null ? cutFront : endBustDarts(altered, pointOf(altered, "bustPoint"), cupDifference + inputs.alteration);
  const printed = pointOf(front, "bustPoint");
  const own = ownBustPoint(front, inputs.measures);
  const wantedOpen = inputs.residual === 0 ? ok(open) : mapPiece(adjustFullBust(open, inputs.residual / 2));
  const back = blendPiece(blocks.back, at);
  const rest: PieceSet = {
    back,
    ...(blocks.frontBasque.length === 0
      ? {}
      : {
          frontBasque: trueToBodice(blendPiece(blocks.frontBasque, at), cutFront),
          backBasque: trueToBodice(blendPiece(blocks.backBasque, at), back),
        }),
  };
  return ok({
    cut: { front: cutFront, ...rest },
    blended: { front, ...rest },
    bust,
    bustPoint: { printed, own },
    wanted: wantedOpen.ok
      ? endBustDarts(wantedOpen.value, own ?? pointOf(wantedOpen.value, "bustPoint"), cupDifference + inputs.residual)
      : null,
  });
}

/** Rounds of truing; each leaves a small part of the error. */
const ROUNDS = 3;

/**
 * The basque's waist seam trued to the bodice's. Blended, the two agree to well within a millimetre unless the waist
 * lies many sizes from the frame; the side seam takes the rest.
 */
function trueToBodice(basque: Piece, bodice: Piece): Piece {
  const wanted = seamLength(bodice, "waist");
  let trued = basque;
  for (let round = 0; round < ROUNDS; round += 1) {
    const longer = seamLength(trued, "waist") - wanted;
    trued = moveMouthEnd(trued, "sideWaist", shift(pointOf(trued, "sideWaist"), -longer, 0));
  }
  return trued;
}

const mapPiece = (result: Result<FullBust, FullBustFailure>): Result<Piece, FullBustFailure> =>
  result.ok ? ok(result.value.piece) : result;

/** The wearer's bust point on the front, from the side neck point, where she measured both; else null. */
function ownBustPoint(front: Piece, { bustPointWidth, sideNeckToBustPoint }: Measures): PiecePoint | null {
  if (bustPointWidth === undefined || sideNeckToBustPoint === undefined) return null;
  const neck = pointOf(front, "sideNeck");
  const x = bustPointWidth / 2;
  const down = sideNeckToBustPoint ** 2 - (x - neck.x) ** 2;
  return down <= 0 ? null : piecePoint(x, neck.y + Math.sqrt(down));
}

