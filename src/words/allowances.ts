/** Allowances in words. */
import type { LengthUnit } from "../core/decisions/work";
import type { Mm } from "../core/units";
import { KEPT_TO } from "../core/tolerance";
import { formatAmount, formatPart, markingStep } from "./terms/length";

/**
 * As exact as the tape marks it: in inches to sixteenths where it is one, as entries keep it, else to thirty-seconds. 15 mm, which
 * the trade calls 5/8 in, is a little less.
 */
export const allowanceAmount = (mm: Mm, unit: LengthUnit): string =>
  unit === "cm" || Math.abs(mm - Math.round(mm / markingStep(unit)) * markingStep(unit)) <= KEPT_TO
    ? formatAmount(mm, unit)
    : `about ${formatPart(mm, unit)}`;
