/** What is written on the drawing of the dress. */
import type { LengthUnit } from "../core/decisions/work";
import type { Mm } from "../core/units";
import { formatLength } from "./terms/length";

/** "zip 40 cm", "opens 57.9 cm" where no zip sold is so long; nothing where neither is known. */
export function zipMarkWords(
  zip: Mm | null,
  opening: Mm | null,
  kind: "invisible" | "lapped" | undefined,
  unit: LengthUnit,
): string | null {
  if (zip === null) return opening === null ? null : `opens ${whole(opening, unit)}`;
  return `${kind === "lapped" ? "lapped zip" : "zip"} ${whole(zip, unit)}`;
}

/** Zips are sold in whole centimetres. */
const whole = (mm: Mm, unit: LengthUnit): string => formatLength(mm, unit).replace(/\.0 /u, " ");
