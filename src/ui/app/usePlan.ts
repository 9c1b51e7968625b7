/** Hooks over the plan that follows from the open work. They bring the whole engine along: the entry must not import them. */
import type { PlanFailure } from "../../core/plan/planFailure";
import { derivePrintedNest } from "../../core/plan/printed";
import { derivePlan } from "../../core/plan/derivePlan";
import type { Plan } from "../../core/plan/plan";
import type { Nest } from "../../core/pattern/piece";
import type { Work } from "../../core/decisions/work";
import type { Result } from "../../core/result";
import { useSettledWork, useWork } from "./useWork";

/** A work never changes in place, so what follows from it is worked out once for each and dropped with it. */
const plans = new WeakMap<Work, Result<Plan, PlanFailure>>();
const nests = new WeakMap<Work, Result<Nest, PlanFailure>>();

function remembered<T>(memory: WeakMap<Work, T>, work: Work, derive: (work: Work) => T): T {
  const known = memory.get(work);
  if (known !== undefined) return known;
  const fresh = derive(work);
  memory.set(work, fresh);
  return fresh;
}

export const planOf = (work: Work): Result<Plan, PlanFailure> => remembered(plans, work, derivePlan);
export const printedNestOf = (work: Work): Result<Nest, PlanFailure> => remembered(nests, work, derivePrintedNest);

/** The plan as it is now, in the middle of a drag too. */
export function usePlan(): Result<Plan, PlanFailure> {
  return useWork(planOf);
}

/** The plan from before the drag that is going on, if one is. */
export function useSettledPlan(): Result<Plan, PlanFailure> {
  return useSettledWork(planOf);
}
