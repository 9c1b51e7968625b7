/** The plan as one half of the body has it, where left and right differ. */
import type { Plan, Slip } from "./plan";
import type { Half } from "./work";

const isOn = ({ what }: Slip, half: Half): boolean =>
  what.kind !== "alteration" || what.alteration.kind !== "fit" || what.alteration.half === undefined || what.alteration.half === half;

/** The plan with the pieces, darts, slips and truing of that half; the very same plan where the halves do not differ. */
export function halfShown(plan: Plan, half: Half): Plan {
  const { right } = plan;
  if (right === null) return plan;
  if (half === "left") return { ...plan, slips: plan.slips.filter((slip) => isOn(slip, "left")) };
  const { pieces, darts, slips, truing } = right;
  return { ...plan, pieces, darts, slips, truing };
}
