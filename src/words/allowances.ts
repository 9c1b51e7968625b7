/** Allowances in words. */
import type { LengthUnit } from "../core/decisions/work";
import type { Mm } from "../core/units";
import { formatAmount, formatLength } from "./terms/length";

/** In inches the exact millimetres too: 15 mm is what the trade calls 5/8 in, and is a little less. */
export const allowanceAmount = (mm: Mm, unit: LengthUnit): string =>
  unit === "cm" ? formatAmount(mm, unit) : `${Math.round(mm * 10) / 10} mm (about ${formatLength(mm, unit)})`;
