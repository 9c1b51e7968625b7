import type { Plan, PlanHalf } from "../core/plan/plan";

/** What the plan has for either half of the body: the very same object twice where they do not differ. */
export const halvesOf = (plan: Plan): { readonly left: PlanHalf; readonly right: PlanHalf } => ({
  left: plan,
  right: plan.right ?? plan,
});
