/** What her body asked for in other garments, how she likes them, and bases to begin from, in words. */
import type { LengthUnit } from "../core/decisions/work";
import type { LearntDartEnd, LearntEase } from "../core/standing/learnt";
import type { Standing, StandingOffer } from "../core/standing/standing";
import { fitTitle } from "./fits";
import { formatAmount } from "./terms/length";
import { dayWords } from "./terms/days";
import { dartRefWords } from "./terms/names";
import { plural } from "./terms/language";

export const STANDING_WORDS = {
  title: "What your body always asked for",
  put: "Take",
  putAll: "Take all",
  leave: "Not here",
  again: "Offer it again",
  anew: "Lengths and widths are made anew, against this pattern’s own: see “From your measures”.",
  blamedTitle: "Left with the pattern they were for",
  likesTitle: "How you like your garments",
  forgetEase: "Forget the ease",
  forgetEnds: "Forget the darts’ ends",
  forgot: "Forgotten. Garments you keep from now on are learnt from.",
  want: "Want this ease here",
  notKept: "This could not be kept: it will be learnt from again when the page is next opened.",
} as const;

export const BASE_WORDS = {
  title: "Begin from a base",
  looking: "Looking through your works…",
  none: "None yet. Close a trial with “It fits, keep it”, and keep it as your base.",
  note: "The same pattern, body and alterations, for another dress: its trials stay where they are.",
} as const;

/** "Take 12 mm out across the back waist, on the left half only". */
export const standingTitle = ({ fit, half, amount }: Standing, unit: LengthUnit): string =>
  fitTitle({ kind: "fit", id: "", fit, amount, ...(half === undefined ? {} : { half }) }, unit);

const garmentsWords = (count: number): string => plural(count, { one: "1 garment", other: `${count} garments` });

/** "Right in 2 of 3 garments, of 2 patterns; from 10 mm to 14 mm." */
export function standingSentence({ garments, patterns, of, least, most }: Standing, unit: LengthUnit): string {
  const where =
    of === 1
      ? "Right in the one garment you kept"
      : garments === of
        ? `Right in all ${of} garments you kept`
        : `Right in ${garments} of ${garmentsWords(of)} you kept`;
  const several = plural(patterns, { one: "", other: `, of ${patterns} patterns` });
  const range =
    least === most ? "" : `; from ${formatAmount(least, unit)} to ${formatAmount(most, unit)}, the mean is taken`;
  return `${where}${several}${range}.`;
}

const STATES: Readonly<Record<Exclude<StandingOffer["state"], "offered">, string>> = {
  stands: "In the ledger already.",
  measured: "Your measures ask for it: see above.",
  left: "Left out of this garment.",
  notOnPieces: "Nothing on these pieces to make it on.",
  notMade: "It cannot be made on these pieces.",
};

export const offerStateWords = (state: Exclude<StandingOffer["state"], "offered">): string => STATES[state];

/** "Ease at the bust: 64 mm, in 2 garments." */
export const easeSentence = ({ level, ease, garments }: LearntEase, unit: LengthUnit): string =>
  `Ease at the ${level}: ${formatAmount(ease, unit)}, in ${garmentsWords(garments)}.`;

/** "Front waist dart: ends 25 mm short of the bust point, in 2 garments." */
export function dartEndSentence({ dart, along, across, garments }: LearntDartEnd, unit: LengthUnit): string {
  const short = `${formatAmount(Math.abs(along), unit)} ${along < 0 ? "past" : "short of"} the bust point`;
  const beside = Math.abs(across) < 1 ? "" : `, ${formatAmount(Math.abs(across), unit)} beside it`;
  const name = dartRefWords(dart);
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}: ends ${short}${beside}, in ${garmentsWords(garments)}.`;
}

/** "Blue dress, trial of 25 November 2026, for Ada". */
export const baseWords = (name: string, day: string | undefined, wearer: string | undefined): string =>
  [
    name,
    ...(day === undefined ? [] : [`trial of ${dayWords(day)}`]),
    ...(wearer === undefined || wearer.trim() === "" ? [] : [`for ${wearer.trim()}`]),
  ].join(", ");

/** "Blue dress 2": the first such name that no work has. */
export function nextName(name: string, taken: readonly string[]): string {
  const stem = name.replace(/ \d{1,3}$/, "").slice(0, 190);
  for (let number = 2; ; number += 1) {
    const next = `${stem} ${number}`;
    if (!taken.includes(next)) return next;
  }
}

export const begunFromSentence = (name: string, day: string | undefined): string =>
  `Begun from the base “${baseWords(name, day, undefined)}”.`;

// StandingFold
export const inTheLedger = (text: string): string => `In the ledger: ${text}`;
