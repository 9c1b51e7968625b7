/** Gape of a cup: its wrap or sweetheart edge stands away; a wedge to the bust point goes into the dart under the bust. */
import type { FitDefinition } from "../outcome/definition";
import { closeGape, MIND_THE_PINS } from "./closeGape";
import { takesWedge } from "../../surgery/closeWedge";
const INTO_DART = [
  "Mark where the edge comes nearest the bust point, but not at either end of it. Draw a line from there to the bust point, and draw both legs of the bust dart on to the bust point.",
  "Cut along the leg that lies nearer the edge, as far as the bust point, and along the line from the edge to within a thread of it.",
  "Turn the part between the two cuts about the bust point until it laps {amount} over at the edge; tape it. The dart opens: its mouth grows by {wider}.",
  "Stick paper behind the dart. End it again as far short of the bust point as before, on the line from the bust point to the middle of its mouth.",
  "Fold the dart shut, draw the seam smooth across it and make its legs equally long.",
  "Draw the edge again in one smooth curve, {amount} shorter than it was.",
] as const;

const STEPS = { cup: INTO_DART };

export const edgeGape: FitDefinition = {
  phase: "edges",
  words: {
    name: "Gape of the wrap or sweetheart edge",
    seen: "The upper edge of the cup stands away from the bust.",
    amount: "Take out on each side",
    more: {
      title: "Take {amount} out of the wrap or sweetheart edge, each side",
      steps: STEPS,
    },
    caution: MIND_THE_PINS,
  },
  range: { least: 0, most: 30 },
  applies: (pieces) => pieces.cup !== undefined && takesWedge(pieces.cup, "neck"),
  apply: (pieces, amount, context) => closeGape(pieces, pieces.cup, "neck", amount, context),
};
