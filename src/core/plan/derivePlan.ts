import { fail, type Result } from "../result";
import type { Nest } from "../pattern/piece";
import type { Plan, PlanFailure } from "./plan";
import type { Work } from "./work";

/** The printed pieces in all sizes, in the cup version picked (or the drafted one): shown even before there is a plan. */
export function derivePrintedNest(_work: Work): Result<Nest, PlanFailure> {
  return fail({ code: "plan/chart-unusable", faults: 1 });
}

/** The whole plan that follows from a work. Pure: the same work gives the same plan. */
export function derivePlan(_work: Work): Result<Plan, PlanFailure> {
  return fail({ code: "plan/chart-unusable", faults: 1 });
}
