import type { FitWords } from "./fitWords";

export const strapLength: FitWords = {
  name: "Length of the straps",
  seen: "The straps cut into the shoulders and pull the upper edge up; or they slip, and the upper edge gapes.",
  amount: "Lengthen by",
  hint: "less than 0 shortens",
  more: "Lengthen the straps by {amount}",
  less: "Shorten the straps by {amount}",
  steps: ({ amount }) => [
    "Draw a line straight across the strap half-way along.",
    amount > 0
      ? "Cut along it, part the two halves by {amount}, keep the edges in line and stick paper behind."
      : "Fold {amount} out along it, edges in line.",
  ],
};
