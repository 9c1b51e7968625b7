/**
 * A girth out of keeping with the others, as they go together in the survey itself: not so far that a misreading is the
 * likelier, yet so far that one more reading costs less than lines and alterations by a wrong one. It is asked for once more,
 * and no mistake is named.
 */
import type { MeasureName } from "../measures/measure";
import { invariant } from "../result";
import { dot, entry } from "../statistics/linear";
import type { Foretold, Known } from "./bodyModel";
import { SURVEYED_BODIES, TAPED_BODIES } from "./bridges";
import { inverseOf } from "./openBodies";

/**
 * Standard deviations from what the others foretell beyond which one more reading is asked for, of the girths that sizes and
 * lines are picked by. A bust adjustment is made for all that a bust is out, a waist line lies but a little further out or in;
 * so the bust is asked about sooner than the waist, and the hip, of which the others tell least, soonest of all. Chosen on the
 * women that the survey was fitted to, by nothing but them: of all steps of 0.02 by which at most two in a hundred of them are
 * asked anything in vain, those that leave most over 80, 65 and 42 of a hundred busts, waists and hips read 100 mm out, the
 * worst of the three counting, and of equals those that ask least (DEVELOPERS.md).
 */
const ONCE_MORE: Readonly<Partial<Record<MeasureName, number>>> = { bustGirth: 3.02, waistGirth: 3.14, hipGirth: 2.82 };

/** Any of these may be the one that is out; the furthest out is asked for. */
const GIRTHS: readonly MeasureName[] = ["bustGirth", "upperChestGirth", "underBustGirth", "waistGirth", "hipGirth"];

/** Whether a bust is in keeping is told by what lies above and below it, not by waist and hip. */
const BESIDE_BUST: readonly MeasureName[] = ["upperChestGirth", "underBustGirth"];

/** With fewer others than this nothing is out of keeping. */
const FEWEST_OTHERS = 2;

/**
 * Squared distance of the others from the middle of the survey, for each of them, beyond which it knows too few like them:
 * one in a hundred of its women lies further out. From there on doubts grow fewer with the distance. Our own choice.
 */
const FEW_LIKE_IT = 3;

export interface OutOfKeeping {
  readonly at: number;
  /** Its logarithm, as the others foretell it. */
  readonly foretold: Foretold;
}

/**
 * The one reading to take once more, or null.
 *
 * @param read   what was read, each with the variance of its logarithm
 * @param stands whether a reading stands already, taken again or said to be right
 */
export function outOfKeeping(read: readonly Known[], stands: (measure: MeasureName) => boolean): OutOfKeeping | null {
  const known = read.filter(({ measure }) => SURVEYED_BODIES.measures.includes(measure));
  if (known.length <= FEWEST_OTHERS) return null;
  const names = known.map(({ measure }) => measure);
  const hasBeside = names.some((name) => BESIDE_BUST.includes(name));
  const places = awayFrom(known);
  const isAsked = ({ measure, away }: Away): boolean => {
    const limit = ONCE_MORE[measure];
    return limit !== undefined && Math.abs(away) > limit && !stands(measure) && (measure !== "bustGirth" || hasBeside);
  };
  if (!places.some(isAsked)) return null;
  const furthest = places
    .filter(({ measure }) => GIRTHS.includes(measure) && !stands(measure))
    .reduce((a, b) => (Math.abs(b.away) > Math.abs(a.away) ? b : a));
  return { at: read.findIndex(({ measure }) => measure === furthest.measure), foretold: furthest.foretold };
}

interface Away {
  readonly measure: MeasureName;
  /** In standard deviations of what the others foretell. */
  readonly away: number;
  readonly foretold: Foretold;
}

/**
 * How far each reading lies from what the others foretell, the survey's women moved to a dressmaker's tape by the middle of
 * each bridge, without the doubt of it.
 *
 * @source conditionals of a normal distribution from the inverse P of its scatter: (P r)ᵢ/Pᵢᵢ off, 1/Pᵢᵢ the variance (from
 *   memory, held against `conditionOn`)
 */
function awayFrom(known: readonly Known[]): readonly Away[] {
  const surveyed = known.map(({ measure }) => SURVEYED_BODIES.measures.indexOf(measure));
  const inverse = inverseOf(
    surveyed.map((row, i) =>
      surveyed.map(
        (column, j) =>
          entry(SURVEYED_BODIES.scatter, row, column) + (i === j ? invariant(known[i], "read").variance : 0),
      ),
    ),
  );
  const off = known.map(
    ({ measure, log }) => log - invariant(TAPED_BODIES.middle[TAPED_BODIES.measures.indexOf(measure)], "middle"),
  );
  const pulled = inverse.map((row) => dot(row, off));
  const distance = dot(off, pulled);
  return known.map(({ measure, log }, i) => {
    const own = entry(inverse, i, i);
    const pull = invariant(pulled[i], "pull");
    const others = Math.max(0, distance - pull ** 2 / own) / (known.length - 1);
    const scale = Math.max(1, Math.sqrt(others / FEW_LIKE_IT)) / Math.sqrt(own);
    const foretold = { middle: log - pull / own, scale, freedom: TAPED_BODIES.freedom };
    return { measure, away: pull / own / scale, foretold };
  });
}
