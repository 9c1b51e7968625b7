/** Which halves of a body a piece is drawn for, and which are turned over. */
import type { Half } from "../decisions/alteration";
import type { PieceName } from "../pattern/piece";
import type { PartGroup } from "../parts/part";
import { isFrontPiece } from "../pattern/pieceGroups";

/**
 * Pieces are drawn with the centre line at the left. Printed side up on the right side of the cloth, a front is then the
 * wearer's left half and a back her right half; the others are turned over.
 */
export const isTurnedOver = (name: PieceName, half: Half | null): boolean =>
  half !== null && (half === "left") !== (isFrontPiece(name) || name === "strap");

/** The right side of these looks at the body: what is for her left half is drawn as the shell of her right one. */
export const FACES_BODY: ReadonlySet<PartGroup> = new Set(["bodiceLining", "skirtLining", "facing"]);

/** The same of any part of a dress. */
export const isPartTurnedOver = (group: PartGroup, name: PieceName, half: Half | null): boolean =>
  half !== null && isTurnedOver(name, half) !== FACES_BODY.has(group);
