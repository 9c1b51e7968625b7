import type { FitWords } from "./fitWords";
import { hasPrincess, intoDart, intoPrincess } from "./gapes";
import { MIND_THE_PINS } from "./pins";

const edge = "neckline";

export const necklineGape: FitWords = {
  name: "Neckline gape",
  seen: "The front neckline stands away from the chest.",
  amount: "Take out on each side",
  more: "Take {amount} out of the front neckline, each side",
  steps: ({ piece }) =>
    hasPrincess(piece)
      ? intoPrincess({
          edge,
          mark: "Mark where the neckline comes nearest to where the princess seam crosses the bust line, but not at either end of it. Draw a line from there to that crossing.",
          swingsFrom: "side front",
        })
      : intoDart({ edge, mark: "Mark where the neckline comes nearest the bust point, but not at either end of it." }),
  caution: MIND_THE_PINS,
};
