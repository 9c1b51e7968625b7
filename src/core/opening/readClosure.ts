/** Whether she gets in, how, and the zip it takes. */
import type { Closure } from "../decisions/pattern";
import type { PieceSet } from "../pattern/pieceSet";
import type { Mm } from "../units";
import type { ClosureReading } from "./gettingIn";

export interface ClosureAsked {
  /** The finished bodice, the wearer's left half first. */
  readonly bodice: readonly [PieceSet, PieceSet];
  readonly closure: Closure;
  readonly zip: "invisible" | "lapped";
  /** Below the waist, from the waist seam on; empty: nothing hangs there. `lining` where it is lined. */
  readonly skirt: readonly { readonly below: Mm; readonly girth: Mm }[];
  readonly lining: readonly { readonly below: Mm; readonly girth: Mm }[];
  readonly body: { readonly bust: Mm; readonly hip: Mm | null; readonly shoulderGirth: Mm | null };
}

export function readClosure(_asked: ClosureAsked): ClosureReading | null {
  return null;
}
