/**
 * What a style is: how its pieces are made up from the blended block and how its bust is adjusted. Every style is made by the very operations that a dressmaker uses on paper.
 */
import type { PieceSet } from "../pattern/pieceSet";
import type { StrapStyle, StyleName } from "../decisions/pattern";
import type { PiecePoint } from "../geometry/point";
import type { DartEndReading } from "../dart/dartEndReading";
import type { DartName, Piece, PieceName } from "../pattern/piece";
import type { Result } from "../result";
import type { FullBustFailure } from "../surgery/fullBust";
import type { SurgeryTrace } from "../surgery/cutAndMove";
import type { Mm, Radians } from "../units";

export interface StyleOptions {
  readonly strap: StrapStyle;
}

export interface BustAdjusted {
  readonly pieces: PieceSet;
  readonly turn: Radians;
  /** How much longer the front became over the bust: at the centre, or at a cup's dart. */
  readonly drop: Mm;
  /** Turn that was smoothed away at the hinge. */
  readonly smoothed: Radians;
  readonly traces: readonly SurgeryTrace[];
}

export interface Style {
  readonly name: StyleName;
  /** The piece that carries the point `bustPoint`. */
  readonly bustPiece: PieceName;
  /** Pieces whose waist seams together meet the basque's or skirt's. */
  readonly waistPieces: { readonly front: readonly PieceName[]; readonly back: readonly PieceName[] };
  /**
   * The bodice pieces made up from one front and one back block for a cup difference, bust darts still reaching the
   * bust point. Blocks are as drafted: front with shoulder and waist dart, back with a waist dart.
   */
  open(front: Piece, back: Piece, difference: Mm, options: StyleOptions): Result<PieceSet, FullBustFailure>;
  /** A full (positive) or small (negative) bust adjustment of pieces that are still open; spread on the half, mm. */
  adjustBust(pieces: PieceSet, spread: Mm): Result<BustAdjusted, FullBustFailure>;
  /**
   * Ends the bust darts short of a bust point, trues the seams and walks them.
   *
   * @param endOf where a dart is to end, read from the bust point; null: the usual way
   */
  finish(
    pieces: PieceSet,
    bustPoint: PiecePoint,
    difference: Mm,
    endOf?: (dart: DartName) => DartEndReading | null,
  ): PieceSet;
}
