import { isCorner } from "../../core/alterations/fit/whatChanged";
import type { FitWords } from "./fitWords";
import { ruledTold } from "./shoulderRuled";

const DOWN = "Mark {amount} down the armhole from the end of the shoulder.";
const UP = "Stick paper to the shoulder. Carry the armhole on {amount} beyond the end of the shoulder and mark there.";

export const forwardShoulder: FitWords = {
  name: "Forward shoulder",
  seen: "The shoulder seam lies behind the top of the shoulder at its outer end; the back pulls.",
  amount: "Move the seam forward by",
  hint: "less than 0 moves it back",
  more: "Move the end of the shoulder seam {amount} forward",
  less: "Move the end of the shoulder seam {amount} back",
  steps: ({ piece, amount }) => {
    const isBack = piece.name === "back";
    // What the front loses at its end the back gains.
    const isLess = isBack === amount < 0;
    return [
      ...ruledTold(piece, isLess ? DOWN : UP),
      isCorner(piece, "shoulderTip") && "Draw the armhole smooth to the new end of the shoulder.",
      isBack && "The armhole as a whole is as long as it was, to within {within:round}.",
    ];
  },
};
