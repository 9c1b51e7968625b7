/** The pieces of a lining as parts to be cut. */
import type { Half } from "../decisions/alteration";
import type { Part, PartGroup } from "../parts/part";
import type { Piece } from "../pattern/piece";
import { isSamePiece, piecesOf, type PieceSet } from "../pattern/pieceSet";

/** Halves that are alike are cut as one. */
export function liningParts(
  [left, right]: readonly [PieceSet, PieceSet],
  group: Extract<PartGroup, "bodiceLining" | "skirtLining">,
): readonly Part[] {
  return piecesOf(left).flatMap((piece) => {
    const other = right[piece.name];
    if (left === right || other === undefined || isSamePiece(piece, other)) return [partOf(piece, null, group)];
    return [partOf(piece, "left", group), partOf(other, "right", group)];
  });
}

function partOf(piece: Piece, half: Half | null, group: PartGroup): Part {
  const onFold = piece.centreOnFold;
  return {
    kind: "piece",
    key: half === null ? `lining-${piece.name}` : `lining-${piece.name}-${half}`,
    group,
    cloth: "lining",
    cut: { onFold, count: onFold || half !== null ? 1 : 2 },
    half,
    grain: "along",
    piece,
  };
}
