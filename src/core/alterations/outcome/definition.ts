/**
 * What a fit alteration is: its place in the trade's order, what it can be made on, and its mathematics. What is said of it
 * stands in the words, by the same name; the mathematics gives the lengths that are said.
 */
import type { AlterationFailure } from "./alterationFailure";
import type { PiecePoint } from "../../geometry/point";
import type { PieceName } from "../../pattern/piece";
import type { Result } from "../../result";
import type { SurgeryTrace } from "../../surgery/cutAndMove";
import type { Mm } from "../../units";
import type { PieceSet } from "../../pattern/pieceSet";

export interface FitContext {
  /** The bust point the darts are judged by, in the frame of the bust piece. */
  readonly bustPoint: PiecePoint;
}

export interface FitApplied {
  readonly pieces: PieceSet;
  readonly traces: readonly SurgeryTrace[];
  /**
   * Every length that its words name beside the amount, by the name they call it: what follows from the pieces, and what the
   * mathematics itself goes by; mm, always positive.
   */
  readonly values: Readonly<Record<string, Mm>>;
  /** What the whole girth at a level grows by (negative: shrinks), by design; mm. Absent: nothing. */
  readonly girths?: Readonly<Partial<Record<"bust" | "waist" | "hip", Mm>>>;
}

export interface FitDefinition {
  /** Amounts that are ever sensible, mm; a negative `least` where it works both ways. */
  readonly range: { readonly least: Mm; readonly most: Mm };
  /**
   * The amount is one for both halves of the body together, as girths and widths across are measured. Asked for on one half
   * alone it is the amount on that half: what was pinned there.
   */
  readonly isWhole?: true;
  /** The pieces that it is made on, where a garment has them. */
  readonly madeOn: readonly PieceName[];
  /** Whether a garment has what it is made on. */
  readonly applies: (pieces: PieceSet) => boolean;
  /**
   * The pieces after it. Pieces that are sewn to each other must still fit; what is not touched stays the very same
   * object. At amount 0 nothing changes.
   */
  readonly apply: (pieces: PieceSet, amount: Mm, context: FitContext) => Result<FitApplied, AlterationFailure>;
}
