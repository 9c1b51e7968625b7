import type { FitWords } from "./fitWords";

export const shoulderWidth: FitWords = {
  name: "Shoulder width",
  seen: "The armhole seam sits inside the shoulder bone, or drops off the shoulder.",
  amount: "Make the shoulder longer by",
  hint: "less than 0 makes it shorter",
  more: "Make the shoulder {amount} longer",
  less: "Make the shoulder {amount} shorter",
  steps: ({ amount }) => [
    amount > 0
      ? "Stick paper to the armhole. Carry the shoulder line straight on by {amount} and mark its new end."
      : "Mark the new end of the shoulder {amount} in from the armhole, on the shoulder line.",
    "Draw the armhole from that mark, square to the shoulder at first, smoothly into the old line where the armhole is hollowest.",
  ],
};
