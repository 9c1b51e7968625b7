import type { Plan } from "../core/plan/plan";
import type { LengthUnit } from "../core/plan/work";
import type { PieceName } from "../core/pattern/piece";

export function PieceDiagram(_props: { readonly piece: PieceName; readonly plan: Plan; readonly unit: LengthUnit }) {
  return null;
}
