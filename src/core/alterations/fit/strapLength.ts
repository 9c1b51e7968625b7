/** Length of the straps. */
import { fail, invariant } from "../../result";
import { acrossAt } from "../../surgery/lengthenAcross";
import { lengthenAll } from "./lengthenAll";
import { pointOf } from "../../pattern/piece";
import type { FitDefinition } from "../outcome/definition";

export const strapLength: FitDefinition = {
  range: { least: -100, most: 150 },
  madeOn: ["strap"],
  applies: ({ strap }) => strap !== undefined,
  apply: (pieces, amount) => {
    const strap = invariant(pieces.strap, "strap");
    const middle = (pointOf(strap, "strapBackInner").y + pointOf(strap, "strapFrontInner").y) / 2;
    const across = acrossAt(strap, middle);
    return across === null
      ? fail({ code: "alteration/too-much", most: 0 })
      : lengthenAll(pieces, [["strap", across]], amount);
  },
};
