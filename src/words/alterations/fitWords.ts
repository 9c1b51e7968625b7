/**
 * What is said of a fit alteration. Titles and steps are templates: a length's name in braces is replaced by that length as
 * the wearer's tape has it; with ":round" behind its name, by a round figure.
 */
import type { AlterationTrace } from "../../core/alterations/outcome/trace";
import type { Piece } from "../../core/pattern/piece";
import type { Mm } from "../../core/units";

/** A piece that was altered, as what is to be done on it is told: by what it has, and what became of it. */
export interface Altered {
  /** As it lies before. */
  readonly piece: Piece;
  /** With its sign. */
  readonly amount: Mm;
  readonly trace: Pick<AlterationTrace, "before" | "after" | "surgery">;
}

/** One move after another; false in the place of one that this piece does not need. */
export type Steps = readonly (string | false)[];

export interface FitWords {
  /** "Sway back". */
  readonly name: string;
  /** What is seen on the body that asks for it. */
  readonly seen: string;
  /** The amount field's label, as for positive amounts: "Lengthen by". */
  readonly amount: string;
  /** "less than 0 shortens"; absent where only positive amounts make sense. */
  readonly hint?: string;
  /** "Let {amount} in above the bust": its line in the ledger, for a positive amount. `{amount}` has no sign. */
  readonly more: string;
  /** The same for negative amounts; absent where there are none. */
  readonly less?: string;
  /** What to do on the tissue of a piece that it changes; to be followed with no screen at hand. */
  readonly steps: (altered: Altered) => Steps;
  /** A usual caution, where the work needs one. */
  readonly caution?: string;
}
