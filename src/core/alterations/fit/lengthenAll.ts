/** Several pieces lengthened alike, so that they can still be sewn together. */
import type { AlterationFailure } from "../outcome/alterationFailure";
import type { FitApplied } from "../outcome/definition";
import { pieceIn, withPiece, type PieceSet } from "../../pattern/pieceSet";
import type { PieceName } from "../../pattern/piece";
import { fail, ok, type Result } from "../../result";
import type { Mm } from "../../units";
import type { SurgeryTrace } from "../../surgery/cutAndMove";
import { lengthenBetween, type Across } from "../../surgery/lengthenAcross";
import { walkAgain } from "../../surgery/walkAgain";

/** Where each piece is cut across. */
export type Line = readonly (readonly [PieceName, Across])[];

/**
 * Lengthens (positive) or shortens every piece of a line by the same amount, and walks the seams.
 *
 * @returns the pieces; or `alteration/too-much` with the most that every piece can give
 */
export function lengthenAll(pieces: PieceSet, line: Line, amount: Mm): Result<FitApplied, AlterationFailure> {
  let set = pieces;
  const traces: SurgeryTrace[] = [];
  let least = -Infinity;
  for (const [name, across] of line) {
    const done = lengthenBetween(pieceIn(pieces, name), across, amount);
    if (done.ok) {
      set = withPiece(set, done.value.piece);
      traces.push(done.value.trace);
    } else least = Math.max(least, done.failure.least);
  }
  if (least > -Infinity) return fail({ code: "alteration/too-much", most: least });
  return ok({ pieces: walkAgain(pieces, set), traces, values: {} });
}
