/** The pieces of the bodice as parts to be cut. */
import type { EdgesDraft } from "../edges/edgesDraft";
import { partsOfHalves } from "../parts/halfParts";
import type { PiecePart } from "../parts/part";
import { piecesOf, type PieceSet } from "../pattern/pieceSet";
import type { Half } from "../decisions/alteration";
import type { Piece } from "../pattern/piece";

/** A strap that was drafted anew takes the place of the pattern's. */
export function bodiceParts([left, right]: readonly [PieceSet, PieceSet], { strap }: EdgesDraft): readonly PiecePart[] {
  return piecesOf(left)
    .filter(({ name }) => name !== "strap" || strap === null)
    .flatMap((piece) => partsOfHalves(piece, right[piece.name] ?? null, partOf));
}

function partOf(piece: Piece, half: Half | null): PiecePart {
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
