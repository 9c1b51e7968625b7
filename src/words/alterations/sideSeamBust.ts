import { hasDartIn } from "../../core/alterations/fit/whatChanged";
import type { FitWords } from "./fitWords";

export const sideSeamBust: FitWords = {
  name: "Side seams at the bust",
  seen: "The bodice is tight or loose all round at the bust line while the cup itself is right.",
  amount: "Let the bust out by, all round",
  hint: "less than 0 takes it in",
  more: "Let the side seams out at the bust, {amount} all round",
  less: "Take the side seams in at the bust, {amount} all round",
  steps: ({ piece, amount }) => [
    amount > 0
      ? "Stick paper to the side. Mark {quarter} out from the side seam at the underarm and at the bust line."
      : "Mark {quarter} in from the side seam at the underarm and at the bust line.",
    `Draw the side seam through both marks and on, running out to nothing at the ${piece.points.sideWaist === undefined ? "under-bust seam" : "waist"}.`,
    hasDartIn(piece, "side") && "The dart on the way is drawn on, or cut back, along its legs.",
    "Draw the armhole to the new underarm, as hollow as before.",
    "Lay front and back together at the side: the seams are equally long.",
  ],
};
