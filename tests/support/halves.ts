import type { Plan, PlanHalf } from "../../src/core/plan/plan";

/** The plan with something else on both halves, which stay alike. */
export function alike(plan: Plan, change: Partial<PlanHalf>): Plan {
  const half = { ...plan.left, ...change };
  return { ...plan, left: half, right: half };
}
