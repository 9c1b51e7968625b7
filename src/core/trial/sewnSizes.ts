/** The base size and the cup that a toile was sewn from, whether she picked them or the planner found them. */
import type { Decided, Picks } from "../decisions/decided";
import { planOf } from "../plan/planOf";

/** As picks that hold them. */
export function sizesOf(sewn: Decided): Pick<Picks, "baseSize" | "cup"> {
  const plan = planOf(sewn);
  if (!plan.ok) return {};
  const { baseSize, cup } = plan.value.sizing;
  return { baseSize: baseSize.label, ...(cup.label === null ? {} : { cup: cup.label }) };
}
