/** What all parts of a dress hang on: the finished waist of the bodice, and the body below it. */
import type { Mm } from "../units";

/** The waist seam of one half, darts sewn: front from centre front to side, back from side to centre back. */
export interface WaistHalf {
  readonly front: Mm;
  readonly back: Mm;
}

/** The finished waist, the wearer's left half first; the very same object twice where they are alike. */
export interface FinishedWaist {
  readonly halves: readonly [WaistHalf, WaistHalf];
  /** Both halves all round, as closed. */
  readonly whole: Mm;
}

/** The body that a skirt covers; what is not known is null or worked out by common practice, and then `isUsual` says so. */
export interface DressBody {
  readonly waist: Mm;
  readonly bust: Mm;
  readonly hip: Mm | null;
  readonly height: Mm | null;
  /** From the waist down to the hip line, along the side. */
  readonly hipDepth: Mm;
  readonly isHipDepthUsual: boolean;
  /** From the waist to the floor; null: not measured at all three. */
  readonly toFloor: { readonly front: Mm; readonly side: Mm; readonly back: Mm } | null;
  readonly shoulderGirth: Mm | null;
}
