import { isDartCut } from "../../core/alterations/fit/whatChanged";
import type { FitWords } from "./fitWords";
import { walkingTold } from "./walking";

export const lengthBelowBust: FitWords = {
  name: "Bodice length below the bust",
  seen: "The waist seam sits above the waist, or folds lie across above the waist because the bodice is too long.",
  amount: "Lengthen by",
  hint: "less than 0 shortens",
  more: "Lengthen the bodice below the bust by {amount}",
  less: "Shorten the bodice below the bust by {amount}",
  steps: (altered) => {
    const { piece, amount, trace } = altered;
    const isSide = piece.name === "sideFront";
    const isCentre = piece.name === "centreFront";
    return [
      isSide
        ? "Draw the line across the side front at the same height as on the centre front, so that the two meet on the princess seam."
        : "Draw a line straight across, square to the grain, {height} above the waist at the centre; equally far above it on front and back.",
      amount > 0
        ? "Cut along it. Slide the lower part straight down until the gap is {amount} all the way, and stick paper behind it."
        : "Fold {amount} out along it: the lower part slides straight up, by the same all the way.",
      !isSide && "Draw the centre straight through the change.",
      isDartCut(piece, trace.surgery) &&
        "Draw the legs of the waist dart again from its end to the ends of its mouth; fold it shut and true the waist seam over it.",
      (isSide || isCentre) && "Draw the princess seam again in one smooth curve through the change.",
      isCentre && walkingTold(altered, amount),
      !isCentre && "Draw the side seam smooth, and walk front and back side seams against each other.",
    ];
  },
};
