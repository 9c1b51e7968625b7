/** The upper edge redrawn on the plan's own pieces. mm. */
import type { Neckline } from "../decisions/dress";
import type { PieceSet } from "../pattern/pieceSet";
import { ok, type Result } from "../result";
import type { Mm } from "../units";

/** How an edge will stand off this body, and what cures it. */
export interface NecklineGape {
  /** mm of the edge of one half that has no body to lie on. */
  readonly gape: Mm;
  /** Pinched out of it, where that was chosen. */
  readonly pinched: Mm;
}

export interface RedrawnNeckline {
  readonly pieces: PieceSet;
  /** Finished edge of this half before and after. */
  readonly before: Mm;
  readonly after: Mm;
  readonly front: NecklineGape;
  readonly back: NecklineGape;
}

export type NecklineFailure =
  /** This bodice has no edge that such a shape could be drawn on. */
  | { readonly code: "neckline/not-on-style" }
  /** It would come nearer than `least` to the bust point, a dart or the armhole. */
  | { readonly code: "neckline/too-deep"; readonly most: Mm }
  | { readonly code: "neckline/too-wide"; readonly most: Mm }
  | { readonly code: "neckline/too-high"; readonly most: Mm };

/** @param pieces the final pieces of one half */
export function redrawNeckline(pieces: PieceSet, _neckline: Neckline): Result<RedrawnNeckline, NecklineFailure> {
  return ok({ pieces, before: 0, after: 0, front: { gape: 0, pinched: 0 }, back: { gape: 0, pinched: 0 } });
}
