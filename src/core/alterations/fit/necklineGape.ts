/** Neckline gape: the front neckline stands away; a wedge to the bust point goes into the bust dart or the princess seam. */
import type { FitDefinition } from "../outcome/definition";
import { closeGape, gapePiece } from "./closeGape";

export const necklineGape: FitDefinition = {
  range: { least: 0, most: 30 },
  madeOn: ["front", "centreFront"],
  applies: (pieces) => gapePiece(pieces, "neck") !== undefined,
  apply: (pieces, amount, context) => closeGape(pieces, gapePiece(pieces, "neck"), "neck", amount, context),
};
