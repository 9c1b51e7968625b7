/** The places to lay a tape on the tissue of a pattern, each with the line that it is laid along. */
import type { TissueLength } from "../decisions/tissue";
import type { EdgeCurve } from "../geometry/edgeCurve";
import { setOf } from "../pattern/pieceSet";
import type { PieceName } from "../pattern/piece";
import { invariant } from "../result";
import type { Mm } from "../units";
import { orderOfPlaces, type TissueInputs } from "./fitToTissue";
import { measureTissue, tapeWay } from "./tapeWays";

export interface TissuePlace {
  readonly piece: PieceName;
  readonly length: TissueLength;
  /** Where the tape lies, in the frame of the piece, its strokes one after the other: a straight one, or the edges of a seam. */
  readonly way: readonly EdgeCurve<"piece">[];
  /** As the pieces given have it. */
  readonly standIn: Mm;
}

/**
 * The lengths that the pieces of a pattern have, what matters most for the plan first: for the doubt of its finished girths, the
 * bust point and the darts.
 *
 * @param nest      as printed, in one cup
 * @param sizeIndex the size whose line is measured
 */
export function tissuePlaces(inputs: Omit<TissueInputs, "tissue">): readonly TissuePlace[] {
  const { nest, sizeIndex } = inputs;
  const pieces = setOf(nest.sizes[sizeIndex] ?? []);
  const next = setOf(nest.sizes[sizeIndex + 1] ?? []);
  return orderOfPlaces(inputs).map(({ piece, length }): TissuePlace => {
    const own = invariant(pieces[piece], piece);
    return {
      piece,
      length,
      way: invariant(tapeWay(own, length, next[piece]), length),
      standIn: invariant(measureTissue(own, length, next[piece]), length),
    };
  });
}
