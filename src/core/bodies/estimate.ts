/**
 * What is to be expected of the measures not taken, given exactly those that were, and how well the survey that this
 * stands on speaks for the body at hand.
 */
import { MEASURE_NAMES, type MeasureName } from "../measures/measure";
import type { MeasuredBody } from "../measures/tape";
import type { Mm } from "../units";
import { conditionOn, type Conditioned, type Foretold, type Known } from "./bodyModel";
import { BRIDGES, TAPED_BODIES } from "./bridges";
import { fisherAbove, studentQuantile } from "../statistics/student";
import { SURVEY } from "./surveyModel";
import { tradeProportion } from "./tradeProportions";

/** An expectation, never a fact. */
export interface Estimate {
  readonly value: Mm;
  /** Nine of ten bodies with these measures lie between them. */
  readonly least: Mm;
  readonly most: Mm;
  /**
   * `survey`: as it was measured there. `bridged`: the survey's tape ran elsewhere, and its figure was shifted and made
   * less sure. `proportion`: the survey lacks it; a trade proportion. `between`: the survey lacks bodies like this one; between
   * its figure and a trade proportion.
   */
  readonly from: "survey" | "bridged" | "proportion" | "between";
}

export type Estimates = Readonly<Partial<Record<MeasureName, Estimate>>>;

/** How well the survey speaks for a body. */
export interface SurveyStanding {
  /** Share of surveyed bodies that lie further out in these measures, 0 to 1. */
  readonly furtherOut: number;
  readonly state: "within" | "thin" | "outside";
  readonly why: readonly ("measures" | "age")[];
  /** What the ranges were multiplied by: 1 in the middle of the survey. */
  readonly widened: number;
  /** Whether estimates lie between the survey and the trade's proportions to the bust. */
  readonly besideTrade: boolean;
}

/** Standard normal: nine of ten lie within this many standard deviations. */
const NINE_OF_TEN = 1.6448536269514722;

/** Fewer than this share further out: the survey is thin there; and has hardly anybody. */
const THIN = 0.05;
const OUTSIDE = 0.005;

/** How much wider ranges are made by age: our own choice, held against the survey of 2012 up to 58 (DEVELOPERS.md). */
const AGE_WIDENS = { thin: 1.15, outside: 1.3 };

/** What was taken, as the body model knows it: tapes are not exact. */
export const knownOf = (body: MeasuredBody): readonly Known[] =>
  MEASURE_NAMES.flatMap((measure) => {
    const taken = body[measure];
    if (taken === undefined || !(taken.value > 0)) return [];
    return [{ measure, log: Math.log(taken.value), variance: (taken.spread / taken.value) ** 2 }];
  });

/** Nine of ten of what is foretold, in mm; `widened` multiplies the range. */
export function rangeOf(
  foretold: Foretold,
  widened = 1,
): { readonly value: Mm; readonly least: Mm; readonly most: Mm } {
  const reach = studentQuantile(NINE_OF_TEN, foretold.freedom) * foretold.scale * widened;
  return {
    value: Math.exp(foretold.middle),
    least: Math.exp(foretold.middle - reach),
    most: Math.exp(foretold.middle + reach),
  };
}

/**
 * Estimates of all measures not taken; none where nothing was taken.
 *
 * @param body what was taken, with the spread of each mean; mm
 * @param age  years, where she says
 */
export function estimatesOf(body: MeasuredBody, age?: number): Estimates {
  const known = knownOf(body);
  if (known.length === 0) return {};
  const given = conditionOn(TAPED_BODIES, known);
  const widened = widenedByAge(age);
  const outside = stateOf(given) === "outside";
  const estimates: Partial<Record<MeasureName, Estimate>> = {};
  for (const measure of MEASURE_NAMES) {
    if (body[measure] !== undefined) continue;
    const range = rangeOf(given.of(measure), widened);
    const rule = body.bustGirth === undefined ? null : tradeProportion(measure, body.bustGirth.value);
    estimates[measure] =
      outside && rule !== null ? acrossBoth(range, rule, measure) : { ...range, from: sourceOf(measure) };
  }
  return estimates;
}

/** Where the survey has hardly anybody, neither it nor the trade's rule is known to be the better: between them, and as wide as both. */
function acrossBoth(range: ReturnType<typeof rangeOf>, rule: Mm, measure: MeasureName): Estimate {
  const shift = (rule - range.value) / 2;
  return {
    value: range.value + shift,
    least: Math.min(range.least, range.least + shift),
    most: Math.max(range.most, range.most + shift),
    from: SURVEY.measures.includes(measure) ? "between" : "proportion",
  };
}

function sourceOf(measure: MeasureName): Estimate["from"] {
  if (!SURVEY.measures.includes(measure)) return "proportion";
  return (BRIDGES[measure]?.shift ?? 0) === 0 ? "survey" : "bridged";
}

/** How well the survey speaks for this body; null where nothing was taken. */
export function standingOf(body: MeasuredBody, age?: number): SurveyStanding | null {
  const known = knownOf(body);
  return known.length === 0 ? null : standing(conditionOn(TAPED_BODIES, known), body.bustGirth !== undefined, age);
}

function standing(given: Conditioned, hasBust: boolean, age: number | undefined): SurveyStanding {
  const { freedom } = TAPED_BODIES;
  const byMeasures = stateOf(given);
  const byAge = ageState(age);
  const state =
    byMeasures === "outside" || byAge === "outside"
      ? "outside"
      : byMeasures === "thin" || byAge === "thin"
        ? "thin"
        : "within";
  const why = [
    ...(byMeasures === "within" ? [] : ["measures" as const]),
    ...(byAge === "within" ? [] : ["age" as const]),
  ];
  const widened = Math.sqrt((freedom + given.distance) / (freedom + given.known)) * widenedByAge(age);
  return {
    furtherOut: furtherOutOf(given),
    state,
    why,
    widened: Math.max(1, widened),
    besideTrade: hasBust && byMeasures === "outside",
  };
}

/** Share of surveyed bodies that lie further out. For a t distribution, distance over number is Fisher's F. */
const furtherOutOf = ({ distance, known }: Conditioned): number =>
  fisherAbove(distance / known, known, TAPED_BODIES.freedom);

function stateOf(given: Conditioned): SurveyStanding["state"] {
  const furtherOut = furtherOutOf(given);
  return furtherOut < OUTSIDE ? "outside" : furtherOut < THIN ? "thin" : "within";
}

function ageState(age: number | undefined): SurveyStanding["state"] {
  if (age === undefined) return "within";
  const { least, most, few } = SURVEY.ages;
  return age < least || age > most ? "outside" : age > few ? "thin" : "within";
}

/** What the ranges are multiplied by for an age that the survey has few of, or none. */
export function widenedByAge(age: number | undefined): number {
  const state = ageState(age);
  return state === "within" ? 1 : AGE_WIDENS[state];
}
