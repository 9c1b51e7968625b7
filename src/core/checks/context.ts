/** What the checks look at. */
import type { PieceSet } from "../alterations/pieceSet";
import type { PlannedDart, PlannedLevel, Slip } from "../plan/plan";
import type { Closure } from "../plan/work";
import type { Mm } from "../units";
import type { CheckResult } from "./check";

export interface CheckContext {
  readonly pieces: PieceSet;
  readonly levels: readonly PlannedLevel[];
  readonly darts: readonly PlannedDart[];
  readonly slips: readonly Slip[];
  readonly closure: Closure;
  readonly body: { readonly bust: Mm; readonly hip: Mm | null };
}

export type Check = (context: CheckContext) => readonly CheckResult[];

/** A check of nearness: holds where measured and expected differ by no more than the tolerance. */
export function near(result: Omit<CheckResult, "ok">): CheckResult {
  return { ...result, ok: Math.abs(result.measured - result.expected) <= result.tolerance };
}
