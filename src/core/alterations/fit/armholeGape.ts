/** Armhole gape: the front armhole stands away; a wedge to the bust point goes into the bust dart or the princess seam. */
import type { FitDefinition } from "../outcome/definition";
import { closeGape, gapeCup, gapePiece } from "./closeGape";

export const armholeGape: FitDefinition = {
  range: { least: 0, most: 30 },
  madeOn: ["front", "sideFront", "cup"],
  applies: (pieces) => (gapePiece(pieces, "armhole") ?? gapeCup(pieces)) !== undefined,
  apply: (pieces, amount, context) =>
    closeGape(pieces, gapePiece(pieces, "armhole") ?? gapeCup(pieces), "armhole", amount, context),
};
