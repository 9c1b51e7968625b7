/**
 * The two basques brought to what they are sewn to: each waist seam to the bodice's, their side seams to one length. Their
 * darts are not equally long, and so their waists not equally curved; blended, each side seam bends by its own width; and a
 * waist trued to the bodice moves its corner by an amount of its own. Each adds up to some tenths of a millimetre between the
 * side seams of front and back.
 */
import { seamLength } from "../girth/seamLength";
import type { Piece } from "../pattern/piece";
import type { Mm } from "../units";
import { fitCorner } from "./fitCorner";
import { withSeamEnd } from "./walkAgain";

interface Basque {
  readonly piece: Piece;
  /** Finished waist of the half bodice that it is sewn to. */
  readonly waist: Mm;
}

/** Front and back, the side seams at their mean; it is taken up between waist and hip, so that the hip lines still meet. */
export function walkBasques(front: Basque, back: Basque): { readonly front: Piece; readonly back: Piece } {
  const side = (seamLength(front.piece, "side") + seamLength(back.piece, "side")) / 2;
  return { front: walked(front, side), back: walked(back, side) };
}

const walked = ({ piece, waist }: Basque, side: Mm): Piece =>
  fitCorner(piece, "sideWaist", [
    { seam: "waist", length: waist },
    { seam: "side", length: side },
  ]) ?? withSeamEnd(piece, "side", "sideHem", side);
