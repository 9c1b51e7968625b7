/** Where a dart seen on the toile should end, how full it should be, and the bust point that what is seen tells of. */
import { applyAlteration } from "../alterations/applyAlteration";
import { pieceIn, type PieceSet } from "../pattern/pieceSet";
import { BLOCK_DIFFERENCE } from "../draft/draftMeasures";
import { shift, type PiecePoint } from "../geometry/point";
import type { DartRef, Piece } from "../pattern/piece";
import { FULLNESS_NOTICED } from "../tolerance";
import type { Mm } from "../units";
import { apexAfter, apexOffset, type DartCorners } from "../dart/dartFrame";
import { drawnStop } from "../dart/dartEnd";
import { dartCorners } from "../dart/moveMouth";
import { measureDart } from "../dart/measureDart";
import type { PointedDartContext, SeenAtDart } from "./pointedDartTypes";

/** The dart as the toile was sewn, and the pieces its answers start from. */
export interface AsSewn {
  readonly ref: DartRef;
  /** Without this dart's own redraws. */
  readonly base: PieceSet;
  /** With them. */
  readonly pieces: PieceSet;
  readonly corners: DartCorners;
  readonly fullness: Mm;
  /** How much further from the drawn origin the centre line lies at the bust than on the base: what came off there. */
  readonly centreIn: Mm;
}

/** What every answer aims at. */
export interface Aim {
  /** How far short of the bust point, mm. */
  readonly stop: Mm;
  /** From the end as sewn, along the dart: positive shortens. */
  readonly shorten: Mm;
  /** From the end as sewn, across the dart. */
  readonly across: Mm;
  /** The end wanted and the bust point, in the frame of the base pieces with their own centre line. */
  readonly end: PiecePoint;
  readonly bustPoint: PiecePoint;
  /** How far the end wanted lies towards the centre (upwards) of the base dart's axis. */
  readonly toCentre: Mm;
  readonly fullness: Mm;
}

/** Redraws that cannot be made were left out when the toile was planned, and are left out here. */
export function sewnAs(base: PieceSet, ref: DartRef, { existing, bustPoint, radius }: PointedDartContext): AsSewn {
  const pieces = existing.reduce<PieceSet>((so, alteration) => {
    const made = applyAlteration(so, alteration, { bustPoint });
    return made.ok ? made.value.pieces : so;
  }, base);
  const piece = pieceIn(pieces, ref.piece);
  return {
    ref,
    base,
    pieces,
    corners: dartCorners(piece, ref.dart),
    fullness: measureDart(piece, ref.dart, null, radius).fullness,
    centreIn: centreAt(piece) - centreAt(pieceIn(base, ref.piece)),
  };
}

const centreAt = (piece: Piece): Mm => piece.points.centreBust?.at.x ?? 0;

/** The bust point that what is seen tells of, in the frame of the pieces as sewn. */
export const bustPointSeen = ({ corners }: AsSewn, { pastBustPoint, tooFarToSide }: SeenAtDart): PiecePoint =>
  apexAfter(corners, { shorten: pastBustPoint, across: tooFarToSide });

/** The inverse: what would be seen were a bust point where it is said to be. */
export function figuresSeen({ corners }: AsSewn, bustPoint: PiecePoint): SeenAtDart {
  const { shorten, across } = apexOffset(corners, bustPoint);
  return { pastBustPoint: shorten, tooFarToSide: across, pointed: "right" };
}

/**
 * Fullness to aim at: what the cup asks, and at the least as much less (or more) than sewn as is noticed when sewn; as
 * sewn where it is right. What is seen on the body goes before what was worked out.
 */
function fullnessToAimAt(sewn: Mm, cupAsks: Mm, pointed: SeenAtDart["pointed"]): Mm {
  switch (pointed) {
    case "right":
      return sewn;
    case "pointed":
      return Math.min(cupAsks, sewn - FULLNESS_NOTICED);
    case "flat":
      return Math.max(cupAsks, sewn + FULLNESS_NOTICED);
  }
}

export function aimOf(sewn: AsSewn, seen: SeenAtDart, { wantedFullness, cupDifference }: PointedDartContext): Aim {
  const stop = drawnStop(sewn.ref.dart, cupDifference ?? BLOCK_DIFFERENCE);
  const shorten = seen.pastBustPoint + stop;
  return aimAt(sewn, {
    stop,
    shorten,
    across: seen.tooFarToSide,
    fullness: fullnessToAimAt(sewn.fullness, wantedFullness, seen.pointed),
  });
}

export function aimAt(
  sewn: AsSewn,
  { stop, shorten, across, fullness }: Pick<Aim, "stop" | "shorten" | "across" | "fullness">,
): Aim {
  const onBase = (offset: { readonly shorten: Mm; readonly across: Mm }): PiecePoint =>
    shift(apexAfter(sewn.corners, offset), -sewn.centreIn, 0);
  const end = onBase({ shorten, across });
  const toCentre = apexOffset(dartCorners(pieceIn(sewn.base, sewn.ref.piece), sewn.ref.dart), end).across;
  return { stop, shorten, across, end, toCentre, fullness, bustPoint: onBase({ shorten: shorten - stop, across }) };
}
