/** What an answer costs, by our own choice; each 1 is as bad as a seam moved by 1 mm. */
import type { GiveBackPlace } from "../decisions/alteration";
import { KEPT_TO } from "../tolerance";
import type { Mm } from "../units";
import type { DartAnswer } from "./pointedDartTypes";

const COST_OF_FULLNESS = 4;
const COST_OF_SEAM = 5;
const COST_OF_BUST = 0.5;

/** A dart on another piece is cut on two sides, and the basque's with it; a lower underarm cuts the armhole, too. All others are one. */
const SEAMS_AT: Readonly<Partial<Record<GiveBackPlace, number>>> = { otherDart: 2, underarm: 2 };

/** What an answer moves: what it takes (or lets out) where, and what comes off the centre-front seam. */
interface Moves {
  readonly given: DartAnswer["given"];
  readonly offCentre: Mm;
  readonly centreNowSeam: boolean;
}

/**
 * The fullness that an answer misses (a bust is seen and a seam is not), the seams that must be cut anew, the farthest that one
 * moves, and bust girth lost, which eats ease.
 */
export function costOf(fullnessOff: Mm, { given, offCentre, centreNowSeam }: Moves): number {
  const cut = given.filter(({ amount }) => Math.abs(amount) >= KEPT_TO);
  const seams = cut.reduce((sum, { place }) => sum + (SEAMS_AT[place] ?? 1), centreNowSeam ? 1 : 0);
  const farthest = Math.max(Math.abs(offCentre), ...given.map(({ amount }) => Math.abs(amount)));
  return (
    COST_OF_FULLNESS * Math.abs(fullnessOff) + COST_OF_SEAM * seams + farthest + COST_OF_BUST * 2 * Math.abs(offCentre)
  );
}
