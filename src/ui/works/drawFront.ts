import type { Work } from "../../core/decisions/work";
import { planOf } from "../../core/plan/planOf";
import { frontDrawing, type FrontDrawing } from "../../drawing/frontDrawing";

/** The front of a work in small; null where it has no plan yet. */
export function drawFront(work: Work): FrontDrawing | null {
  const plan = planOf(work);
  return plan.ok ? frontDrawing(plan.value) : null;
}
