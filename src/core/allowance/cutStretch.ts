/** A piece of the line all round, with what lies outside it. */
import type { EdgeCurve } from "../geometry/edgeCurve";
import type { PiecePoint } from "../geometry/point";
import type { SeamName } from "../pattern/piece";
import type { Mm } from "../units";

export interface Stretch {
  readonly curve: EdgeCurve<"piece">;
  readonly seam: SeamName;
  readonly allowance: Mm;
  /** On the fold of the cloth: never cut. */
  readonly fold: boolean;
  /** Part of the cap across a dart's mouth. */
  readonly cap: boolean;
  /** Where it ends at the tip of a cap: how it would go on, and the dart's end, from which the dart's middle runs to the tip. */
  readonly tip?: { readonly beyond: readonly EdgeCurve<"piece">[]; readonly apex: PiecePoint };
}
