/** What a plan asks of the pieces of a pattern, wherever they come from: one maker for each source. */
import type { LevelSizes } from "../blend/blendPiece";
import type { SizeChart } from "../chart/sizeChart";
import type { Ease } from "../decisions/pattern";
import type { PiecePoint } from "../geometry/point";
import type { NestSource } from "../pattern/piece";
import type { PieceSet } from "../pattern/pieceSet";
import type { Result } from "../result";
import type { BustAdjusted } from "../style/style";
import type { FullBustFailure } from "../surgery/fullBust";
import type { Mm } from "../units";
import type { PrintedNest } from "./printedNest";

/** Label of a cup version; null: the pattern has none. */
export type Cup = string | null;

/** A level at which a girth is blended, or picked. */
export type GirthLevel = "bust" | "waist" | "hip";

export interface PatternPieces {
  readonly source: NestSource;
  /** The pattern's chart with the cup versions that there are pieces of. */
  readonly chart: SizeChart;
  /**
   * Levels at which all sizes are one and the same for want of a second: nothing can be blended there, and no other base size
   * taken than the one traced.
   */
  readonly alike: ReadonlySet<GirthLevel>;
  /** Whether ease is what the pieces measure, and not what was said of them. */
  readonly isEaseMeasured: boolean;
  /** All sizes of the chart, as printed. */
  printed(cup: Cup): PrintedNest;
  /** Whole finished waist of each size, with its own darts. */
  printedWaists(cup: Cup): readonly Mm[];
  /** Whole finished waist at a fractional size, all else of the base size; mm. */
  finishedWaistAt(cup: Cup, baseSize: number, size: number): Mm;
  /** Whole finished hip of each size; null where the pattern ends at the waist. */
  finishedHips(cup: Cup): readonly Mm[] | null;
  /** Whole finished hip at a fractional size; asked only where there are finished hips. */
  finishedHipAt(cup: Cup, baseSize: number, size: number): Mm;
  /** What a size is larger than the body that the chart gives for it. */
  easeOf(cup: Cup, size: number): Ease;
  /** The pieces blended, and how they are altered for the bust. */
  make(cup: Cup, at: LevelSizes): Result<Making, FullBustFailure>;
}

/** The bodice of one blend, before and after its bust is altered. */
export interface Making {
  /** Bust darts reaching the bust point. */
  readonly open: PieceSet;
  /** As it is traced. */
  readonly cut: PieceSet;
  /** What is blended and never altered for the bust. */
  readonly others: PieceSet;
  /** Where the side neck of the front lies, in the frame of the piece that carries the bust point. */
  readonly sideNeck: PiecePoint;
  /** Spread on the half, mm. */
  adjustBust(open: PieceSet, spread: Mm): Result<BustAdjusted, FullBustFailure>;
  /** Darts ended for a bust point and a cup difference. */
  finish(open: PieceSet, bustPoint: PiecePoint, difference: Mm): PieceSet;
}
