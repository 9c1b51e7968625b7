import { hasDartIn } from "../../core/alterations/fit/whatChanged";
import { isBasque } from "../../core/pattern/pieceGroups";
import type { Piece } from "../../core/pattern/piece";
import type { FitWords } from "./fitWords";

/** Where the stretch of the side seam that is drawn anew begins on a piece. */
function beginningOf(piece: Piece): string {
  if (isBasque(piece.name)) return "hip line";
  if (hasDartIn(piece, "side")) return "lower leg of the dart in the side";
  return piece.points.sideBust === undefined ? "under-bust seam" : "bust line";
}

export const sideSeamWaist: FitWords = {
  name: "Side seams at the waist",
  seen: "The waist is tight or loose all round while bust and hip are right.",
  amount: "Let the waist out by, all round",
  hint: "less than 0 takes it in",
  more: "Let the side seams out at the waist, {amount} all round",
  less: "Take the side seams in at the waist, {amount} all round",
  steps: ({ piece, amount }) => [
    amount > 0
      ? "Stick paper to the side. Carry the waist seam on by {quarter} beyond the side seam and mark there."
      : "Mark {quarter} in from the side seam, along the waist seam.",
    `Draw the side seam anew from there, smoothly into the old line at the ${beginningOf(piece)}.`,
    isBasque(piece.name)
      ? "Walk the waist of the basque along the waist of the bodice."
      : "Lay front and back together: the side seams are as long as they were, and the waist runs across the seam without a corner.",
  ],
};
