/**
 * What the tape step says: guesses as guesses, doubts about a reading as questions to the tape, several readings, days.
 * Bodies are spoken of neutrally; it is always the tape or the entry that is in question.
 */
import type { LikelyMisreading } from "../core/bodies/misreading";
import type { Estimate } from "../core/bodies/estimate";
import type { Suspicion } from "../core/bodies/suspicion";
import type { TapeDifference } from "../core/measures/compareTapes";
import { MEASURE_NAMES, type MeasureName } from "../core/measures/measure";
import { checkMeasure } from "../core/measures/registry";
import { apartOf, readingsAgree, TAPE_SPREAD } from "../core/measures/repeatability";
import type { Measured } from "../core/measures/tape";
import type { LengthUnit } from "../core/decisions/work";
import { MM_PER_CM, MM_PER_INCH, type Mm } from "../core/units";
import { LIMITS } from "../core/decisions/limits";
import { formatLength, inchParts } from "./terms/length";
import { measureWords, misreadingSentence } from "./measures";
import { upToDecimals } from "./terms/language";

/** What is expected is told no finer than this: half a centimetre or a quarter of an inch, and twice that of a wide range. */
const ROUGH = { cm: 5, in: MM_PER_INCH / 4 } as const;
const WIDE: Mm = 40;

interface Range {
  readonly least: Mm;
  readonly most: Mm;
}

const roughStep = ({ least, most }: Range, unit: LengthUnit): Mm => ROUGH[unit] * (most - least < WIDE ? 1 : 2);

/** "27 cm", "24.5 cm", "10 ½ in". */
function roughly(mm: Mm, range: Range, unit: LengthUnit): string {
  const step = roughStep(range, unit);
  return formatLength(Math.round(mm / step) * step, unit).replace(".0 ", " ");
}

/** "24 to 28". */
const between = (range: Range, unit: LengthUnit): string =>
  `${roughly(range.least, range, unit)} to ${roughly(range.most, range, unit)}`.replaceAll(/ (cm|in)\b/g, "");

/** What a length is told to where it is told finely. */
const FINE = { cm: 1, in: MM_PER_INCH / 8 } as const;

/** "79 to 88"; told finely where, told roughly, the range would hold the very value that lies outside it. */
function expectedBetween(range: Range, value: Mm, unit: LengthUnit): string {
  const fine = FINE[unit];
  const rough = roughStep(range, unit);
  const told = Math.round(value / fine);
  const asTold = (mm: Mm): number => Math.round((Math.round(mm / rough) * rough) / fine);
  const isOver = value > range.most && told <= asTold(range.most);
  const isUnder = value < range.least && told >= asTold(range.least);
  if (!isOver && !isUnder) return between(range, unit);
  const most = isOver ? Math.min(told - 1, Math.round(range.most / fine)) : Math.round(range.most / fine);
  const least = isUnder ? Math.max(told + 1, Math.round(range.least / fine)) : Math.round(range.least / fine);
  const words = (steps: number): string => formatLength(steps * fine, unit).replace(/ (?:cm|in)$/, "");
  return `${words(least)} to ${words(most)}`;
}

/** "probably 26 cm (24 to 28)". */
export const guessWords = (estimate: Estimate, unit: LengthUnit): string =>
  `probably ${roughly(estimate.value, estimate, unit)} (${between(estimate, unit)})`;

const SOURCES: Readonly<Record<Estimate["from"], string>> = {
  survey: "from the body survey",
  bridged: "from the body survey, whose tape ran elsewhere",
  proportion: "by a trade proportion",
  between: "between the body survey and a trade proportion",
};
/** What a guess stands on. */
export const guessSource = ({ from }: Pick<Estimate, "from">): string => SOURCES[from];

const COUNTS = ["no", "one", "two", "three", "four", "five"];

/** What several readings come to; null for one. */
export function readingsSentence(
  name: MeasureName,
  { value, readings }: Pick<Measured, "value" | "readings">,
  unit: LengthUnit,
): string | null {
  if (readings.length < 2) return null;
  const mean = formatLength(value, unit);
  const apart = formatLength(apartOf(readings), unit);
  const count = COUNTS[readings.length] ?? readings.length;
  if (!readingsAgree(name, readings)) {
    const next =
      readings.length === 2
        ? "Take it a third time."
        : readings.length < LIMITS.readings
          ? "Take it once more, or take out the one that went wrong."
          : "Take out the one that went wrong.";
    return `These ${count} do not agree: they are ${apart} apart, more than a tape usually is. ${next} Until then their mean counts, ${mean}.`;
  }
  return apart === formatLength(0, unit)
    ? `Mean ${mean}; your ${count} readings agree.`
    : `Mean ${mean}; your ${count} readings are ${apart} apart.`;
}

/** "5 ft 4 ½ in": how heights are told where inches are read. */
export function feetWords(mm: Mm): string {
  const { whole, fraction } = inchParts(mm);
  const feet = Math.floor(whole / INCHES_PER_FOOT);
  const inches = formatLength(mm, "in").replace(/^\d+/, String(whole - feet * INCHES_PER_FOOT));
  return whole % INCHES_PER_FOOT === 0 && fraction === null
    ? `${feet} ft`
    : `${feet} ft ${inches.replace(/^0 (?=\S+ in)/, "")}`;
}

