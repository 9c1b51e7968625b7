/** Blended side seams lean more or less than printed ones: where they meet other pieces at a corner, they are made straight. */
import { seamLength } from "../girth/seamLength";
import { piecesOf, setOf, type PieceSet } from "../pattern/pieceSet";
import type { Piece } from "../pattern/piece";
import { fitCorner } from "../surgery/fitCorner";
import { SOLVER_ACCURACY } from "../tolerance";
import { SEWN_ONLY, trueAll } from "../truing/trueAll";

/** Corners within what is usual are left; a waist keeps its length, though a line of it is bent. */
export function joinBlended(pieces: PieceSet): PieceSet {
  const trued = trueAll(pieces, SEWN_ONLY).pieces;
  return trued === pieces ? pieces : setOf(piecesOf(trued).map((piece) => withWaistOf(piece, pieces[piece.name])));
}

function withWaistOf(piece: Piece, before: Piece | undefined): Piece {
  if (before === undefined || before === piece || piece.points.sideWaist === undefined) return piece;
  const [waist, side] = [seamLength(before, "waist"), seamLength(piece, "side")];
  if (Math.abs(seamLength(piece, "waist") - waist) < SOLVER_ACCURACY) return piece;
  return (
    fitCorner(piece, "sideWaist", [
      { seam: "waist", length: waist },
      { seam: "side", length: side },
    ]) ?? piece
  );
}
