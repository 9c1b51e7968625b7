import { planFailureWords } from "../../words/plan";
import { FailureNote } from "../session/FailureNote";
import { useSettledPlan } from "../session/usePlan";
import { useSettledWork } from "../session/useWork";

/** What the plan still needs; nothing once there is one. */
export function PlanNote() {
  const plan = useSettledPlan();
  const unit = useSettledWork((work) => work.unit);
  const sizes = useSettledWork((work) => work.pattern.chart.sizes.length);
  return plan.ok ? null : <FailureNote words={planFailureWords(plan.failure, unit, sizes)} />;
}
