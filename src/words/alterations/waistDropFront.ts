import type { FitWords } from "./fitWords";
import { tiltSteps } from "./waistTilt";

export const waistDropFront: FitWords = {
  name: "Waist seam level, front",
  seen: "The waist seam rises towards the centre front, or dips there, though it is right at the sides.",
  amount: "Lower by",
  hint: "less than 0 raises it",
  more: "Lower the waist seam by {amount} at the centre front",
  less: "Raise the waist seam by {amount} at the centre front",
  steps: tiltSteps,
};
