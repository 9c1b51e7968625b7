/** What is written on the drawing of the dress. */
import type { LengthUnit } from "../core/decisions/work";
import type { ZipLength } from "../core/opening/gettingIn";
import type { Mm } from "../core/units";
import { formatLength } from "./terms/length";
import { zipWords } from "./terms/zip";

/** "zip 40 cm", "opens 57.9 cm" where no zip sold is so long; nothing where neither is known. */
export function zipMarkWords(
  zip: ZipLength | null,
  opening: Mm | null,
  kind: "invisible" | "lapped" | undefined,
  unit: LengthUnit,
): string | null {
  if (zip === null) return opening === null ? null : `opens ${formatLength(opening, unit)}`;
  return `${kind === "lapped" ? "lapped zip" : "zip"} ${zipWords(zip)}`;
}
