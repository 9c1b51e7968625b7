/** What is said of the survey that guesses come from. */
import type { SurveyStanding } from "../core/bodies/estimate";
import { SURVEY } from "../core/bodies/surveyModel";
import type { LengthUnit } from "../core/decisions/work";
import { percentWords } from "./terms/language";
import { formatLength } from "./terms/length";

/** Whose bodies the guesses come from, and what they cannot tell. */
export const surveyWords = (unit: LengthUnit): readonly string[] => [
  `${SURVEY.women} women of the US Army, ${SURVEY.ages.least} to ${SURVEY.ages.most} years old, measured in 1987 and 1988; the survey is in the public domain. What is guessed stands on ${SURVEY.fitted} of them; the others were kept to judge it. They were younger and leaner than most who sew, few were over ${SURVEY.ages.few}, and few had a bust over ${formatLength(SURVEY.nearlyAll.bustGirth.most, unit)}.`,
  "Some of its tapes ran elsewhere than a dressmaker’s: its upper chest lies lower, its waist higher, its shoulder and neck begin at another point. There the guess is shifted halfway to what the trade draws, and its range is wider. It has no across front: that is a trade proportion.",
  "Only averages, and how measures go together, are in this page: no woman of the survey is. Nothing of this leaves your device.",
];

/** How well the survey speaks for this body. */
export function standingSentence({ state, why, widened, besideTrade }: SurveyStanding): string {
  const share = `${percentWords(widened - 1)} wider`;
  const isWider = widened > 1.05;
  if (state === "within")
    return `The survey has many bodies with measures like yours${isWider ? `, if not at its middle: the ranges are ${share} than there` : ""}.`;
  const wider = isWider ? ` The ranges are made ${share} for it.` : "";
  const few = state === "thin" ? "few" : "hardly any";
  const what = why
    .map((reason) => (reason === "age" ? "of your age" : "with measures like yours together"))
    .join(", and ");
  const fallback = besideTrade ? " Where the trade has a proportion, the guess lies between it and the survey." : "";
  return `The survey has ${few} women ${what}: it can say less here.${wider}${fallback}`;
}
