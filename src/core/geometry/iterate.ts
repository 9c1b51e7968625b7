/**
 * Coming nearer by rounds: every solver that redraws and measures again goes through here, so that none can go on for ever
 * or run away. What does not come near is told, and the nearest found is given.
 */
import { NEARER_MOST_SHARINGS, NEARER_MOST_HALVINGS } from "../tolerance";

export interface Settled<T> {
  readonly value: T;
  /** What it is still off by. */
  readonly miss: number;
  readonly isSettled: boolean;
}

/** What is corrected: how far off it is (signed), and the same corrected by so much; null where that cannot be made. */
export interface Correction<T> {
  readonly missOf: (value: T) => number;
  readonly correct: (value: T, by: number) => T | null;
  readonly rounds: number;
  readonly accuracy: number;
}

/**
 * Corrects until what is off is less than the accuracy. A round that makes it no better is taken back, and only half as
 * much corrected from there on: what answers too strongly would else swing further out each time.
 *
 * @returns the nearest found, and whether it is near enough; never worse than `start`
 */
export function comeNear<T>(start: T, { missOf, correct, rounds, accuracy }: Correction<T>): Settled<T> {
  let value = start;
  let miss = missOf(start);
  let share = 1;
  let sharings = 0;
  for (let round = 0; round < rounds + sharings && !(Math.abs(miss) < accuracy); round += 1) {
    const next = correct(value, share * miss);
    if (next === null) break;
    const left = missOf(next);
    if (Math.abs(left) < Math.abs(miss)) {
      value = next;
      miss = left;
    } else {
      if (sharings === NEARER_MOST_SHARINGS) break;
      share /= 2;
      sharings += 1;
    }
  }
  return { value, miss, isSettled: Math.abs(miss) < accuracy };
}

/**
 * Halves between a value that holds and one that does not until the two are within the accuracy.
 *
 * @returns the two, on either side of where it changes
 */
export function halve(
  holding: number,
  failing: number,
  accuracy: number,
  holds: (value: number) => boolean,
): { readonly holding: number; readonly failing: number } {
  let [good, bad] = [holding, failing];
  for (let round = 0; round < NEARER_MOST_HALVINGS && Math.abs(bad - good) > accuracy; round += 1) {
    const middle = (good + bad) / 2;
    if (holds(middle)) good = middle;
    else bad = middle;
  }
  return { holding: good, failing: bad };
}
