import type { FitWords } from "./fitWords";
import { MIND_THE_PINS } from "./pins";

export const backNeckGape: FitWords = {
  name: "Back neck gape",
  seen: "The neck seam stands away at the back of the neck.",
  amount: "Take out at the centre back, in all",
  more: "Take {amount} out of the back neck at the centre back seam",
  steps: ({ piece }) => [
    "Mark {half} in from the centre back on the neck seam.",
    "Rule a line from that mark to the centre back at the bust line. It is the new centre back above the bust line.",
    "Draw the neck square to the new centre at first and smoothly into the old line.",
    piece.centreOnFold && "The centre back, which was cut on the fold, is now a seam: leave a seam allowance there.",
  ],
  caution: MIND_THE_PINS,
};
