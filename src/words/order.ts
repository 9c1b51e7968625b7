/** The order of the alterations in words: what the trade does first and why, and what two alterations both move. */
import type { Phase } from "../core/decisions/tradeOrder";
import type { AlterationConflict } from "../core/plan/alterationConflicts";
import { pieceWords, seamWords } from "./terms/names";
import { listWords } from "./terms/language";

const DONE: Readonly<Record<Phase, string>> = {
  widthsTraced: "the sizes are blended",
  length: "the length is changed",
  bust: "the bust is adjusted",
  darts: "the darts are done",
  widths: "the widths are changed",
  edges: "the edges are finished",
};

const FIRST: Readonly<Record<Phase, string>> = {
  widthsTraced: "blends first, because the printed lines lie true only until the tissue is cut",
  length: "does length first, because every other amount is measured at a level that a change of length moves",
  bust: "does the bust before, because it moves the side seam and the darts with it",
  darts: "does the darts before, because a dart moved changes how wide the seam it opens on is",
  widths: "does widths before, because edges are only drawn to where the width ends",
  edges: "does edges last of all",
};

/** "Made before the length is changed: the trade does length first, because …". */
export const orderNote = (later: Phase): string => `Made before ${DONE[later]}: the trade ${FIRST[later]}.`;

/** "Also moves the side seam of the front and the back: see “Shorten the bodice by 10 mm”." */
export function conflictNote(conflicts: readonly Pick<AlterationConflict, "piece" | "seam">[], other: string): string {
  // The centre line is named by its piece already.
  const named = conflicts.map(({ piece, seam }) => ({
    piece,
    words: seamWords(seam, piece),
    isCentre: seam === "centre",
  }));
  const seams = [...new Set(named.map(({ words }) => words))].map((words) => {
    const own = named.filter((one) => one.words === words);
    const pieces = [...new Set(own.map(({ piece }) => `the ${pieceWords(piece)}`))];
    return own.some(({ isCentre }) => isCentre) ? `the ${words}` : `the ${words} of ${listWords(pieces)}`;
  });
  return `Also moves ${listWords(seams)}: see “${other}”.`;
}
