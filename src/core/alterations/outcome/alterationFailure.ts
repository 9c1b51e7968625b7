/** Why an alteration could not be made. */
import type { MouthFailure } from "../../dart/mouthFailure";
import type { DartRef, PieceName } from "../../pattern/piece";
import type { Mm } from "../../units";

/** Why a slip could not be applied. The pieces are then as without it. */
export type SlipFailure =
  /** The style has no such seam or place. */
  | { readonly code: "slip/not-on-this-style" }
  /** `most`: the nearest amount that works, with its sign. */
  | { readonly code: "slip/too-much"; readonly most: Mm }
  /** The outline would cross itself or an edge become too short. */
  | { readonly code: "slip/outline-spoilt"; readonly piece: PieceName }
  /** There is no free name left for another dart on that seam. */
  | { readonly code: "slip/too-many-darts" }
  | { readonly code: "slip/no-such-dart"; readonly dart: DartRef }
  | MouthFailure
  | { readonly code: "slip/end-outside-piece"; readonly most: Mm }
  | { readonly code: "slip/too-short"; readonly most: Mm }
  | { readonly code: "slip/shares-not-whole"; readonly sum: number }
  /** What would still be left over after as much as the chosen places can take. */
  | { readonly code: "slip/not-given-back"; readonly left: Mm }
  | { readonly code: "slip/not-this-dart"; readonly dart: DartRef }
  | { readonly code: "slip/bust-reduction-too-large"; readonly most: Mm };
