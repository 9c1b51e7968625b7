/** Fit alterations in words: their templates filled with the wearer's amounts. */
import type { AlterationTrace } from "../core/alterations/outcome/trace";
import type { FitAlteration, Half } from "../core/decisions/alteration";
import type { PieceName } from "../core/pattern/piece";
import type { LengthUnit } from "../core/decisions/work";
import type { Mm } from "../core/units";
import { FIT_WORDS } from "./alterations/index";
import { formatAmount, formatAsked, formatPart, formatRound, markingStep, partStep } from "./terms/length";

const HALVES: Readonly<Record<Half, string>> = { left: "left half", right: "right half" };

export const halfWords = (half: Half): string => HALVES[half];

/** Puts lengths in the place of their names in braces. */
function filled(template: string, values: Readonly<Record<string, Mm>>, unit: LengthUnit): string {
  return template.replaceAll(/\{(\w+)(:round)?\}/g, (whole, name: string, round: string | undefined) => {
    const value = values[name];
    if (value === undefined) return whole;
    if (name === "half" && unit === "in") return formatPart(Math.abs(value), unit);
    return round === undefined ? share(Math.abs(value), unit) : formatRound(Math.abs(value), unit);
  });
}

/** Halves and quarters of an amount must add up again: millimetres are said to the half. */
function share(value: Mm, unit: LengthUnit): string {
  const halves = Math.round(value * 2);
  return unit === "cm" && value < LARGE && halves % 2 === 1 ? `${halves / 2} mm` : formatAmount(value, unit);
}

/** mm. From here on half a millimetre is neither here nor there. */
const LARGE: Mm = 50;

/** A title is never one of nothing. */
const titled = (template: string, amount: Mm, unit: LengthUnit): string =>
  share(Math.abs(amount), unit) === formatAmount(0, unit)
    ? template.replaceAll("{amount}", formatAsked(Math.abs(amount), unit))
    : filled(template, { amount }, unit);

/** "Take 8 mm out across the back waist, on the left half". The positive way is said where there is but one. */
export function fitTitle({ fit, amount, half }: FitAlteration, unit: LengthUnit): string {
  const { more, less = more } = FIT_WORDS[fit];
  const template = amount < 0 ? less : more;
  return half === undefined
    ? titled(template, amount, unit)
    : `${titled(ofOneHalf(template), amount, unit)}, on the ${halfWords(half)} only`;
}

/** What is said of both sides is not true of one: "all round", "each side", "the whole back", "in all". */
const ofOneHalf = (text: string): string => text.replace(/,? (?:all round|each side|on each side|in all)$/, "");

/** The label of its amount, for both halves of the body or for one. */
export function fitAmountLabel(fit: FitAlteration["fit"], half: Half | undefined): string {
  const { amount } = FIT_WORDS[fit];
  if (half === undefined) return amount;
  return `${ofOneHalf(amount).replace(" whole ", " ")}, on that half`;
}

/** What to do on one piece, move by move; none where it is not touched. */
export function fitSteps(
  { fit, amount, half }: FitAlteration,
  name: PieceName,
  trace: Pick<AlterationTrace, "before" | "after" | "surgery" | "values">,
  unit: LengthUnit,
): readonly string[] {
  const piece = trace.before[name];
  if (piece === undefined) return [];
  return FIT_WORDS[fit]
    .steps({ piece, amount, trace })
    .filter((step) => step !== false)
    .map((step) => filled(withEdge(step, amount, half, name, unit), { ...trace.values, amount }, unit));
}

/**
 * What the side seam moves by at this piece's edge: of an amount all round a quarter, of one half's a half. Front and back are
 * told so that they add up to what the title says; where that does not part evenly the front has more.
 */
function withEdge(step: string, amount: Mm, half: Half | undefined, name: PieceName, unit: LengthUnit): string {
  const [marked, least] = [markingStep(unit), partStep(unit)];
  const told = Math.round(Math.abs(amount) / marked) * marked;
  const both = Math.round((half === undefined ? told / 2 : told) / least);
  const edge = isBackPiece(name) ? Math.floor(both / 2) : Math.ceil(both / 2);
  return edge === 0 ? step : step.replaceAll("{quarter}", formatPart(edge * least, unit));
}

const isBackPiece = (name: PieceName): boolean => name === "back" || name === "backBand" || name === "backBasque";
