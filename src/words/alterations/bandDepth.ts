import type { FitWords } from "./fitWords";

export const bandDepth: FitWords = {
  name: "Depth of the midriff band",
  seen: "The band ends above the waist, or folds across because it is too deep between bust and waist.",
  amount: "Deepen by",
  hint: "less than 0 makes it shallower",
  more: "Make the midriff band {amount} deeper",
  less: "Make the midriff band {amount} shallower",
  steps: ({ amount }) => [
    "Draw a line along the middle of the band, from half-way down the centre to half-way down the side seam.",
    amount > 0
      ? "Cut along it. Slide the lower part straight down until the gap is {amount} all the way, and stick paper behind it."
      : "Fold {amount} out along it, by the same all the way.",
    "Draw the centre straight and the side seam smooth through the change. The seams to the upper part and at the waist stay as they are.",
    "Walk the side seams of both bands against each other.",
  ],
};
