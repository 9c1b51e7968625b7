/** The waist seam lower or higher at the centre back: a wedge goes from the basque to the bodice, or the other way. */
import { ok } from "../../result";
import type { FitDefinition } from "../outcome/definition";
import { tiltWaist, waistPiece } from "./waistWedge";

export const waistDropBack: FitDefinition = {
  range: { least: -25, most: 25 },
  madeOn: ["back", "backBand", "backBasque"],
  applies: (pieces) => waistPiece(pieces, "back") !== null,
  apply: (pieces, amount) => ok(tiltWaist(pieces, "back", amount)),
};
