/** The waist seam lower or higher at the centre front: a wedge goes from the basque to the bodice, or the other way. */
import { isSeamOf } from "../../surgery/wedge";
import type { FitDefinition, FitWords } from "../outcome/definition";
import { tiltedWaist, tiltSteps } from "./tiltSteps";
import { waistPiece } from "./waistWedge";

const STEPS = tiltSteps("centre front");

const WORDS: FitWords = {
  name: "Waist seam level, front",
  seen: "The waist seam rises towards the centre front, or dips there, though it is right at the sides.",
  amount: "Lower by",
  hint: "less than 0 raises it",
  more: {
    title: "Lower the waist seam by {amount} at the centre front",
    steps: {
      front: STEPS.open,
      centreFront: STEPS.openCentre,
      sideFront: STEPS.openSide,
      frontBand: STEPS.open,
      frontBasque: STEPS.lap,
    },
  },
  less: {
    title: "Raise the waist seam by {amount} at the centre front",
    steps: {
      front: STEPS.fold,
      centreFront: STEPS.foldCentre,
      sideFront: STEPS.foldSide,
      frontBand: STEPS.fold,
      frontBasque: STEPS.letIn,
    },
  },
};

export const waistDropFront: FitDefinition = {
  phase: "length",
  words: WORDS,
  range: { least: -25, most: 25 },
  applies: (pieces) =>
    waistPiece(pieces, "front") !== null ||
    (isSeamOf(pieces.centreFront, "princess") && isSeamOf(pieces.sideFront, "princess")),
  apply: (pieces, amount) => tiltedWaist(pieces, "front", amount, WORDS),
};
