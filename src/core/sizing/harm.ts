/**
 * What a way to cut a body harms, in millimetres of bust that would have to be taken in: the one sum that base size, cup and
 * bust alteration are picked by. The order of its parts is common practice, its weights are our own choice; no source.
 */
import { BUST_LEFT_ALONE } from "../tolerance";
import type { Mm } from "../units";
import { expectedAbove, NORMAL_PEAK } from "../statistics/normal";
import type { Taken } from "./sizing";

const HARM = {
  /** A mm that the upper chest lies off the base size's own: neck, shoulder and armhole go with it, and no seam takes them in. */
  frame: 0.75,
  /** A mm more for each that it lies outside the base size's interval: a neighbour is nearer there. */
  frameOutside: 8,
  /** That the bust is altered at all: the front is cut up, its darts are drawn anew. */
  altered: 15,
  /** A mm let in at the bust. */
  full: 1.25,
  /** A mm taken out: easier than letting in. */
  small: 1,
  /** A mm that the garment is cut wider or tighter than asked; never less than altering it, or nothing would be altered. */
  left: 1.25,
  /** A mm that the true bust then turns out to be larger by, and must be let out on the toile. */
  letOut: 0.5,
  /** A mm that it turns out to be smaller by: taken in more easily. */
  takenIn: 0.25,
} as const;

/** A base size's upper chest, and the interval in which no other is nearer; mm. */
export interface SizeInterval {
  readonly upperChest: Mm;
  readonly from: Mm;
  readonly to: Mm;
}

/** Expected harm of a base size for an upper chest known to its spread. */
export function frameHarm({ value, spread }: Taken, { upperChest, from, to }: SizeInterval): number {
  const off = expectedAbove(value - upperChest, spread) + expectedAbove(upperChest - value, spread);
  const outside = expectedAbove(value - to, spread) + expectedAbove(from - value, spread);
  return HARM.frame * off + HARM.frameOutside * outside;
}

/** What is altered at the bust: nothing up to `BUST_LEFT_ALONE`, else the whole. */
export const alterationFor = (residual: Mm): Mm => (Math.abs(residual) <= BUST_LEFT_ALONE ? 0 : residual);

/**
 * Expected harm at the bust. The alteration goes by what was read, so what is altered and what is left are certain; what the
 * true bust will ask for on the toile is not.
 *
 * @param residual   body bust less the pattern's bust, as read
 * @param alteration what is let in (negative: taken out)
 * @param spread     one standard deviation of the bust read
 */
export function bustHarm(residual: Mm, alteration: Mm, spread: Mm): number {
  const left = residual - alteration;
  const made =
    alteration === 0 ? 0 : HARM.altered + (alteration > 0 ? HARM.full * alteration : -HARM.small * alteration);
  return made + HARM.left * Math.abs(left) + toileHarm(left, spread);
}

const toileHarm = (left: Mm, spread: Mm): number => {
  const letOut = left === 0 ? spread * NORMAL_PEAK : expectedAbove(left, spread);
  return HARM.letOut * letOut + HARM.takenIn * (letOut - left);
};
