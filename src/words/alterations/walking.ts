/** What is to be done on a centre front about what its princess seam differs by when it is walked. */
import { walkedBy } from "../../core/alterations/fit/whatChanged";
import { HAND_AGREEMENT } from "../../core/tolerance";
import type { Mm } from "../../core/units";
import type { Altered } from "./fitWords";

/**
 * The walk, and how the centre front is brought to the side front's length; `{walked}` is how much.
 *
 * @param longer what its centre became longer by of itself (negative: shorter)
 */
export function walkingTold({ trace }: Altered, longer: Mm): string {
  const walk = "Walk the princess seam against the side front's";
  const by = walkedBy(trace.before, trace.after, longer);
  if (Math.abs(by) < HAND_AGREEMENT) return `${walk}: they come out equal.`;
  return by < 0
    ? `${walk}: the centre front is {walked} too long. Fold that out straight across at the bust line.`
    : `${walk}: the centre front is {walked} too short. Cut straight across at the bust line and let it in there.`;
}
