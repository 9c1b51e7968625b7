/** What may go wrong at the tape. */
import type { MeasureName } from "../measures/measure";
import type { Mm } from "../units";

export type MisreadingKind =
  | "inchesAsCentimetres"
  | "centimetresAsInches"
  | "half"
  /** Another whole ten read off the tape: 10 cm (or 10 in) too much or too little. */
  | "tenOut"
  /** Two digits the other way round: 78 for 87. */
  | "digitsSwapped"
  /** The two stand in each other's place. */
  | "swapped"
  /** Waist taken lower down. */
  | "waistAtNavel"
  | "waistAtHip"
  /** Upper chest taken over the bust. */
  | "upperChestOverBust";

export interface LikelyMisreading {
  readonly kind: MisreadingKind;
  /** What the value would be without it. */
  readonly meant: Mm;
  /** With which measure it was swapped. */
  readonly other?: MeasureName;
}
