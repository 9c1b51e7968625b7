/** What is written on the drawing of the dress. */
import type { LengthUnit } from "../core/decisions/work";
import type { Mm } from "../core/units";
import { formatLength } from "./terms/length";

/** "zip 40 cm"; nothing where its length is not known. */
export const zipMarkWords = (length: Mm | null, kind: "invisible" | "lapped", unit: LengthUnit): string | null =>
  length === null ? null : `${kind === "lapped" ? "lapped zip" : "zip"} ${formatLength(length, unit)}`;
