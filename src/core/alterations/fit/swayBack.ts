/** Sway back: a wedge across the back just above the waist is taken out at the centre, nothing at the side seam. */
import { must, ok } from "../../result";
import { withPiece } from "../../pattern/pieceSet";
import type { FitDefinition } from "../outcome/definition";
import { isDartCut } from "./told";
import { lowerWaist, waistPiece } from "./waistWedge";

const LINE =
  "Draw a line from the centre back, 2 cm above the waist, straight across to the side seam, 2 cm above the waist there.";
const CENTRE =
  "Draw the centre back straight again from top to waist, and the waist seam square to it for the first 2 cm.";
const DART =
  "Draw the legs of the waist dart, which was cut across, again from its end to its mouth and make them equal; keep the waist seam as long as it was.";
const KEEP = "The side seam keeps its length: walk it against the front's.";

const TAKE_OUT = [
  LINE,
  "Cut along it from the centre back to the side seam, to within a thread of the seam line; snip the allowance to it, so that the paper hinges there. Turn the lower part about that point until its edge laps {amount} over the upper one at the centre back; tape it down.",
  CENTRE,
  DART,
  KEEP,
];
const LET_IN = [
  LINE,
  "Cut along it from the centre back to the side seam, to within a thread of the seam line; snip the allowance to it, so that the paper hinges there. Turn the lower part about that point until the gap at the centre back is {amount}, and stick paper behind it.",
  CENTRE,
  DART,
  KEEP,
];

export const swayBack: FitDefinition = {
  phase: "length",
  words: {
    name: "Sway back",
    seen: "A fold lies across the back just above the waist and runs out towards the side seams.",
    amount: "Take out at the centre back",
    hint: "less than 0 lets in, for a flat back that pulls up at the waist",
    more: { title: "Take {amount} out across the back waist", steps: { back: TAKE_OUT, backBand: TAKE_OUT } },
    less: { title: "Let {amount} in across the back waist", steps: { back: LET_IN, backBand: LET_IN } },
    caution:
      "If you pin the fold on the body first, have somebody help, and take the pins out before the garment comes off.",
  },
  range: { least: -25, most: 25 },
  applies: (pieces) => waistPiece(pieces, "back") !== null,
  apply: (pieces, amount) => {
    const before = must(waistPiece(pieces, "back"), "back");
    const { piece, trace } = lowerWaist(before, -amount, "bodice");
    const all = amount > 0 ? TAKE_OUT : LET_IN;
    const steps = { [before.name]: isDartCut(before, [trace]) ? all : all.filter((step) => step !== DART) };
    return ok({ pieces: withPiece(pieces, piece), traces: [trace], values: {}, steps });
  },
};
