import type { PieceReading } from "../../core/ownPieces/ownReading";

/** The size that a piece's corners are shown in: the chosen one where the piece has it, else the middle one. */
export function sizeShown({ sizes }: PieceReading, chosen: string | null): string {
  const has = sizes.some(({ size }) => size === chosen);
  return chosen !== null && has ? chosen : (sizes[Math.floor(sizes.length / 2)]?.size ?? "");
}
