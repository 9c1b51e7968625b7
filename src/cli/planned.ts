/** A saved work and the plan that follows from it, or the sentence that says why there is none. */
import { derivePlan } from "../core/plan/derivePlan";
import type { Plan } from "../core/plan/plan";
import type { Work } from "../core/decisions/work";
import { fail, ok, type Result } from "../core/result";
import { readWorkFile } from "../document/workFile";
import { planFailureWords } from "../words/plan";
import { workFileFailureSentence } from "../words/workFile";
import { readBytes } from "./readBytes";
import * as say from "../words/doors/doorFiles";

/** Bytes. No work comes near it. */
const LARGEST_FILE = 20_000_000;

export interface Planned {
  readonly work: Work;
  readonly plan: Plan;
}

export function plannedFrom(file: string): Result<Planned, string> {
  const work = workFrom(file);
  return work.ok ? plannedFor(work.value, file) : work;
}

/** @param file where the work comes from */
export function plannedFor(work: Work, file: string): Result<Planned, string> {
  const plan = derivePlan(work);
  if (plan.ok) return ok({ work, plan: plan.value });
  const words = planFailureWords(plan.failure, work.unit, work.pattern.chart.sizes.length);
  return fail(`${file}: ${words.title}. ${words.text}`);
}

/** The work in a file, or the sentence that says why there is none. */
export function workFrom(file: string): Result<Work, string> {
  const bytes = readBytes(file, LARGEST_FILE, say.workFile);
  if (!bytes.ok) return fail(`${file}: ${bytes.failure}.`);
  const work = readWorkFile(Buffer.from(bytes.value).toString("utf8"));
  return work.ok ? work : fail(`${file}: ${workFileFailureSentence(work.failure)}`);
}
