/**
 * What the tape step says: guesses as guesses, doubts about a reading as questions to the tape, several readings, days, and
 * whose bodies the guesses come from. Bodies are spoken of neutrally; it is always the tape or the entry that is in question.
 */
import type { Estimate, SurveyStanding } from "../core/bodies/estimate";
import type { LikelySlip, Suspicion } from "../core/bodies/suspicion";
import { SURVEY } from "../core/bodies/surveyModel";
import type { TapeDifference } from "../core/measures/compareTapes";
import type { MeasureName } from "../core/measures/measure";
import { TAPE_SPREAD } from "../core/measures/repeatability";
import type { Measured } from "../core/measures/tape";
import type { LengthUnit } from "../core/plan/work";
import { MM_PER_CM, MM_PER_INCH, type Mm } from "../core/units";
import { formatLength, formatSigned } from "./length";
import { measureWords } from "./measures";

/** A guess is told no finer than this: half a centimetre, a quarter of an inch. */
const GUESS_STEP = { cm: 5, in: MM_PER_INCH / 4 } as const;

const roughly = (mm: Mm, unit: LengthUnit): string => formatLength(Math.round(mm / GUESS_STEP[unit]) * GUESS_STEP[unit], unit);
const without = (text: string): string => text.replace(/ (cm|in)$/, "");

/** "probably 27.0 cm, between 24.5 and 29.5". */
export const guessWords = ({ value, least, most }: Estimate, unit: LengthUnit): string =>
  `probably ${roughly(value, unit)}, between ${without(roughly(least, unit))} and ${without(roughly(most, unit))}`;

const SOURCES: Readonly<Record<Estimate["from"], string>> = {
  survey: "from the body survey",
  bridged: "from the body survey, whose tape ran a little differently",
  proportion: "by a trade proportion",
};
export const guessSource = ({ from }: Estimate): string => SOURCES[from];

/** Two readings of the same hand and tape lie within so many spreads, 95 times in 100 (1.96 √2). */
const REPEATS = 2.77;

/** What several readings come to; null for one. */
export function readingsSentence(name: MeasureName, { value, readings }: Pick<Measured, "value" | "readings">, unit: LengthUnit): string | null {
  if (readings.length < 2) return null;
  const apart = Math.max(...readings) - Math.min(...readings);
  const counts = `Their mean counts: ${formatLength(value, unit)}.`;
  if (apart > REPEATS * TAPE_SPREAD[name]) {
    return `These readings are ${formatLength(apart, unit)} apart, more than a tape usually does. ${readings.length < 3 ? "Take it a third time." : "Take out the one that went wrong."} ${counts}`;
  }
  return apart < 0.5 ? `They agree. ${counts}` : `They are ${formatLength(apart, unit)} apart, as a tape does. ${counts}`;
}

/** What to take again, and why. */
export function doubtSentence({ measure, value, least, most, takenAgain }: Suspicion, unit: LengthUnit): string {
  const short = measureWords(measure).short;
  const expected = `${without(roughly(least, unit))} to ${roughly(most, unit)}`;
  if (takenAgain) return `Taken more than once, so it stands. Beside your other measures ${expected} would be more usual.`;
  const how = value > most ? "more" : value < least ? "less" : "other";
  return `Measure the ${short} again: ${formatLength(value, unit)} is ${how} than your other measures lead one to expect (${expected}). The tape may have slipped; or one of the others is out.`;
}

/** The mistake that would explain it, as a question. */
export function slipQuestion({ measure, value }: Suspicion, slip: LikelySlip, unit: LengthUnit): string {
  const meant = formatLength(slip.meant, unit);
  const other = slip.other === undefined ? "" : measureWords(slip.other).short;
  switch (slip.kind) {
    case "inchesAsCentimetres":
      return `Were these inches? ${plain(value / MM_PER_CM)} in is ${meant}.`;
    case "centimetresAsInches":
      return `Were these centimetres? ${plain(value / MM_PER_INCH)} cm is ${meant}.`;
    case "half":
      return `Is it half of the girth? The whole would be ${meant}.`;
    case "tenOut":
      return `Was another ten read off the tape? That would be ${meant}.`;
    case "digitsSwapped":
      return `Are two digits the other way round? That would be ${meant}.`;
    case "swapped":
      return `Are ${measureWords(measure).short} and ${other} in each other’s place?`;
    case "waistAtNavel":
      return "Was the waist taken lower down, at the navel? Tie a thread: it settles at the waist.";
    case "waistAtHip":
      return "Was the tape round the hip? Tie a thread: it settles at the waist.";
    case "upperChestOverBust":
      return "Did the tape run over the bust? It goes round above it, high under the arms.";
  }
}

const plain = (value: number): string => String(Number(value.toFixed(2)));

/** What setting the slip right is called; null where only the tape can. */
export function slipRemedy(slip: LikelySlip, unit: LengthUnit): string | null {
  switch (slip.kind) {
    case "swapped":
      return "Swap them";
    case "waistAtNavel":
    case "waistAtHip":
    case "upperChestOverBust":
      return null;
    default:
      return `It is ${formatLength(slip.meant, unit)}`;
  }
}

const MONTHS = ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"];

/** "3 October 2026"; "a day not said". */
export function dayWords(day: string | undefined): string {
  const [year, month, date] = day?.split("-") ?? [];
  return year === undefined || month === undefined || date === undefined ? "a day not said" : `${Number(date)} ${MONTHS[Number(month) - 1] ?? month} ${year}`;
}

export const differenceWords = ({ now, before, changed }: TapeDifference, unit: LengthUnit): readonly [difference: string, verdict: string] => [
  formatSigned(now - before, unit),
  changed ? "changed" : "as a tape does",
];

/** Whose bodies the guesses come from, and what they cannot tell. */
export const surveyWords = (unit: LengthUnit): readonly string[] => [
  `${SURVEY.women} women of the US Army, ${SURVEY.ages.least} to ${SURVEY.ages.most} years old, measured in 1987 and 1988; the survey is in the public domain. They were younger and leaner than most who sew, few were over ${SURVEY.ages.few}, and few had a bust over ${formatLength(SURVEY.nearlyAll.bustGirth.most, unit)}.`,
  "Some of its tapes ran elsewhere than a dressmaker’s: its upper chest lies lower, its waist higher, its shoulder and neck begin at another point. There the guess is shifted halfway to what the trade draws, and its range is wider. It has no across front: that is a trade proportion.",
  "Only averages and how measures go together are in this page; no woman of the survey is, and nothing of yours leaves it.",
];

/** How well the survey speaks for this body. */
export function standingSentence({ state, why, widened }: SurveyStanding): string {
  const wider = widened > 1.05 ? ` The ranges are made ${Math.round((widened - 1) * 100)} % wider for it.` : "";
  if (state === "within") return `The survey has many bodies with measures like yours.${wider}`;
  const few = state === "thin" ? "few" : "hardly any";
  const what = why.map((reason) => (reason === "age" ? "of your age" : "with measures like yours together")).join(", and ");
  const fallback = state === "outside" && why.includes("measures") ? " Where the trade has a proportion, the guess lies between it and the survey." : "";
  return `The survey has ${few} women ${what}: it can say less here.${wider}${fallback}`;
}
