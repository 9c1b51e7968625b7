import { planFailureWords } from "../../words/plan";
import { FailureNote } from "../work/FailureNote";
import { useSettledPlan } from "../work/usePlan";
import { useSettledWork } from "../work/useWork";

/** What the plan still needs; nothing once there is one. */
export function PlanNote() {
  const plan = useSettledPlan();
  const unit = useSettledWork((work) => work.unit);
  const sizes = useSettledWork((work) => work.pattern.chart.sizes.length);
  return plan.ok ? null : <FailureNote words={planFailureWords(plan.failure, unit, sizes)} />;
}
