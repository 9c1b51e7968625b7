/** Dart surgery in words: what is asked for. */
import type { DartSurgery, LengthUnit } from "../core/plan/work";
import { formatAmount } from "./length";
import { dartWords } from "./names";

export function dartSurgeryTitle(alteration: DartSurgery, unit: LengthUnit): string {
  const dart = dartWords(alteration.dart.dart);
  switch (alteration.kind) {
    case "dartPivot":
      return `Move the ${dart} to another seam`;
    case "dartSplit":
      return `Split the ${dart}`;
    case "dartGather":
      return `Gather the ${dart}`;
    case "dartLegs":
      return `Bow the legs of the ${dart} by ${formatAmount(Math.abs(alteration.bow), unit)}`;
    case "dartSeam":
      return `Join the ${dart} and the waist dart into a seam`;
  }
}
