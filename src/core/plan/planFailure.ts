/** Why there is no plan yet. */
import type { PiecesUnready } from "../nest/piecesOfPattern";
import type { SizingFailure } from "../sizing/sizingFailure";
import type { Mm } from "../units";

/** Why there is no plan yet. `field` names the entry to look at. */
export type PlanFailure =
  | PiecesUnready
  /** One size alone was traced, without its steps to another, and it is not the base size picked. */
  | { readonly code: "plan/one-size-traced"; readonly picked: string; readonly traced: readonly string[] }
  | { readonly code: "plan/measure-missing"; readonly measures: readonly ("bustGirth" | "waistGirth" | "hipGirth")[] }
  | { readonly code: "plan/chart-unusable"; readonly faults: number }
  | SizingFailure
  /** `least`: how much smaller (negative) than a usual draft's a cup difference can be at the most. */
  | { readonly code: "plan/cup-undraftable"; readonly label: string; readonly least: Mm };
