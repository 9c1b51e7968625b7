/** The stand-in brought to what was measured on the tissue. */
import type { Pattern } from "../decisions/pattern";
import type { Tissue } from "../decisions/tissue";
import type { Nest } from "../pattern/piece";

export interface FitInputs {
  readonly tissue: Tissue;
  readonly pattern: Pattern;
  /** The stand-in as printed in one cup, all sizes. */
  readonly nest: Nest;
  /** Place of the size measured in the chart. */
  readonly sizeIndex: number;
}

export interface FittedNest {
  /** The same points and edges. */
  readonly nest: Nest;
}

export function fitToTissue({ nest }: FitInputs): FittedNest {
  return { nest: { ...nest, source: "fitted" } };
}
