/**
 * The last truing, when all else is done: legs equal, seams smooth over shut darts and within themselves, corners square
 * at the centre and straight where pieces join, and every seam walked with what it is sewn to. What is near enough is
 * left alone; where nothing is off, the very same pieces come back. Notches stay where they are: those of seams walked
 * are checked when the seams are laid together.
 */
import type { PieceSet } from "../pattern/pieceSet";
import { mergeChanges, type TruingChange } from "./changes";
import { squareCorners, straightenJoins } from "./trueCorners";
import { equalLegs, smoothDarts, smoothSeams } from "./trueSeams";
import type { Truing } from "./truing";
import { leftOf, type TruingLeft } from "./truingLeft";
import { walkSeams } from "./walkSeams";

interface Trued {
  readonly pieces: PieceSet;
  readonly changes: readonly TruingChange[];
  /** What could not be trued; null where all came out near enough. */
  readonly left: TruingLeft | null;
}

/** One follows from the other: a seam made smooth changes its length, a seam walked its corners. */
const STEPS: readonly Truing[] = [equalLegs, smoothDarts, smoothSeams, squareCorners, straightenJoins, walkSeams];

/** Passes at the most; two or three are usual. */
const PASSES = 12;

/**
 * What blended pieces and those of redrawn darts get: darts are trued as they are made, but for what is left over where pieces
 * are sewn together. A seam blended to another size, or moved at its end, can meet the next piece at a corner.
 */
export const SEWN_ONLY: readonly Truing[] = [equalLegs, straightenJoins, walkSeams];

/**
 * Trues all pieces of a garment.
 *
 * @param steps  all of them, or those that are wanted
 * @returns the pieces, the very same objects where nothing was off; what was changed by 0.1 mm or 0.1 degrees or more; and
 *          what is still off, so that the pieces are no answer
 */
export function trueAll(pieces: PieceSet, steps: readonly Truing[] = STEPS): Trued {
  let set = pieces;
  const changes: TruingChange[] = [];
  for (let pass = 0; pass < PASSES; pass += 1) {
    const before = set;
    for (const step of steps) set = step(set, changes);
    if (set === before) break;
  }
  return { pieces: set, changes: mergeChanges(changes), left: leftOf(pieces, set) };
}
