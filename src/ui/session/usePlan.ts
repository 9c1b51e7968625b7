/** Hooks over the plan that follows from the open work. They bring the whole engine along: the entry must not import them. */
import { planOf } from "../../core/plan/planOf";
import type { PlanFailure } from "../../core/plan/planFailure";
import type { Plan } from "../../core/plan/plan";
import type { Result } from "../../core/result";
import { useSettledWork, useWork } from "./useWork";

/** The plan as it is now, in the middle of a drag too. */
export function usePlan(): Result<Plan, PlanFailure> {
  return useWork(planOf);
}

/** The plan from before the drag that is going on, if one is. */
export function useSettledPlan(): Result<Plan, PlanFailure> {
  return useSettledWork(planOf);
}
