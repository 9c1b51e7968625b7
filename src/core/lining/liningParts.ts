/** The pieces of a lining as parts to be cut. */
import type { Half } from "../decisions/alteration";
import { partsOfHalves } from "../parts/halfParts";
import type { PartGroup, PiecePart } from "../parts/part";
import type { Piece } from "../pattern/piece";
import { piecesOf, type PieceSet } from "../pattern/pieceSet";

/** Halves that are alike are cut as one. */
export function liningParts(
  [left, right]: readonly [PieceSet, PieceSet],
  group: Extract<PartGroup, "bodiceLining" | "skirtLining">,
): readonly PiecePart[] {
  return piecesOf(left).flatMap((piece) =>
    partsOfHalves(piece, right[piece.name] ?? null, (one, half) => partOf(one, half, group)),
  );
}

function partOf(piece: Piece, half: Half | null, group: PartGroup): PiecePart {
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
