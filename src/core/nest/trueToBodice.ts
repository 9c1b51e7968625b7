/** A basque brought to the bodice that it is sewn to. */
import { moveMouthEnd } from "../dart/mouthEnd";
import { shift } from "../geometry/point";
import { seamLength } from "../girth/seamLength";
import { pointOf, type Piece } from "../pattern/piece";
import type { Mm } from "../units";

/** Rounds of truing; each leaves a small part of the error. */
const ROUNDS = 3;

/**
 * The basque's waist seam trued to the bodice's. Blended, the two agree to well within a millimetre unless the waist
 * lies many sizes from the base size; the side seam takes the rest.
 */
export function trueToBodice(basque: Piece, wanted: Mm): Piece {
  let trued = basque;
  for (let round = 0; round < ROUNDS; round += 1) {
    const longer = seamLength(trued, "waist") - wanted;
    trued = moveMouthEnd(trued, "sideWaist", shift(pointOf(trued, "sideWaist"), -longer, 0));
  }
  return trued;
}
