/** The waist seam lower or higher at the centre back: a wedge goes from the basque to the bodice, or the other way. */
import type { FitDefinition, FitWords } from "../outcome/definition";
import { tiltedWaist, tiltSteps } from "./tiltSteps";
import { waistPiece } from "./waistWedge";

const STEPS = tiltSteps("centre back");

const WORDS: FitWords = {
  name: "Waist seam level, back",
  seen: "The waist seam rises towards the centre back, or dips there, though it is right at the sides.",
  amount: "Lower by",
  hint: "less than 0 raises it",
  more: {
    title: "Lower the waist seam by {amount} at the centre back",
    steps: { back: STEPS.open, backBand: STEPS.open, backBasque: STEPS.lap },
  },
  less: {
    title: "Raise the waist seam by {amount} at the centre back",
    steps: { back: STEPS.fold, backBand: STEPS.fold, backBasque: STEPS.letIn },
  },
};

export const waistDropBack: FitDefinition = {
  phase: "length",
  words: WORDS,
  range: { least: -25, most: 25 },
  applies: (pieces) => waistPiece(pieces, "back") !== null,
  apply: (pieces, amount) => tiltedWaist(pieces, "back", amount, WORDS),
};
