/** What a trial's record comes to, in sentences: answers, what they explain and leave, what tells them apart. */
import type { Half } from "../core/decisions/alteration";
import type { Observation } from "../core/decisions/trial";
import type { LengthUnit } from "../core/decisions/work";
import { isBustMark, numberedLines } from "../core/toile/recordLine";
import type { Cause, SewnOff, TrialAnswer } from "../core/trial/trialReading";
import { formatAmount, formatSigned } from "./terms/length";
import { capital } from "./terms/names";
import { alterationTitle } from "./planned";
import { toileLengthWords } from "./trial";
import { causeName, causeWords, lookWords } from "./trialRules";
import { listWords, plural } from "./terms/language";

export const ANSWERS_TITLE = "What it comes to";
export const NOTHING_READ = "Write a line with a place and what is seen there: the lines are read together.";
export const NOTHING_FOUND = "Nothing of this is in the planner’s table. Nothing is altered for it.";

/** "Sway back, and armhole gapes, left half". */
export const answerName = ({ causes }: TrialAnswer): string =>
  causes
    .map((cause, at) => (at === 0 ? causeName(cause) : causeName(cause).replace(/^\w/u, (a) => a.toLowerCase())))
    .join(" + ");

/** What is amiss, and where the amount is a first try only. */
export const causeSentence = (cause: Cause, unit: LengthUnit): string =>
  `${causeWords(cause, unit)}${cause.amountBy === "usual" && cause.amount > 0 ? " A usual first try: no amount was told." : ""}`;

/** What is altered for it, as the ledger will say. */
export function alteredWords(answer: TrialAnswer, unit: LengthUnit): readonly string[] {
  const { alterations, bustAlteration, halfCups } = answer;
  return [
    ...(bustAlteration === undefined ? [] : [`Alter the bust by ${formatSigned(bustAlteration, unit)} in all`]),
    ...Object.entries(halfCups ?? {}).map(([half, cup]) => `Cut the ${half} half in cup ${cup}`),
    ...alterations.map((alteration) => alterationTitle(alteration, unit)),
  ];
}

/** Lines by their numbers on the record, and the marks of the bust points by their names. */
function linesWords(ids: readonly string[], observations: readonly Observation[]): string {
  const lines = numberedLines(observations);
  const numbers = lines.flatMap(({ id }, at) => (ids.includes(id) ? [String(at + 1)] : []));
  const marks = observations.flatMap((one) =>
    isBustMark(one) && ids.includes(one.id) ? [`the ${one.half ?? ""} bust point`] : [],
  );
  const told =
    numbers.length === 0 ? [] : [`${plural(numbers.length, { one: "line", other: "lines" })} ${listWords(numbers)}`];
  return listWords([...told, ...marks]);
}

export const explainsWords = ({ explains, leaves }: TrialAnswer, observations: readonly Observation[]): string => {
  const left = leaves.length === 0 ? "It leaves nothing." : `It leaves ${linesWords(leaves, observations)}.`;
  return `Explains ${linesWords(explains, observations)}. ${left}`;
};

/** Of what it would also show, what to look for. */
export function expectsWords({ causes }: TrialAnswer): string | null {
  const looks = [...new Set(causes.flatMap(({ expects }) => expects.map((look) => lookWords(look))))];
  return looks.length === 0 ? null : `You would then also see: ${looks.join("; ")}.`;
}

export function againstWords({ causes }: TrialAnswer): string | null {
  const looks = [...new Set(causes.flatMap(({ against }) => against.map((look) => lookWords(look))))];
  return looks.length === 0 ? null : `Against it: ${looks.join("; ")}.`;
}

/** What tells it from the answer next to it. */
export function apartWords({ tellsApart }: TrialAnswer, isLast: boolean): readonly string[] {
  const other = isLast ? "the one before" : "the next";
  const looks = (speaks: boolean): string =>
    tellsApart
      .filter(({ speaksFor }) => speaksFor === speaks)
      .map(({ look }) => lookWords(look))
      .join("; ");
  const [here, there] = [looks(true), looks(false)];
  return [
    ...(here === "" ? [] : [`It is this rather than ${other}, if you see: ${here}.`]),
    ...(there === "" ? [] : [`It is ${other}, if you see: ${there}.`]),
  ];
}

export const TAKE_IT = "Take it";
export const takeWordsOn = (half: Half): string => `Try it on the ${half}`;
export const TAKEN = "Taken";
export const takenOn = (halves: readonly Half[]): string => `Tried on the ${listWords(halves)}`;

export const unexplainedWords = (ids: readonly string[], observations: readonly Observation[]): string =>
  `${capital(linesWords(ids, observations))}: not explained. Look again after the next pin; nothing is altered for it.`;

/** Off in sewing, before anything is altered. */
export function sewnOffWords(
  { length, sewn, planned, explains }: SewnOff,
  observations: readonly Observation[],
  unit: LengthUnit,
): string {
  const off = sewn - planned;
  const first = `${toileLengthWords(length)}: sewn ${formatAmount(Math.abs(off), unit)} too ${off > 0 ? "long" : "short"}.`;
  return explains.length === 0
    ? `${first} Put that right first.`
    : `${first} That may be all there is to ${linesWords(explains, observations)}: put it right first.`;
}
