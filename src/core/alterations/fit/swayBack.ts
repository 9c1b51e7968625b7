/** Sway back: a wedge across the back just above the waist is taken out at the centre, nothing at the side seam. */
import { invariant, ok } from "../../result";
import { withPiece } from "../../pattern/pieceSet";
import type { FitDefinition } from "../outcome/definition";
import { lowerWaist, valuesOf, waistPiece } from "./waistWedge";

export const swayBack: FitDefinition = {
  range: { least: -25, most: 25 },
  madeOn: ["back", "backBand"],
  applies: (pieces) => waistPiece(pieces, "back") !== null,
  apply: (pieces, amount) => {
    const { piece, trace, fromWaist } = lowerWaist(invariant(waistPiece(pieces, "back"), "back"), -amount, "bodice");
    return ok({ pieces: withPiece(pieces, piece), traces: [trace], values: valuesOf(fromWaist) });
  },
};
