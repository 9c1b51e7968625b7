/** Which seam of a piece opens, as its lining has to make room for. */
import type { Half } from "../decisions/alteration";
import type { Closure } from "../decisions/pattern";
import type { Piece, SeamName } from "../pattern/piece";
import { isFrontPiece } from "../pattern/pieceGroups";

/** Of one half: at the centre back of either, or at the side of the left one alone; null: it stays shut. */
export type OpenAt = Closure["place"] | null;

export const openAt = (half: Half, { place }: Closure): OpenAt => (place === "side" && half === "right" ? null : place);

/** null where no seam of the piece opens. */
export function openSeamOf({ name, centreOnFold, edges }: Piece, at: OpenAt): SeamName | null {
  if (at === "side") return edges.some(({ seam }) => seam === "side") ? "side" : null;
  return at === "centreBack" && !centreOnFold && !isFrontPiece(name) && edges.some(({ seam }) => seam === "centre")
    ? "centre"
    : null;
}
