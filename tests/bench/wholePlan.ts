/** A plan with all that is told of it. */
import type { Work } from "../../src/core/decisions/work";
import { derivePlan } from "../../src/core/plan/derivePlan";
import type { Plan } from "../../src/core/plan/plan";

/** Checks and checklist are made when they are read: here they are, so that a whole plan is timed. */
export function wholePlan(work: Work): Plan {
  const plan = derivePlan(work);
  if (!plan.ok) throw new Error(plan.failure.code);
  return { ...plan.value };
}
