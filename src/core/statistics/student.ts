/** Student's t and Fisher's F, as far as ranges and standings need them. */
import { normalBelow } from "./normal";

/**
 * The value that Student's t exceeds with probability 1 − p, near the middle of the distribution.
 *
 * @param z       the same quantile of the normal distribution
 * @param freedom degrees of freedom; within 0.0001 for 15 and more and |z| up to 2.6
 * @source Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.5
 */
export function studentQuantile(z: number, freedom: number): number {
  const g1 = (z ** 3 + z) / 4;
  const g2 = (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96;
  const g3 = (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / 384;
  return z + g1 / freedom + g2 / freedom ** 2 + g3 / freedom ** 3;
}

/**
 * Probability that Fisher's F with m and n degrees of freedom exceeds a value; within about 0.003.
 *
 * @source Paulson's normal approximation, as in Abramowitz and Stegun 26.6.15
 */
export function fisherAbove(value: number, m: number, n: number): number {
  if (value <= 0) return 1;
  const root = Math.cbrt(value);
  const z = (root * (1 - 2 / (9 * n)) - (1 - 2 / (9 * m))) / Math.sqrt(root ** 2 * (2 / (9 * n)) + 2 / (9 * m));
  return 1 - normalBelow(z);
}
