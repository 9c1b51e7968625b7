import type { FitWords } from "./fitWords";
import { intoDart } from "./gapes";
import { MIND_THE_PINS } from "./pins";

export const edgeGape: FitWords = {
  name: "Gape of the wrap or sweetheart edge",
  seen: "The upper edge of the cup stands away from the bust.",
  amount: "Take out on each side",
  more: "Take {amount} out of the wrap or sweetheart edge, each side",
  steps: () =>
    intoDart({
      edge: "edge",
      mark: "Mark where the edge comes nearest the bust point, but not at either end of it.",
    }),
  caution: MIND_THE_PINS,
};
