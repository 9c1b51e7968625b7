/** The sentences of the step Trial: what is seen on a toile, what it comes to, what she decides. */
import { LIMITS } from "../core/decisions/limits";
import type { Half } from "../core/decisions/alteration";
import type { Trial, TrialVerdict } from "../core/decisions/trial";
import type { LengthUnit } from "../core/decisions/work";
import type { ToileViewName } from "../core/toile/toilePlaces";
import type { Mm } from "../core/units";
import { dayWords } from "./terms/days";
import { formatAmount } from "./terms/length";

export const TRIAL_INTRO = "What the toile shows, read together.";
export const BEGIN_ABOUT =
  "Sew the plan as a quick toile, and fill in the trial record beside the mirror. What is decided now is kept with the trial as it is.";
export const PRINT_RECORD = "Print the trial record";

/** @param before how many trials there are */
export const beginWords = (before: number): string => (before === 0 ? "I have sewn this" : "I have sewn the next one");

export const trialName = (number: number): string => `Trial ${number}`;

const VERDICTS: Readonly<Record<TrialVerdict, string>> = { keep: "Keep", again: "Try again" };
export const verdictWords = (verdict: TrialVerdict): string => VERDICTS[verdict];

/** "28 November 2026, open". */
export function trialState({ day, verdict, base }: Trial): string {
  const state = verdict === undefined ? "open" : base === true ? "base" : verdict === "keep" ? "kept" : "try again";
  return day === undefined ? state : `${dayWords(day)}, ${state}`;
}

export const FIRST_TITLE = "Before you read it";
export const FIRST_WHY = "Each of these spoils every reading.";

/** A thing that is not so says where to look; what is seen there is what alters. */
export const WRITE_THE_NO = "Where it is no, write what you see there as a line below: answers go by the lines.";

/** Why an amount cannot be taken; null where it can. */
export function tooFarWords(value: Mm, unit: LengthUnit): string | null {
  return value > LIMITS.seenAmount || value < -LIMITS.seenAmount
    ? `No toile is off by more than ${formatAmount(LIMITS.seenAmount, unit)}.`
    : null;
}

/** The same of an amount that has no other way to go. */
export const notBelowWords = (value: Mm, unit: LengthUnit): string | null =>
  value < 0 ? "Write it without −: what is seen says which way." : tooFarWords(value, unit);

export const SEES_TITLE = "What you see";
export const TAP_WORDS = "Tap a number, or write it in a line below.";
/** @param line its number on the record */
export const aimWords = (line: number): string => `Line ${line}: tap where the drag lines point.`;

const VIEWS: Readonly<Record<ToileViewName, string>> = {
  front: "Front",
  leftSide: "Your left side",
  rightSide: "Your right side",
  back: "Back",
};
export const viewName = (view: ToileViewName): string => VIEWS[view];

export const NO_SUCH_PLACE = "No place of this toile has that number.";

/** Beside a number on the drawing: whose it is. */
export const ofHalf = (half: Half | null): string => (half === null ? "" : `, your ${half} half`);

export const VERDICT_TITLE = "Verdict";
export const REOPEN = "Open it again";
export const BASE_ABOUT = "It fits: other garments can begin from it.";
export const BASE_TAKE = "Keep it as your base";
export const BASE_KEPT = "Kept as your base.";
/** Where what is decided now is not what was sewn. */
export const BASE_AS_SEWN =
  "The base is this toile as it was sewn. What you took or changed since is not in it: sew that, and keep that trial.";

// Answers
export const alteredForIt = "Altered for it";

// BeforeReading
export const bustPoint = (half: string): string => `Bust point, ${half}: `;
export const notLookedAt = "not looked at";

// LineRow
export const lineLabel = (number: number): string => `Line ${number}: `;
export const pointsAt = "points at";
export const whichDart = "which dart?";
export const removeLine = (number: number): string => `Remove line ${number}`;

// ToileDrawing
export const leaveIt = "Leave it";
export const seenFrom = "Seen from";
export const placesToTap = (text: string): string => `${text}: places to tap`;
export const ofThe = (dartRef: string): string => ` of the ${dartRef}`;

// TrialPhotos
export const remove = "Remove";

// TrialStep
export const trial = "Trial";
export const trialsList = "Trials, the first at the left";
export const beginATrial = "Begin a trial";
export const removeNamed = (text: string): string => `Remove ${text}`;

// Verdict
export const because = "Because";
export const itIsNoBase = "It is no base";
