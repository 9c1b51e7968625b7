/** What is done on the tissue for the width across the chest or the back: half of the whole change on a half piece. */
import type { Steps } from "./fitWords";

/** On a piece with a shoulder; on one that leans, the line cannot run straight down from it. */
export const widthSteps = (across: "chest" | "back", wider: boolean, leans = false): Steps => [
  `Draw a line from the middle of the shoulder ${leans ? "down to {inside:round} inside the innermost place of the armhole, from there straight down" : "straight down"}, and from there straight out to the armhole, where it comes out {apart} from the underarm, measured straight.`,
  `Cut along it and slide the armhole part ${wider ? "straight out until the gap down the line is {half}; stick paper behind it" : "straight in until it laps {half} over the rest; tape it down"}.`,
  "Mark the end of the shoulder where it was before, so that the shoulder seam keeps its length and its slope.",
  `Draw the armhole anew: from the old end of the shoulder to the armhole's new place across the ${across}, and smooth down to the old underarm. Side seam and bust line stay.`,
];

/** On a side front whose princess seam begins in the armhole: it has no shoulder. */
export const sideFrontSteps = (wider: boolean): Steps => [
  "Work on the side front alone: draw a line from just below the seam's top down inside the armhole, {inside:round} from it, and out again at its lower curve, {apart} from the underarm, measured straight.",
  `Cut along it and slide that part straight ${wider ? "out by {half}; stick paper behind it" : "in by {half}; tape it down"}.`,
  "Draw the armhole smooth from the top of the princess seam over the new place to the old underarm.",
];
