import type { FitWords } from "./fitWords";
import { hasPrincess, intoDart, intoPrincess } from "./gapes";
import { MIND_THE_PINS } from "./pins";

const edge = "armhole";
const mark = "Mark a place in the hollow of the armhole, where it comes nearest the bust point, not at either end.";
const mind = "; where the hollow is deep, draw it a little fuller, so that the curve stays smooth";

export const armholeGape: FitWords = {
  name: "Armhole gape",
  seen: "The front of the armhole stands away from the body.",
  amount: "Take out on each side",
  more: "Take {amount} out of the front armhole, each side",
  steps: ({ piece }) =>
    hasPrincess(piece)
      ? intoPrincess({
          edge,
          mark: `${mark} Draw a line from there to where the princess seam crosses the bust line.`,
          swingsFrom: "centre front",
          mind,
        })
      : intoDart({ edge, mark, mind }),
  caution: MIND_THE_PINS,
};
