/** Words of the Fit step: the headings the alterations stand under, and how they are found by what is seen. */
import type { FitAlteration } from "../core/decisions/alteration";
import { phaseOfFit, type Phase } from "../core/decisions/tradeOrder";
import type { FitName } from "../core/decisions/fitNames";
import type { LengthUnit } from "../core/decisions/work";
import { FIT_WORDS } from "./alterations/index";
import { halfWords } from "./fits";
import { formatAmount } from "./terms/length";

const HEADINGS: Readonly<Record<Phase, string>> = {
  widthsTraced: "Blend",
  length: "Length",
  bust: "Height of the bust",
  darts: "Darts",
  widths: "Widths",
  edges: "Shoulders and edges",
};

export const fitHeading = (phase: Phase): string => HEADINGS[phase];

/** Whether every word that was typed is somewhere in what is said of an alteration. */
export function isFitFound(fit: FitName, typed: string): boolean {
  const { name, seen, amount } = FIT_WORDS[fit];
  const text = `${name} ${seen} ${amount} ${fitHeading(phaseOfFit(fit))}`.toLowerCase();
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

// FitRow
export const inUse = "in use: ";
export const showItOnTheTable = "Show it on the table";
export const takeOut = "Take out";
export const leftOut = ", left out";
export const takeOutOf = (name: string): string => `Take out: ${name}`;

// FitStep
export const fit = "Fit";
export const fitAbout = "Open what a first fitting shows.";
export const whatDoYouSee = "What do you see?";
export const inUseHead = "In use";
export const notOnThisStyle = (count: number): string => `${count} not on this style`;
export const seenExamples = "folds, pulls, gapes, rides up …";

// FromMeasures
export const measuresAbout = "Take lengths and widths on Tape: here they are held against the pattern.";
export const together = "Together";
export const proposed = "Proposed";
export const notAlteredHere = "Not altered here";
export const standingTitle = "What your body always asked for";
export const why = "Why?";
