/** A piece of both halves as parts: how often it is cut depends on whether they are alike, and whether they hang together. */
import type { Half } from "../decisions/alteration";
import type { Piece } from "../pattern/piece";
import { isSamePiece } from "../pattern/pieceSet";
import type { Part, PiecePart } from "./part";

/**
 * Halves that are alike are one part. Those that differ are two, but where a fold joins them: that is one piece, cut open.
 *
 * @param right of the other half; null: both are cut by the left one
 */
export function partsOfHalves<P extends PiecePart>(
  left: Piece,
  right: Piece | null,
  partOf: (piece: Piece, half: Half | null) => P,
): readonly P[] {
  if (right === null || isSamePiece(left, right)) return [partOf(left, null)];
  if (!left.centreOnFold) return [partOf(left, "left"), partOf(right, "right")];
  const open = partOf(left, null);
  return [{ ...open, cut: { ...open.cut, onFold: false }, otherHalf: right }];
}

/** As it is drawn on paper, which has halves that differ apart, each with its centre line where the other is joined. */
export function drawnHalves(part: PiecePart): readonly PiecePart[] {
  const { otherHalf, ...left } = part;
  if (otherHalf === undefined) return [part];
  const cut = { ...part.cut, onFold: true };
  return [
    { ...left, key: `${part.key}-left`, cut, half: "left" },
    { ...left, key: `${part.key}-right`, cut, half: "right", piece: otherHalf },
  ];
}

/** All pieces among parts, halves that differ apart. */
export const drawnPieces = (parts: readonly Part[]): readonly PiecePart[] =>
  parts.flatMap((part) => (part.kind === "piece" ? drawnHalves(part) : []));
