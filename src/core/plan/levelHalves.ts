/**
 * Halves that are cut in two cup versions, or altered for the bust by what each can take, are brought together at the centre
 * front: a fuller cup makes it longer.
 */
import { untouched } from "../alterations/outcome/applied";
import type { AlterationTrace } from "../alterations/outcome/trace";
import { lowerAbove } from "../alterations/fit/waistWedge";
import { centreOff } from "../girth/centreSeams";
import type { PieceSet } from "../pattern/pieceSet";
import { SOLVER_ACCURACY } from "../tolerance";
import type { Mm } from "../units";

/** Rounds in which the amount settles: the centre gets very nearly what the wedge is given. */
const ROUNDS = 6;

export interface Levelled {
  readonly pieces: PieceSet;
  /** null: it was the longer one. */
  readonly level: HalfLevelled | null;
}

/** What was let in at the centre, nothing at the side seam, and how that is done. */
export interface HalfLevelled {
  readonly amount: Mm;
  readonly trace: AlterationTrace;
}

/**
 * The shorter centre lengthened to the longer, by a wedge just above the waist: cloth can be taken off on the toile, not put to
 * it (our own choice).
 */
export function levelHalves(
  left: PieceSet,
  right: PieceSet,
  of: "front" | "back",
): { readonly left: Levelled; readonly right: Levelled } {
  const off = centreOff(left, right, of);
  if (Math.abs(off) <= SOLVER_ACCURACY)
    return { left: { pieces: left, level: null }, right: { pieces: right, level: null } };
  const lengthen = (shorter: PieceSet, longer: PieceSet): Levelled => {
    const amount = Math.abs(off);
    let given = amount;
    let made = lowerAbove(shorter, of, given);
    for (let round = 0; round < ROUNDS; round += 1) {
      const lacks = centreOff(longer, made.pieces, of);
      if (Math.abs(lacks) <= SOLVER_ACCURACY) break;
      given += lacks;
      made = lowerAbove(shorter, of, given);
    }
    const { pieces, traces, values } = made;
    const piece = traces[0]?.piece ?? of;
    return { pieces, level: { amount, trace: { ...untouched(piece, shorter, pieces), surgery: traces, values } } };
  };
  return off < 0
    ? { left: lengthen(left, right), right: { pieces: right, level: null } }
    : { left: { pieces: left, level: null }, right: lengthen(right, left) };
}
