/** The normal distribution turned round: from a probability to the value that lies above it. */
import { CoreBug } from "../result";

/** Numerator and denominator, the constant first, of the middle, of the shoulders and of the far ends. */
const MIDDLE = [
  [3.3871327179, 50.434271938, 159.29113202, 59.10937472],
  [1, 17.895169469, 78.757757664, 67.1875636],
] as const;
const SHOULDER = [
  [1.4234372777, 2.75681539, 1.3067284816, 0.17023821103],
  [1, 0.7370016425, 0.12021132975],
] as const;
const FAR = [
  [6.657905115, 3.081226386, 0.42868294337, 0.017337203997],
  [1, 0.24197894225, 0.012258202635],
] as const;

const horner = (coefficients: readonly number[], x: number): number =>
  coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);
const ratio = ([over, under]: readonly [readonly number[], readonly number[]], x: number): number =>
  horner(over, x) / horner(under, x);

/**
 * The value below which a standard normal one lies with probability p; good to about 1 part in 10⁷.
 *
 * @param p between 0 and 1, neither included
 * @throws CoreBug for any other p
 * @source algorithm AS 241 of Applied Statistics 37 (1988), its shorter routine; coefficients from memory, held against
 *   the table of the normal distribution in the tests
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new CoreBug(`no probability: ${p}`);
  const off = p - 0.5;
  if (Math.abs(off) <= 0.425) return off * ratio(MIDDLE, 0.180625 - off * off);
  const tail = Math.sqrt(-Math.log(Math.min(p, 1 - p)));
  const size = tail <= 5 ? ratio(SHOULDER, tail - 1.6) : ratio(FAR, tail - 5);
  return off < 0 ? -size : size;
}
