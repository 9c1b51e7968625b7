/** Armhole gape: the front armhole stands away; a wedge to the bust point goes into the bust dart or the princess seam. */
import type { FitDefinition } from "../outcome/definition";
import { closeGape, gapeCup, gapePiece, MIND_THE_PINS } from "./closeGape";

const INTO_DART = [
  "Mark a place in the hollow of the armhole, where it comes nearest the bust point, not at either end. Draw a line from there to the bust point, and draw both legs of the bust dart on to the bust point.",
  "Cut along the leg that lies nearer the armhole, as far as the bust point, and along the line from the armhole to within a thread of it.",
  "Turn the part between the two cuts about the bust point until it laps {amount} over at the armhole; tape it. The dart opens: its mouth grows by {wider}.",
  "Stick paper behind the dart. End it again as far short of the bust point as before, on the line from the bust point to the middle of its mouth.",
  "Fold the dart shut, draw the seam smooth across it and make its legs equally long.",
  "Draw the armhole again in one smooth curve, {amount} shorter than it was; where the hollow is deep, draw it a little fuller, so that the curve stays smooth.",
] as const;

const INTO_PRINCESS = [
  "Mark a place in the hollow of the armhole, where it comes nearest the bust point, not at either end. Draw a line from there to where the princess seam crosses the bust line.",
  "Cut along the line to within a thread of the seam line there. Turn the upper part about that point until it laps {amount} over at the armhole; tape it.",
  "The upper end of the princess seam swings {wider} away from the centre front; this is right: it is the fullness that the seam now takes in. The seam keeps its length: draw it smooth at the bust line, and walk it.",
  "Draw the armhole again in one smooth curve, {amount} shorter than it was; where the hollow is deep, draw it a little fuller, so that the curve stays smooth.",
] as const;

const STEPS = { front: INTO_DART, cup: INTO_DART, sideFront: INTO_PRINCESS };

export const armholeGape: FitDefinition = {
  phase: "edges",
  words: {
    name: "Armhole gape",
    seen: "The front of the armhole stands away from the body.",
    amount: "Take out on each side",
    more: {
      title: "Take {amount} out of the front armhole, each side",
      steps: STEPS,
    },
    caution: MIND_THE_PINS,
  },
  range: { least: 0, most: 30 },
  applies: (pieces) => (gapePiece(pieces, "armhole") ?? gapeCup(pieces)) !== undefined,
  apply: (pieces, amount, context) =>
    closeGape(pieces, gapePiece(pieces, "armhole") ?? gapeCup(pieces), "armhole", amount, context),
};
