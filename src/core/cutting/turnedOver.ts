/** Which halves of a body a piece is drawn for, and which are turned over. */
import type { Half } from "../decisions/alteration";
import type { PieceName } from "../pattern/piece";
import { isFrontPiece } from "../pattern/pieceGroups";

/**
 * Pieces are drawn with the centre line at the left. Printed side up on the right side of the cloth, a front is then the
 * wearer's left half and a back her right half; the others are turned over.
 */
export const isTurnedOver = (name: PieceName, half: Half | null): boolean =>
  half !== null && (half === "left") !== (isFrontPiece(name) || name === "strap");