const INCHES_PER_FOOT = 12;

/** What to take again, and why. */
export function doubtSentence(
  { measure, value, least, most, misreading, takenAgain, saidRight, onceMore }: Suspicion,
  unit: LengthUnit,
): string {
  const expected = `${expectedBetween({ least, most }, value, unit)} ${unit}`;
  if (takenAgain)
    return `You took it more than once, so it stands. Your other measures lead one to expect ${expected}.`;
  if (saidRight) return `You said it is right, so it stands. Your other measures lead one to expect ${expected}.`;
  if (onceMore) {
    const off = value > most ? "more" : value < least ? "less" : "other";
    return `Take the ${measureWords(measure).short} once more: ${formatLength(value, unit)} is ${off} than your other measures lead one to expect (${expected}). If it reads the same, it stands.`;
  }
  const again = `Measure the ${measureWords(measure).short} again: ${formatLength(value, unit)}`;
  const how = value > most ? "more" : value < least ? "less" : null;
  const doubt =
    how === null
      ? `${again} does not go with your other measures.`
      : `${again} is ${how} than your other measures lead one to expect (${expected}).`;
  if (misreading !== null) return doubt;
  return `${doubt} The tape may have slipped${measure.endsWith("Girth") ? " at the back" : ""}, or one of the others is out.`;
}

/** What a value may be that few tapes read: in the other unit, or half. Null for usual ones, and where nothing comes to mind. */
export function unusualQuestion(name: MeasureName, value: Mm, unit: LengthUnit): string | null {
  const verdict = checkMeasure(name, value);
  const question = verdict.state === "unusual" ? misreadingSentence(verdict.misreadings, value, unit) : "";
  return question === "" ? null : `Few tapes read ${formatLength(value, unit)} here. ${question}`;
}

/** How sure a measure is that was taken once: the usual spread at the bust. */
export const onceSureWords = (unit: LengthUnit): string =>
  `sure to about ${formatLength(TAPE_SPREAD.bustGirth, unit).replace(".0 ", " ")} if taken once, surer if taken again`;

/** How far the tape has got: "5 of 14 measured, 9 guessed. To take again: waist, hip." */
export function tapeStateSentence(measured: number, guessed: number, doubted: readonly MeasureName[]): string {
  const state = `${measured} of ${MEASURE_NAMES.length} measured${guessed > 0 ? `, ${guessed} guessed` : ""}.`;
  return doubted.length === 0
    ? state
    : `${state} To take again: ${doubted.map((name) => measureWords(name).short).join(", ")}.`;
}

/** The mistake that would explain it, as a question. */
export function misreadingQuestion(
  { measure, value }: Suspicion,
  misreading: LikelyMisreading,
  unit: LengthUnit,
): string {
  const meant = formatLength(misreading.meant, unit);
  const other = misreading.other === undefined ? "" : measureWords(misreading.other).short;
  switch (misreading.kind) {
    case "inchesAsCentimetres":
      return unit === "in"
        ? `Were these inches, taken for centimetres? That would be ${meant}.`
        : `Were these inches? ${plain(value / MM_PER_CM)} in is ${meant}.`;
    case "centimetresAsInches":
      return unit === "cm"
        ? `Were these centimetres, taken for inches? That would be ${meant}.`
        : `Were these centimetres? ${plain(value / MM_PER_INCH)} cm is ${meant}.`;
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

/** Where the question is asked, when two measures are in it. */
export const misreadingElsewhere = ({ other }: LikelyMisreading): string =>
  other === undefined ? "" : `See the question at the ${measureWords(other).short}.`;

const plain = (value: number): string => upToDecimals(value, 2);

/** What setting the misreading right is called; null where only the tape can. */
export function misreadingRemedy(misreading: LikelyMisreading, unit: LengthUnit): string | null {
  switch (misreading.kind) {
    case "swapped":
      return "Swap them";
    case "waistAtNavel":
    case "waistAtHip":
    case "upperChestOverBust":
      return null;
    default:
      return `Take ${formatLength(misreading.meant, unit)}`;
  }
}

/** Where days that can be entered begin: before it, a year is only half typed. */
const FIRST_DAY = "1900-01-01";

/** Why a day cannot be when the measures were taken; null for one that can. Days as yyyy-mm-dd. */
export function dayRefusal(day: string, today: string): string | null {
  if (day > today) return "This day is still to come.";
  return day < FIRST_DAY ? "Write the year with all four digits." : null;
}

/** As fine as the two that it lies between: "+2.4 cm", "changed". */
export function differenceWords(
  { now, before, changed }: TapeDifference,
  unit: LengthUnit,
): readonly [difference: string, verdict: string] {
  const apart = formatLength(Math.abs(now - before), unit);
  const sign = apart === formatLength(0, unit) ? "" : now > before ? "+" : "−";
  return [`${sign}${apart}`, changed ? "changed" : "within what a tape does"];
}
