/** What she measured on the printed tissue, along the line of one size. */
import type { PieceName } from "../pattern/piece";
import type { Mm } from "../units";

/**
 * The places to lay a tape, each on the stitch line. `…Step`: between the line measured and the line of the next size up,
 * straight across.
 */
export const TISSUE_LENGTHS = [
  "waistDartMouth",
  "waistDartLength",
  "waistDartFromCentre",
  "bustDartMouth",
  "bustDartLength",
  "bustDartFromUnderarm",
  "bustPointFromCentre",
  "bustPointFromSideNeck",
  "centreLength",
  "sideNeckToWaist",
  "sideLength",
  "shoulderLength",
  "neckWidth",
  "neckDepth",
  "acrossWidth",
  "bustWidth",
  "waistWidth",
  "hipWidth",
  "underBustWidth",
  "bustStep",
  "waistStep",
  "hipStep",
  "waistDartMouthNext",
] as const;
export type TissueLength = (typeof TISSUE_LENGTHS)[number];

export type TissueLengths = Readonly<Partial<Record<TissueLength, Mm>>>;

export interface Tissue {
  /** Label of the size whose line was measured. */
  readonly size: string;
  readonly pieces: Readonly<Partial<Record<PieceName, TissueLengths>>>;
}
