/**
 * The body measures the planner knows, by their ISO 8559-1 names (names from memory of the standard; clause numbers
 * were not checked). Ranges are wide on purpose: they catch misreadings of the tape or of the unit, never judge a body.
 */
import type { Mm } from "../units";

export const MEASURE_NAMES = [
  "bustGirth",
  "upperChestGirth",
  "underBustGirth",
  "waistGirth",
  "hipGirth",
  "height",
  "bustPointWidth",
  "sideNeckToBustPoint",
  "backWaistLength",
  "frontWaistLength",
  "neckBaseGirth",
  "shoulderLength",
  "acrossBack",
  "acrossFront",
] as const;

export type MeasureName = (typeof MEASURE_NAMES)[number];

/** One value of each measure, mm. A measure not taken is absent. */
export type Measures = Readonly<Partial<Record<MeasureName, Mm>>>;

export interface MeasureRange {
  /** Below or above these the value is impossible for an adult body and refused. */
  readonly least: Mm;
  readonly most: Mm;
  /** Outside these it is unusual: said, never blocked. */
  readonly usualLeast: Mm;
  readonly usualMost: Mm;
}
