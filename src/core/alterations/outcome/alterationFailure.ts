/** Why an alteration could not be made. */
import type { MouthFailure } from "../../dart/mouthFailure";
import type { DartRef, PieceName, SeamName } from "../../pattern/piece";
import type { Mm } from "../../units";

/** Why an alteration could not be applied. The pieces are then as without it. */
export type AlterationFailure =
  /** The style has no such seam or place. */
  | { readonly code: "alteration/not-on-this-style" }
  /** `most`: the nearest amount that works, with its sign. */
  | { readonly code: "alteration/too-much"; readonly most: Mm }
  /** The outline would cross itself or an edge become too short. */
  | { readonly code: "alteration/outline-spoilt"; readonly piece: PieceName }
  /** A point would lie further out than any of a bodice does; `reach` is not finite where it would lie nowhere. */
  | {
      readonly code: "alteration/out-of-reach";
      readonly piece: PieceName;
      readonly reach: Mm;
      readonly furthest: Mm;
    }
  /** The pieces could be made, but not trued to be sewn together: `off` stays over at the seam. */
  | { readonly code: "alteration/not-trued"; readonly piece: PieceName; readonly seam: SeamName; readonly off: Mm }
  /** Made on one half alone: its centre seam is `off` longer or shorter then than the other half's, and cannot be sewn to it. */
  | { readonly code: "alteration/halves-apart"; readonly piece: PieceName; readonly seam: SeamName; readonly off: Mm }
  /**
   * Made on one half alone, it gives that half this piece, which the other has not: sheets, cloth and lining are cut by one list
   * of pieces for both.
   */
  | { readonly code: "alteration/other-pieces"; readonly piece: PieceName }
  /** There is no free name left for another dart on that seam. */
  | { readonly code: "alteration/too-many-darts" }
  | { readonly code: "alteration/no-such-dart"; readonly dart: DartRef }
  | MouthFailure
  | { readonly code: "alteration/end-outside-piece"; readonly most: Mm }
  | { readonly code: "alteration/too-short"; readonly most: Mm }
  | { readonly code: "alteration/shares-not-whole"; readonly sum: number }
  /** What would still be left over after as much as the chosen places can take. */
  | { readonly code: "alteration/not-given-back"; readonly left: Mm }
  | { readonly code: "alteration/not-this-dart"; readonly dart: DartRef }
  /** Of the whole bust change that she asked for; less than nothing: taken out. */
  | { readonly code: "alteration/bust-too-much"; readonly asked: Mm; readonly most: Mm };
