import type { FitWords } from "./fitWords";

export const sideSeamHip: FitWords = {
  name: "Side seams at the hip",
  seen: "The basque is tight over the hip and rides up, or stands away from it.",
  amount: "Let the hip out by, all round",
  hint: "less than 0 takes it in",
  more: "Let the side seams out at the hip, {amount} all round",
  less: "Take the side seams in at the hip, {amount} all round",
  steps: ({ amount }) => [
    amount > 0
      ? "Stick paper to the side. Carry the hip line on by {quarter} beyond the side seam and mark there."
      : "Mark {quarter} in from the side seam on the hip line.",
    "Do the same at the hem.",
    "Draw the side seam from the waist, where it stays, smoothly through the mark and on to the hem.",
    "Lay front and back together at the side: the seams are equally long.",
  ],
};
