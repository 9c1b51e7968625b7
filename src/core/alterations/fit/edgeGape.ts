/** Gape of a cup: its wrap or sweetheart edge stands away; a wedge to the bust point goes into the dart under the bust. */
import { takesWedge } from "../../surgery/closeWedge";
import { closeGape } from "./closeGape";
import type { FitDefinition } from "../outcome/definition";

export const edgeGape: FitDefinition = {
  range: { least: 0, most: 30 },
  madeOn: ["cup"],
  applies: (pieces) => pieces.cup !== undefined && takesWedge(pieces.cup, "neck"),
  apply: (pieces, amount, context) => closeGape(pieces, pieces.cup, "neck", amount, context),
};
