import { hasDartIn } from "../../core/alterations/fit/whatChanged";
import { isBand } from "../../core/pattern/pieceGroups";
import type { Piece } from "../../core/pattern/piece";
import type { FitWords } from "./fitWords";

/** Where the stretch of the side seam that is drawn anew ends on a piece. */
function endOf(piece: Piece): string {
  if (isBand(piece.name)) return "waist";
  return hasDartIn(piece, "side") ? "lower leg of the dart in the side" : "bust line";
}

export const sideSeamUnderBust: FitWords = {
  name: "Side seams at the under-bust",
  seen: "The midriff band stands away, or cuts in, below the bust while bust and waist are right.",
  amount: "Let the under-bust out by, all round",
  hint: "less than 0 takes it in",
  more: "Let the side seams out at the under-bust, {amount} all round",
  less: "Take the side seams in at the under-bust, {amount} all round",
  steps: ({ piece, amount }) => [
    amount > 0
      ? "Stick paper to the side. Carry the under-bust seam on by {quarter} beyond the side seam and mark there."
      : "Mark {quarter} in from the side seam, along the under-bust seam.",
    `Draw the side seam anew from there, smoothly into the old line at the ${endOf(piece)}, where it stays.`,
    isBand(piece.name)
      ? "Walk the under-bust seam of the band along the one above it, and the side seams of both bands against each other."
      : "Lay front and back together at the side: the seams are equally long, and the side seam runs on into the band’s without a corner.",
  ],
};
