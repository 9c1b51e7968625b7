/** Depth of the midriff band: both halves of it cut along the middle, so that its upper and lower seams stay as they are. */
import { lengthenAll } from "./lengthenAll";
import { bandLine } from "./bandLine";
import type { FitDefinition } from "../outcome/definition";

export const bandDepth: FitDefinition = {
  range: { least: -40, most: 60 },
  madeOn: ["frontBand", "backBand"],
  applies: (pieces) => bandLine(pieces).length > 0,
  apply: (pieces, amount) => lengthenAll(pieces, bandLine(pieces), amount),
};
