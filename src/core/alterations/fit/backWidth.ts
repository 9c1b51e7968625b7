/** Width across the back, at the armholes. */
import { must, ok } from "../../result";
import { withPiece } from "../../pattern/pieceSet";
import { hasArmhole, slideArmhole, widthSteps } from "./armholeWidth";
import type { FitDefinition } from "../outcome/definition";

export const backWidth: FitDefinition = {
  phase: "widths",
  words: {
    name: "Width across the back",
    seen: "The back pulls tight between the armholes when the arms reach forward; or upright folds hang beside the armholes.",
    amount: "Widen the whole back by",
    hint: "less than 0 narrows",
    more: { title: "Widen across the back by {amount}", steps: { back: widthSteps("back", true) } },
    less: { title: "Narrow across the back by {amount}", steps: { back: widthSteps("back", false) } },
  },
  range: { least: -30, most: 30 },
  applies: ({ back }) => hasArmhole(back) && back.points.shoulderTip !== undefined,
  apply: (pieces, amount) => {
    const { piece, trace } = slideArmhole(must(pieces.back, "back"), amount / 2);
    return ok({ pieces: withPiece(pieces, piece), traces: [trace], values: { half: Math.abs(amount) / 2 } });
  },
};
