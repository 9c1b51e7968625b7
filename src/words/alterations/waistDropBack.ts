import type { FitWords } from "./fitWords";
import { tiltSteps } from "./waistTilt";

export const waistDropBack: FitWords = {
  name: "Waist seam level, back",
  seen: "The waist seam rises towards the centre back, or dips there, though it is right at the sides.",
  amount: "Lower by",
  hint: "less than 0 raises it",
  more: "Lower the waist seam by {amount} at the centre back",
  less: "Raise the waist seam by {amount} at the centre back",
  steps: tiltSteps,
};
