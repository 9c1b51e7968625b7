import { widthSteps } from "./acrossWidth";
import type { FitWords } from "./fitWords";

export const backWidth: FitWords = {
  name: "Width across the back",
  seen: "The back pulls tight between the armholes when the arms reach forward; or upright folds hang beside the armholes.",
  amount: "Widen the whole back by",
  hint: "less than 0 narrows",
  more: "Widen across the back by {amount}",
  less: "Narrow across the back by {amount}",
  steps: ({ amount }) => widthSteps("back", amount > 0),
};
