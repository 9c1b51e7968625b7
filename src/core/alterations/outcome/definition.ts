/**
 * What a fit alteration is: one file with its name, its words and its mathematics. The words are templates: an amount's
 * name in braces is replaced by the amount as the wearer's tape has it.
 */
import type { Phase } from "../../decisions/tradeOrder";
import type { SlipFailure } from "./failure";
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
  /** Lengths that the words name beside `{amount}`; mm, always positive. */
  readonly values: Readonly<Record<string, Mm>>;
  /**
   * The steps as they are on these very pieces, where those of the words do not tell it for every style: pieces that are
   * left out have nothing to be done. Absent: those of the words.
   */
  readonly steps?: Readonly<Partial<Record<PieceName, readonly string[]>>>;
  /** What the whole girth at a level grows by (negative: shrinks), by design; mm. Absent: nothing. */
  readonly girths?: Readonly<Partial<Record<"bust" | "waist" | "hip", Mm>>>;
}

/** What is said of one sign of the amount. `{amount}` is always positive. */
export interface FitWay {
  /** "Let {amount} in above the bust": the slip's line in the ledger. */
  readonly title: string;
  /** What to do on the tissue, piece by piece, one move after another; to be followed with no screen at hand. */
  readonly steps: Readonly<Partial<Record<PieceName, readonly string[]>>>;
}

export interface FitWords {
  /** "Sway back". */
  readonly name: string;
  /** What is seen on the body that asks for it. */
  readonly seen: string;
  /** The amount field's label, as for positive amounts: "Lengthen by". */
  readonly amount: string;
  /** "less than 0 shortens"; absent where only positive amounts make sense. */
  readonly hint?: string;
  readonly more: FitWay;
  /** For negative amounts; absent where there are none. */
  readonly less?: FitWay;
  /** A usual caution, where the work needs one. */
  readonly caution?: string;
}

export interface FitDefinition {
  readonly phase: Phase;
  readonly words: FitWords;
  /** Amounts that are ever sensible, mm; a negative `least` where it works both ways. */
  readonly range: { readonly least: Mm; readonly most: Mm };
  /** Whether a garment has what it is made on. */
  readonly applies: (pieces: PieceSet) => boolean;
  /**
   * The pieces after it. Pieces that are sewn to each other must still fit; what is not touched stays the very same
   * object. At amount 0 nothing changes.
   */
  readonly apply: (pieces: PieceSet, amount: Mm, context: FitContext) => Result<FitApplied, SlipFailure>;
}
