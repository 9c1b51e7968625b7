import { isCut, isDartCut, princessBeginsIn } from "../../core/alterations/fit/whatChanged";
import type { Piece } from "../../core/pattern/piece";
import type { FitWords } from "./fitWords";
import { walkingTold } from "./walking";

const lineFrom = (from: string): string =>
  `Draw a line from the ${from} straight across to the armhole, square to the grain, {down} straight below the end of the shoulder: equally far down on front and back.`;

const hasShoulderEnd = (piece: Piece): boolean => piece.points.shoulderTip !== undefined;

/** The line on one piece: by the end of the shoulder where the piece has it, else from the piece that has. */
function lineTold(piece: Piece): string {
  if (!hasShoulderEnd(piece))
    return "Lay the princess seam on the side front's from the shoulder down, and mark where the line on the side front begins. From that mark draw a line straight across to the centre front, square to the grain.";
  return lineFrom(piece.name === "sideFront" ? "princess seam" : "centre");
}

export const lengthAboveBust: FitWords = {
  name: "Bodice length above the bust",
  seen: "The bust line and the armhole sit too high and the armhole cuts in; or the upper chest and the armhole sag.",
  amount: "Lengthen by",
  hint: "less than 0 shortens",
  more: "Lengthen the bodice above the bust by {amount}",
  less: "Shorten the bodice above the bust by {amount}",
  steps: (altered) => {
    const { piece, amount, trace } = altered;
    if (!isCut(piece, trace.surgery))
      return [
        "Nothing is cut on this piece. Walk the princess seam against the centre front's: both are as long as they were.",
      ];
    const isPrincessCut = princessBeginsIn(piece, "shoulder");
    return [
      lineTold(piece),
      amount > 0
        ? "Cut along it. Slide the lower part straight down until the gap is {amount} all the way, and stick paper behind it."
        : "Fold {amount} out along it, by the same all the way.",
      piece.name !== "sideFront" && "Draw the centre straight through the change.",
      hasShoulderEnd(piece) && "Draw the armhole smooth through the change.",
      isDartCut(piece, trace.surgery) &&
        "Draw the legs of the dart that was cut across again from its end to its mouth, and make them equal.",
      isPrincessCut && "Draw the princess seam again in one smooth curve through the change.",
      isPrincessCut &&
        (piece.name === "centreFront"
          ? walkingTold(altered, amount)
          : "Walk the princess seam against the centre front's."),
      hasShoulderEnd(piece) &&
        (amount > 0
          ? "The armhole is {amount} deeper: lengthen the sleeve's cap, or the armhole's facing, to match."
          : "The armhole is {amount} less deep: alter the sleeve's cap, or the armhole's facing, to match."),
    ];
  },
};
