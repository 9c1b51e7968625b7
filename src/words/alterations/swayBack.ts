import { isDartCut } from "../../core/alterations/fit/whatChanged";
import type { FitWords } from "./fitWords";
import { PIN_WITH_HELP } from "./pins";

const CUT =
  "Cut along it from the centre back to the side seam, to within a thread of the seam line; snip the allowance to it, so that the paper hinges there.";

export const swayBack: FitWords = {
  name: "Sway back",
  seen: "A fold lies across the back just above the waist and runs out towards the side seams.",
  amount: "Take out at the centre back",
  hint: "less than 0 lets in, for a flat back that pulls up at the waist",
  more: "Take {amount} out across the back waist",
  less: "Let {amount} in across the back waist",
  steps: ({ piece, amount, trace }) => [
    "Draw a line from the centre back, {above:round} above the waist, straight across to the side seam, {aboveAtSide:round} above the waist there.",
    amount > 0
      ? `${CUT} Turn the lower part about that point until its edge laps {amount} over the upper one at the centre back; tape it down.`
      : `${CUT} Turn the lower part about that point until the gap at the centre back is {amount}, and stick paper behind it.`,
    "Draw the centre back straight again from top to waist, and the waist seam square to it for the first {square:round}.",
    isDartCut(piece, trace.surgery) &&
      "Draw the legs of the waist dart, which was cut across, again from its end to its mouth and make them equal; keep the waist seam as long as it was.",
    "The side seam keeps its length: walk it against the front's.",
  ],
  caution: PIN_WITH_HELP,
};
