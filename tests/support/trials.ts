/** Trial garments for tests: records written in a line each, read and answered. */
import { expect } from "vitest";
import type { StyleName } from "../../src/core/decisions/pattern";
import type { Observation, Trial, TrialPlace, TrialSign } from "../../src/core/decisions/trial";
import type { Work } from "../../src/core/decisions/work";
import type { DartRef } from "../../src/core/pattern/piece";
import { isSameDart } from "../../src/core/pattern/piece";
import { applyCommand } from "../../src/core/plan/commands";
import type { Plan, PlannedDart } from "../../src/core/plan/plan";
import type { RuleName } from "../../src/core/trial/rules";
import { planOf as planned } from "../../src/core/plan/planOf";
import { readTrial } from "../../src/core/trial/readTrial";
import { answerCommand } from "../../src/core/trial/takeAnswer";
import type { TrialAnswer, TrialReading } from "../../src/core/trial/trialReading";
import type { Decided } from "../../src/core/decisions/decided";
import { testWork } from "./works";

/** A line of the record, its id its place and sign. */
export const line = (
  place: TrialPlace,
  sign: TrialSign,
  more: Omit<Observation, "id" | "place" | "sign"> = {},
): Observation & { readonly place: TrialPlace; readonly sign: TrialSign } => ({
  id: [place, sign, more.half].filter((part) => part !== undefined).join(" "),
  place,
  sign,
  ...more,
});

export const sewnAs = (style: StyleName): Work => ({ ...testWork, pattern: { ...testWork.pattern, style } });

/** The test work in a style, sewn, and what was seen of it. */
export const toile = (style: StyleName, observations: readonly Observation[], more: Partial<Trial> = {}): Trial => ({
  id: "t",
  sewn: sewnAs(style),
  observations,
  ...more,
});

export function planOf(sewn: Decided): Plan {
  const plan = planned(sewn);
  if (!plan.ok) throw new Error(JSON.stringify(plan.failure));
  return plan.value;
}

export function readingOf(trial: Trial): TrialReading {
  const reading = readTrial(trial);
  if (!reading.ok) throw new Error(JSON.stringify(reading.failure));
  return reading.value;
}

export const answersTo = (trial: Trial): readonly TrialAnswer[] => readingOf(trial).answers;

export function first(trial: Trial): TrialAnswer {
  const [answer] = answersTo(trial);
  if (answer === undefined) throw new Error("no answer");
  return answer;
}

export const expectFirst = (answers: readonly TrialAnswer[], rules: readonly RuleName[]): void =>
  expect(answers[0]?.causes.map(({ rule }) => rule)).toEqual(rules);

/** The work with the first answer taken. */
export function workAfter(trial: Trial, work: Work = { ...testWork, ...trial.sewn, trials: [trial] }): Work {
  return applyCommand(work, answerCommand(work, trial, first(trial), null));
}

export function dartIn(plan: Plan, ref: DartRef | undefined): PlannedDart {
  const found = plan.left.darts.find((dart) => ref !== undefined && isSameDart(dart.ref, ref));
  if (found === undefined) throw new Error("no such dart");
  return found;
}
