/** What stands where the pattern says nothing of a length. */
import type { PrintedLength } from "../core/decisions/pattern";
import type { LengthUnit } from "../core/decisions/work";
import type { Mm } from "../core/units";
import { formatLength } from "./terms/length";

/** "our draft’s figure: 40.4 to 44.3 cm, by size". */
export function draftHint(
  measure: PrintedLength,
  figures: { readonly least: Mm; readonly most: Mm } | null,
  unit: LengthUnit,
): string {
  if (measure === "height") return "not said: height is not compared";
  if (measure === "underBustGirth") return "our draft’s figure: its midriff band, where there is one";
  if (figures === null) return "our draft’s figure";
  const [least, most] = [figures.least, figures.most].map((mm) => formatLength(mm, unit));
  return least === most
    ? `our draft’s figure: ${most}`
    : `our draft’s figure: ${least?.replace(/ \w+$/, "")} to ${most}, by size`;
}
