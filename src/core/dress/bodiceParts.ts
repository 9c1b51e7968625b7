/** The pieces of the bodice as parts to be cut. */
import type { EdgesDraft } from "../edges/edgesDraft";
import type { Part } from "../parts/part";
import { isSamePiece, piecesOf, type PieceSet } from "../pattern/pieceSet";
import type { Half } from "../decisions/alteration";
import type { Piece } from "../pattern/piece";

/** A strap that was drafted anew takes the place of the pattern's. */
export function bodiceParts([left, right]: readonly [PieceSet, PieceSet], { strap }: EdgesDraft): readonly Part[] {
  return piecesOf(left)
    .filter(({ name }) => name !== "strap" || strap === null)
    .flatMap((piece) => {
      const other = right[piece.name];
      if (left === right || other === undefined || isSamePiece(piece, other)) return [partOf(piece, null)];
      return [partOf(piece, "left"), partOf(other, "right")];
    });
}

function partOf(piece: Piece, half: Half | null): Part {
  const onFold = piece.centreOnFold;
  const layers = piece.name === "strap" ? 2 : 1;
  const count = onFold ? 1 : layers * (half === null ? 2 : 1);
  return {
    kind: "piece",
    key: half === null ? piece.name : `${piece.name}-${half}`,
    group: piece.name === "strap" ? "strap" : "bodice",
    cloth: "main",
    cut: { onFold, count },
    half,
    grain: "along",
    piece,
  };
}
