/** Fit alterations in words: their templates filled with the wearer's amounts. */
import type { FitAlteration, Half } from "../core/decisions/alteration";
import type { SlipTrace } from "../core/alterations/outcome/trace";
import { fitOf } from "../core/alterations/fit/index";
import type { FitWay } from "../core/alterations/outcome/definition";
import type { PieceName } from "../core/pattern/piece";
import type { LengthUnit } from "../core/decisions/work";
import type { Mm } from "../core/units";
import { formatAmount } from "./length";

const HALVES: Readonly<Record<Half, string>> = { left: "left half", right: "right half" };

export const halfWords = (half: Half): string => HALVES[half];

/** What is said for the sign of an amount; the positive way where there is but one. */
function wayOf({ fit, amount }: FitAlteration): FitWay {
  const { more, less } = fitOf(fit).words;
  return amount < 0 && less !== undefined ? less : more;
}

/** Puts amounts in the place of their names in braces. */
function filled(template: string, values: Readonly<Record<string, Mm>>, unit: LengthUnit): string {
  return template.replaceAll(/\{(\w+)\}/g, (whole, name: string) => {
    const value = values[name];
    return value === undefined ? whole : share(Math.abs(value), unit);
  });
}

/** Halves and quarters of an amount must add up again: millimetres are said to the half. */
function share(value: Mm, unit: LengthUnit): string {
  const halves = Math.round(value * 2);
  return unit === "cm" && value < LARGE && halves % 2 === 1 ? `${halves / 2} mm` : formatAmount(value, unit);
}

/** mm. From here on half a millimetre is neither here nor there. */
const LARGE: Mm = 50;

/** "Take 8 mm out across the back waist, on the left half". */
export function fitTitle(alteration: FitAlteration, unit: LengthUnit): string {
  const title = filled(wayOf(alteration).title, { amount: alteration.amount }, unit);
  return alteration.half === undefined ? title : `${title}, on the ${halfWords(alteration.half)} only`;
}

/** What to do on one piece, move by move; none where it is not touched. */
export function fitSteps(
  alteration: FitAlteration,
  piece: PieceName,
  { values, steps: own }: Pick<SlipTrace, "values" | "steps">,
  unit: LengthUnit,
): readonly string[] {
  const steps = (own ?? wayOf(alteration).steps)[piece] ?? [];
  return steps.map((step) => filled(step, { ...values, amount: alteration.amount }, unit));
}
