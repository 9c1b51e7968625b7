import type { FitWords } from "./fitWords";

export const armholeDepth: FitWords = {
  name: "Armhole depth",
  seen: "The armhole cuts in under the arm, or gapes low and shows what is worn below.",
  amount: "Lower the underarm by",
  hint: "less than 0 raises it",
  more: "Lower the underarm by {amount}",
  less: "Raise the underarm by {amount}",
  steps: ({ amount }) => [
    amount > 0
      ? "Mark {amount} down the side seam from the underarm."
      : "Stick paper to the armhole. Carry the side seam on upwards by {amount} and mark its end.",
    "Draw the armhole from there into the old line, as hollow as before, square to the side seam at first. It joins the old line where the armhole is hollowest.",
    "Lay front and back together at the side seam: both ends are equally high, and the armhole runs across the seam without a corner.",
  ],
};
