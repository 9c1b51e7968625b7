/** Hooks over the plan that follows from the open work. They bring the whole engine along: the entry must not import them. */
import { useStore } from "zustand";
import { planOf } from "../../core/plan/planOf";
import type { PlanFailure } from "../../core/plan/planFailure";
import type { Plan } from "../../core/plan/plan";
import type { Result } from "../../core/result";
import type { WorkState } from "../../store/workStore";
import { useSettledWork, useWorkStore, workInSight } from "./useWork";

/** Lengths of her tissue make every printed piece anew: the plan follows when the field is left, not at every key. */
const followsOnLeaving = ({ gesture }: WorkState): boolean => gesture?.entry?.field.startsWith("tissue.") === true;

/** The plan as it is now, in the middle of a drag too; of a drag not where it is out of sight, as `useWorkInSight` has it. */
export function usePlan(isInSight = true): Result<Plan, PlanFailure> {
  return useStore(useWorkStore(), (state) =>
    planOf(followsOnLeaving(state) ? (state.gesture?.start ?? state.work) : workInSight(state, isInSight)),
  );
}

/** The plan from before the drag that is going on, if one is. */
export function useSettledPlan(): Result<Plan, PlanFailure> {
  return useSettledWork(planOf);
}
