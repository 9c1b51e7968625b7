/** What the pattern has below the waist and a skirt takes the place of. */
import type { Dress } from "../decisions/dress";
import { isBasque } from "../pattern/pieceGroups";
import type { Piece, PieceName } from "../pattern/piece";

/** Of these pieces, those that are not sewn into the dress; none where no skirt hangs on the bodice. */
export const replacedBySkirt = (dress: Dress | undefined, pieces: readonly Piece[]): readonly PieceName[] =>
  dress?.skirt === undefined ? [] : pieces.map(({ name }) => name).filter(isBasque);
