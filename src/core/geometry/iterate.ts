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

/** Where a function was looked at, and what it comes to there. */
export interface Looked {
  readonly at: number;
  readonly off: number;
}

/** Looks between two halvings in false position: where it does not narrow down by itself, it then does. */
const LOOKS_BY_POSITION = 3;

/**
 * Where a continuous function is nothing, between two places where it has different signs: false position, in which the end that
 * stays counts for less each time, and a halving wherever three looks have brought neither the ends nor what is found nearer by half.
 * Some seven looks where halving alone takes thirty.
 *
 * @param accuracy how near to nothing is near enough; and `apart`, how near the two places may come at the least
 * @returns the place, the nearest to nothing that was looked at
 * @source false position as improved by N. Anderson and Å. Björck, BIT 13 (1973), from memory
 */
export function zeroBetween(
  ends: readonly [Looked, Looked],
  offAt: (place: number) => number,
  { accuracy, apart }: { readonly accuracy: number; readonly apart: number },
): number {
  let [stays, last] = ends;
  let best = Math.abs(stays.off) < Math.abs(last.off) ? stays : last;
  /** What is counted of the end that stays. */
  let counted = stays.off;
  let width = Math.abs(last.at - stays.at);
  let off = Math.abs(best.off);
  for (let round = 0; round < LOOKS_BY_POSITION * NEARER_MOST_HALVINGS; round += 1) {
    const now = Math.abs(last.at - stays.at);
    if (Math.abs(best.off) < accuracy || now <= apart) break;
    const isThird = round % LOOKS_BY_POSITION === LOOKS_BY_POSITION - 1;
    const isHalved = isThird && now > width / 2 && Math.abs(best.off) > off / 2;
    if (isThird) [width, off] = [isHalved ? now / 2 : now, Math.abs(best.off)];
    const drawn = last.at - (last.off * (last.at - stays.at)) / (last.off - counted);
    const middle = (stays.at + last.at) / 2;
    const at = isHalved || !isBetween(drawn, stays.at, last.at) ? middle : drawn;
    const next = { at, off: offAt(at) };
    if (!Number.isFinite(next.off)) break;
    if (Math.abs(next.off) <= Math.abs(best.off)) best = next;
    if (next.off > 0 === last.off > 0) {
      const less = 1 - next.off / last.off;
      counted *= less > 0 ? less : 1 / 2;
    } else {
      stays = last;
      counted = last.off;
    }
    last = next;
  }
  return best.at;
}

const isBetween = (place: number, a: number, b: number): boolean => place > Math.min(a, b) && place < Math.max(a, b);
