/** Amounts spread evenly over a range. `fc.double` is spread over the doubles instead: nine in ten are next to nothing. */
import * as fc from "fast-check";

const STEPS_PER_UNIT = 1000;

/** Any amount in a range, to a thousandth; the bounds and 0 come up often. */
export function anyAmount(least: number, most: number): fc.Arbitrary<number> {
  const range = { min: Math.ceil(least * STEPS_PER_UNIT), max: Math.floor(most * STEPS_PER_UNIT) };
  return fc
    .oneof({ weight: 4, arbitrary: fc.noBias(fc.integer(range)) }, { weight: 1, arbitrary: fc.integer(range) })
    .map((n) => n / STEPS_PER_UNIT + 0);
}
