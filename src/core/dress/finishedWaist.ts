/** The waist seam of the finished bodice, measured on its pieces. */
import { seamLength } from "../girth/seamLength";
import type { FinishedWaist, WaistHalf } from "../parts/dressBody";
import { isBasque, isFrontPiece } from "../pattern/pieceGroups";
import { piecesOf, type PieceSet } from "../pattern/pieceSet";

/** @param bodice the wearer's left half first; the very same object twice where they are alike */
export function finishedWaist([left, right]: readonly [PieceSet, PieceSet]): FinishedWaist {
  const one = halfOf(left);
  const other = right === left ? one : halfOf(right);
  return { halves: [one, other], whole: one.front + one.back + other.front + other.back };
}

function halfOf(pieces: PieceSet): WaistHalf {
  const waists = piecesOf(pieces)
    .filter(({ name }) => !isBasque(name))
    .map((piece) => ({ isFront: isFrontPiece(piece.name), length: seamLength(piece, "waist") }));
  const sumOf = (isFront: boolean) =>
    waists.filter((waist) => waist.isFront === isFront).reduce((sum, { length }) => sum + length, 0);
  return { front: sumOf(true), back: sumOf(false) };
}
