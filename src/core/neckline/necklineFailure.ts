/** Why a neckline cannot be had. mm. */
import type { Mm } from "../units";

export type NecklineFailure =
  /** This bodice has no edge that such a shape could be drawn on. */
  | { readonly code: "neckline/not-on-style" }
  /**
   * It would come too near the bust point, a dart, a seam or what bounds the piece; `most` is the most that can be had of it.
   * `of`: whose depth it is. Negative: even the pattern's own depth is too much for the shape.
   */
  | { readonly code: "neckline/too-deep"; readonly most: Mm; readonly of: "front" | "back" }
  | { readonly code: "neckline/too-wide"; readonly most: Mm }
  /** How much higher it can be at the most. */
  | { readonly code: "neckline/too-high"; readonly most: Mm };
