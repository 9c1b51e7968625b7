/** Words of the Fit step: the headings the alterations stand under, and how they are found by what is seen. */
import { fitOf, type FitName } from "../core/alterations/fit/index";
import type { SlipPhase } from "../core/plan/plan";
import type { FitAlteration, LengthUnit } from "../core/plan/work";
import { FIT_WORDS } from "./alterations/index";
import { halfWords } from "./fits";
import { formatAmount } from "./length";

const HEADINGS: Readonly<Record<SlipPhase, string>> = {
  widthsTraced: "Blend",
  length: "Length",
  bust: "Height of the bust",
  darts: "Darts",
  widths: "Widths",
  edges: "Shoulders and edges",
};

export const fitHeading = (phase: SlipPhase): string => HEADINGS[phase];

/** Whether every word that was typed is somewhere in what is said of an alteration. */
export function isFitFound(fit: FitName, typed: string): boolean {
  const { name, seen, amount } = FIT_WORDS[fit];
  const text = `${name} ${seen} ${amount} ${fitHeading(fitOf(fit).phase)}`.toLowerCase();
  return typed
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}

/** "8 mm", "8 mm left half", "8 mm left half, 5 mm right half". */
export const fitUse = (alterations: readonly FitAlteration[], unit: LengthUnit): string =>
  alterations
    .map(({ amount, half }) =>
      half === undefined ? formatAmount(amount, unit) : `${formatAmount(amount, unit)} ${halfWords(half)}`,
    )
    .join(", ");

export const fitCount = (found: number): string =>
  found === 0 ? "Nothing here fits that. Try another word, such as fold, pull, gape or strap." : `${found} found`;
