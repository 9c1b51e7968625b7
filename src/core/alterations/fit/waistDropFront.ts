/** The waist seam lower or higher at the centre front: a wedge goes from the basque to the bodice, or the other way. */
import { ok } from "../../result";
import { isSeamOf } from "../../surgery/wedge";
import type { FitDefinition } from "../outcome/definition";
import { tiltWaist, waistPiece } from "./waistWedge";

export const waistDropFront: FitDefinition = {
  range: { least: -25, most: 25 },
  madeOn: ["front", "centreFront", "sideFront", "frontBand", "frontBasque"],
  applies: (pieces) =>
    waistPiece(pieces, "front") !== null ||
    (isSeamOf(pieces.centreFront, "princess") && isSeamOf(pieces.sideFront, "princess")),
  apply: (pieces, amount) => ok(tiltWaist(pieces, "front", amount)),
};
