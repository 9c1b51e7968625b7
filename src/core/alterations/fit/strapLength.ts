/** Length of the straps. */
import { fail, must } from "../../result";
import { acrossAt } from "../../surgery/lengthenAcross";
import { lengthenAll } from "./lengthenAll";
import { pointOf } from "../../pattern/piece";
import type { FitDefinition } from "../outcome/definition";

const LINE = "Draw a line straight across the strap half-way along.";

export const strapLength: FitDefinition = {
  phase: "edges",
  words: {
    name: "Length of the straps",
    seen: "The straps cut into the shoulders and pull the upper edge up; or they slip, and the upper edge gapes.",
    amount: "Lengthen by",
    hint: "less than 0 shortens",
    more: {
      title: "Lengthen the straps by {amount}",
      steps: {
        strap: [LINE, "Cut along it, part the two halves by {amount}, keep the edges in line and stick paper behind."],
      },
    },
    less: {
      title: "Shorten the straps by {amount}",
      steps: { strap: [LINE, "Fold {amount} out along it, edges in line."] },
    },
  },
  range: { least: -100, most: 150 },
  applies: ({ strap }) => strap !== undefined,
  apply: (pieces, amount) => {
    const strap = must(pieces.strap, "strap");
    const middle = (pointOf(strap, "strapBackInner").y + pointOf(strap, "strapFrontInner").y) / 2;
    const across = acrossAt(strap, middle);
    return across === null
      ? fail({ code: "slip/too-much", most: 0 })
      : lengthenAll(pieces, [["strap", across]], amount);
  },
};
