/** Which alterations stand on which half, as data for other programs. */
import type { Plan } from "../core/plan/plan";
import type { Work } from "../core/decisions/work";
import { alterationReport, type ReportAlteration } from "./trialReport";

export interface ReportHalves {
  /** Whether the pieces of both halves are the same. */
  readonly same: boolean;
  readonly both: readonly ReportAlteration[];
  readonly left: readonly ReportAlteration[];
  readonly right: readonly ReportAlteration[];
  /** Cup versions by label; null: the pattern has none. */
  readonly cups: { readonly left: string | null; readonly right: string | null };
}

export function halvesReport({ alterations, picks, unit }: Work, plan: Plan): ReportHalves {
  const on = (half: "left" | "right" | undefined): readonly ReportAlteration[] =>
    alterations.filter((one) => one.half === half).map((one) => alterationReport(one, unit));
  const { label } = plan.sizing.cup;
  return {
    same: plan.left === plan.right,
    both: on(undefined),
    left: on("left"),
    right: on("right"),
    cups: { left: picks.halfCups?.left ?? label, right: picks.halfCups?.right ?? label },
  };
}
