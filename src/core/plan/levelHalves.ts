/**
 * Halves that are cut in two cup versions, or altered for the bust by what each can take, are brought together at the centre
 * front: a fuller cup makes it longer.
 */
import { lowerAbove } from "../alterations/fit/waistWedge";
import { centreSeams } from "../girth/centreSeams";
import type { PieceSet } from "../pattern/pieceSet";
import { SOLVER_ACCURACY } from "../tolerance";
import type { Mm } from "../units";

/** Rounds in which the amount settles: the centre gets very nearly what the wedge is given. */
const ROUNDS = 6;

export interface Levelled {
  readonly pieces: PieceSet;
  /** What was let in at the centre front, nothing at the side seam. */
  readonly by: Mm;
}

/**
 * The shorter centre front lengthened to the longer, by a wedge just above the waist: cloth can be taken off on the toile, not
 * put to it (our own choice).
 */
export function levelHalves(left: PieceSet, right: PieceSet): { readonly left: Levelled; readonly right: Levelled } {
  const off = frontOff(left, right);
  const as = (pieces: PieceSet): Levelled => ({ pieces, by: 0 });
  if (Math.abs(off) <= SOLVER_ACCURACY) return { left: as(left), right: as(right) };
  return off < 0
    ? { left: lengthened(left, -off, (pieces) => -frontOff(pieces, right)), right: as(right) }
    : { left: as(left), right: lengthened(right, off, (pieces) => frontOff(left, pieces)) };
}

/** How much longer the bodice's centre front is on the left. */
const frontOff = (left: PieceSet, right: PieceSet): Mm =>
  centreSeams(left, right).find((seam) => seam.left.name === "front" || seam.left.name === "centreFront")?.off ?? 0;

/** @param lacks how much of the length wanted pieces still lack */
function lengthened(pieces: PieceSet, wanted: Mm, lacks: (pieces: PieceSet) => Mm): Levelled {
  let [given, made] = [wanted, pieces];
  for (let round = 0; round < ROUNDS; round += 1) {
    made = lowerAbove(pieces, "front", given).pieces;
    const left = lacks(made);
    if (Math.abs(left) <= SOLVER_ACCURACY) break;
    given += left;
  }
  return { pieces: made, by: wanted };
}
