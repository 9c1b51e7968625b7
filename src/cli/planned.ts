/** A saved work and the plan that follows from it, or the sentence that says why there is none. */
import { readFileSync, statSync } from "node:fs";
import { derivePlan } from "../core/plan/derivePlan";
import type { Plan } from "../core/plan/plan";
import type { Work } from "../core/decisions/work";
import { fail, ok, type Result } from "../core/result";
import { readWorkFile } from "../document/workFile";
import { planFailureWords } from "../words/plan";
import { workFileFailureSentence } from "../words/workFile";

/** Bytes. No work comes near it. */
const LARGEST_FILE = 20_000_000;

export interface Planned {
  readonly work: Work;
  readonly plan: Plan;
}

export function plannedFrom(file: string): Result<Planned, string> {
  const text = readText(file);
  if (!text.ok) return fail(`${file}: ${text.failure}.`);
  const work = readWorkFile(text.value);
  if (!work.ok) return fail(`${file}: ${workFileFailureSentence(work.failure)}`);
  const plan = derivePlan(work.value);
  if (plan.ok) return ok({ work: work.value, plan: plan.value });
  const words = planFailureWords(plan.failure, work.value.unit, work.value.pattern.chart.sizes.length);
  return fail(`${file}: ${words.title}. ${words.text}`);
}

function readText(file: string): Result<string, string> {
  try {
    const found = statSync(file);
    if (found.isDirectory()) return fail("it is a folder");
    if (!found.isFile() && !found.isFIFO()) return fail("it is not a file");
    if (found.size > LARGEST_FILE) return fail("it is far too large for a work file");
    return ok(readFileSync(file, "utf8"));
  } catch (error) {
    const code = error instanceof Error && "code" in error ? error.code : undefined;
    if (code === "ENOENT" || code === "ENOTDIR") return fail("there is no such file");
    if (code === "EACCES" || code === "EPERM") return fail("it may not be read");
    return fail("it cannot be read");
  }
}
