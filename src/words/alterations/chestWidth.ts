import { sideFrontSteps, widthSteps } from "./acrossWidth";
import type { FitWords } from "./fitWords";

export const chestWidth: FitWords = {
  name: "Width across the chest",
  seen: "The front pulls between the armholes above the bust; or upright folds hang beside the armholes in front.",
  amount: "Widen the whole chest by",
  hint: "less than 0 narrows",
  more: "Widen across the chest by {amount}",
  less: "Narrow across the chest by {amount}",
  steps: ({ piece, amount }) =>
    piece.points.shoulderTip === undefined
      ? sideFrontSteps(amount > 0)
      : widthSteps("chest", amount > 0, piece.name === "sideFront"),
};
