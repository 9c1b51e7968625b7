import type { FitWords } from "./fitWords";
import { PIN_WITH_HELP } from "./pins";

const CUT =
  "Cut along it from the centre back to the armhole, to within a thread of the seam line; snip the allowance to it, so that the paper hinges there.";

export const roundBack: FitWords = {
  name: "High round back",
  seen: "The back pulls up from the waist, the neckline stands off or drags down behind, and folds run from the blades to the armholes.",
  amount: "Let in at the centre back",
  hint: "less than 0 takes out, for a very straight back",
  more: "Let {amount} in across the shoulder blades",
  less: "Take {amount} out across the shoulder blades",
  steps: ({ amount }) => [
    "Draw a line from the centre back, {below} below the neck there, straight across to the armhole, square to the grain.",
    amount > 0
      ? `${CUT} Turn the upper part about that point until the gap at the centre back is {amount}, and stick paper behind it.`
      : `${CUT} Turn the upper part about that point until it laps {amount} over the lower one at the centre back; tape it down.`,
    "Draw the centre back in one smooth curve from the bust line to the neck, square to the neckline. The centre back is now a shaped seam: cut two, with an allowance.",
    "Neckline and shoulder keep their lengths. Draw the armhole smooth over the point that was turned about.",
  ],
  caution: PIN_WITH_HELP,
};
