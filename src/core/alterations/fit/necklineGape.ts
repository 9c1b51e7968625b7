/** Neckline gape: the front neckline stands away; a wedge to the bust point goes into the bust dart or the princess seam. */
import type { FitDefinition } from "../outcome/definition";
import { closeGape, gapePiece, MIND_THE_PINS } from "./closeGape";

const INTO_DART = [
  "Mark where the neckline comes nearest the bust point, but not at either end of it. Draw a line from there to the bust point, and draw both legs of the bust dart on to the bust point.",
  "Cut along the leg that lies nearer the neckline, as far as the bust point, and along the line from the neckline to within a thread of it.",
  "Turn the part between the two cuts about the bust point until it laps {amount} over at the neckline; tape it. The dart opens: its mouth grows by {wider}.",
  "Stick paper behind the dart. End it again as far short of the bust point as before, on the line from the bust point to the middle of its mouth.",
  "Fold the dart shut, draw the seam smooth across it and make its legs equally long.",
  "Draw the neckline again in one smooth curve, {amount} shorter than it was.",
] as const;

const INTO_PRINCESS = [
  "Mark where the neckline comes nearest to where the princess seam crosses the bust line, but not at either end of it. Draw a line from there to that crossing.",
  "Cut along the line to within a thread of the seam line there. Turn the upper part about that point until it laps {amount} over at the neckline; tape it.",
  "The upper end of the princess seam swings {wider} away from the side front; this is right: it is the fullness that the seam now takes in. The seam keeps its length: draw it smooth at the bust line, and walk it.",
  "Draw the neckline again in one smooth curve, {amount} shorter than it was.",
] as const;

const STEPS = { front: INTO_DART, centreFront: INTO_PRINCESS };

export const necklineGape: FitDefinition = {
  phase: "edges",
  words: {
    name: "Neckline gape",
    seen: "The front neckline stands away from the chest.",
    amount: "Take out on each side",
    more: {
      title: "Take {amount} out of the front neckline, each side",
      steps: STEPS,
    },
    caution: MIND_THE_PINS,
  },
  range: { least: 0, most: 30 },
  applies: (pieces) => gapePiece(pieces, "neck") !== undefined,
  apply: (pieces, amount, context) => closeGape(pieces, gapePiece(pieces, "neck"), "neck", amount, context),
};
