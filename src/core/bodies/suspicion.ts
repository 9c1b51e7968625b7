/** Measures that lie far out, given all the others: to be taken again, never a judgement of a body. */
import type { MeasureName } from "../measures/measure";
import type { MeasuredBody } from "../measures/tape";
import type { Mm } from "../units";

export type SlipKind =
  | "inchesAsCentimetres"
  | "centimetresAsInches"
  | "half"
  /** Another whole ten read off the tape: 10 cm too much or too little. */
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

export interface LikelySlip {
  readonly kind: SlipKind;
  /** What the value would be without it. */
  readonly meant: Mm;
  /** With which measure it was swapped. */
  readonly other?: MeasureName;
}

export interface Suspicion {
  readonly measure: MeasureName;
  readonly value: Mm;
  /** What the other measures lead one to expect, and between what nine of ten lie. */
  readonly expected: Mm;
  readonly least: Mm;
  readonly most: Mm;
  /** The most likely mistake, where one explains it well. */
  readonly slip: LikelySlip | null;
  /** Taken more than once already, with readings that agree: said more softly. */
  readonly takenAgain: boolean;
}

/** What to measure again, the most doubtful first. */
export function suspicionsOf(_body: MeasuredBody, _age?: number): readonly Suspicion[] {
  return [];
}
