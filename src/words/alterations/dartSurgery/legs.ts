/** The legs of a dart bowed. */
import type { DartLegsAlteration } from "../../../core/decisions/alteration";
import type { LengthUnit } from "../../../core/decisions/work";
import { formatAmount } from "../../terms/length";
import { dartWords } from "../../terms/names";
import type { Told } from "./saidOfDart";

export const legsTitle = ({ dart, bow }: DartLegsAlteration, unit: LengthUnit): string =>
  `Bow the legs of the ${dartWords(dart.dart)} ${bow < 0 ? "out " : ""}by ${formatAmount(Math.abs(bow), unit)}`;

export function legSteps({ bow }: DartLegsAlteration, told: Told): readonly string[] {
  const words = dartWords(told.dart.name);
  return [
    `Mark the middle of each leg of the ${words}. Square to the leg, set off ${told.amount("bow")} ${bow > 0 ? "into" : "out of"} the dart.`,
    "Draw each leg as one smooth curve from the mouth through that mark to the end of the dart, without an S in it.",
    "Trace one leg through onto the other, so that both are alike and sew together.",
  ];
}
