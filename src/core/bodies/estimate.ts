/** What is to be expected of the measures not taken, given exactly those that were. */
import type { MeasureName } from "../measures/measure";
import type { MeasuredBody } from "../measures/tape";
import type { Mm } from "../units";

/** An expectation, never a fact. */
export interface Estimate {
  readonly value: Mm;
  /** Nine of ten bodies with these measures lie between them. */
  readonly least: Mm;
  readonly most: Mm;
  /**
   * `survey`: as it was measured there. `bridged`: the survey's tape ran elsewhere, and its figure was shifted and made
   * less sure. `proportion`: the survey lacks it; a trade proportion.
   */
  readonly from: "survey" | "bridged" | "proportion";
}

export type Estimates = Readonly<Partial<Record<MeasureName, Estimate>>>;

/** How well the survey speaks for a body. */
export interface SurveyStanding {
  /** Share of surveyed bodies that lie further out in these measures, 0 to 1. */
  readonly furtherOut: number;
  readonly state: "within" | "thin" | "outside";
  readonly why: readonly ("measures" | "age")[];
  /** What the ranges were multiplied by, 1 in the middle of the survey. */
  readonly widened: number;
}

/** Estimates of all measures not taken; none where nothing was taken. */
export function estimatesOf(_body: MeasuredBody, _age?: number): Estimates {
  return {};
}

/** How well the survey speaks for this body; null where nothing was taken. */
export function standingOf(_body: MeasuredBody, _age?: number): SurveyStanding | null {
  return null;
}
