import type { FitWords } from "./fitWords";

export const strapWidth: FitWords = {
  name: "Width of the straps",
  seen: "The straps do not hide what is worn beneath; or they are too wide for the shoulders.",
  amount: "Widen by",
  hint: "less than 0 narrows",
  more: "Make the straps {amount} wider",
  less: "Make the straps {amount} narrower",
  steps: ({ piece, amount }) =>
    piece.name === "strap"
      ? [`Draw one long edge {amount} further ${amount > 0 ? "out" : "in"}, all the way along.`]
      : [
          `Move both ends of the strap's seam ${amount > 0 ? "apart" : "together"} by {half} each, along the seam.`,
          "Draw neckline and armhole anew to its ends.",
        ],
};
