/** Zeros of a polynomial given by its four Bernstein ordinates: one coordinate of a cubic Bézier, in mm. */
import { COORDINATE_NOISE, PARAMETER_ACCURACY } from "../tolerance";
import type { Mm } from "../units";

/** Newton with a bisection to fall back on: 60 halvings of 0..1 are finer than a double can tell apart. */
const MOST_STEPS = 60;

/** The value at parameter t of the cubic with ordinates f0..f3. */
export function cubicValue(f0: number, f1: number, f2: number, f3: number, t: number): number {
  const s = 1 - t;
  return s * s * (s * f0 + 3 * t * f1) + t * t * (3 * s * f2 + t * f3);
}

/**
 * The parameters strictly within 0..1 at which the cubic with ordinates f0..f3 turns (its slope is 0), in order.
 *
 * @source the quadratic formula in the form that does not cancel: Numerical Recipes, 5.6
 */
export function cubicTurns(f0: number, f1: number, f2: number, f3: number): readonly number[] {
  const d0 = f1 - f0;
  const d1 = f2 - f1;
  const d2 = f3 - f2;
  if ((d0 >= 0 && d1 >= 0 && d2 >= 0) || (d0 <= 0 && d1 <= 0 && d2 <= 0)) return [];
  const a = d0 - 2 * d1 + d2;
  const b = 2 * (d1 - d0);
  const discriminant = b * b - 4 * a * d0;
  if (discriminant < 0) return [];
  const q = -(b + (b < 0 ? -1 : 1) * Math.sqrt(discriminant)) / 2;
  const turns = [q / a, d0 / q].filter((t) => t > 0 && t < 1);
  const [first, second] = turns;
  return first !== undefined && second !== undefined && second < first ? [second, first] : turns;
}

/**
 * The parameters within 0..1 at which the cubic with ordinates f0..f3 (mm) is 0, in order, without doubles.
 *
 * A turn or an end that comes within `touch` mm of 0 without crossing it counts as well. A cubic that stays within
 * `touch` of 0 throughout gives its two ends.
 *
 * @source each stretch between two turns is monotone, so it holds one zero where its ends differ in sign
 */
export function cubicZeros(f0: Mm, f1: Mm, f2: Mm, f3: Mm, touch: Mm): readonly number[] {
  if (Math.min(f0, f1, f2, f3) > touch || Math.max(f0, f1, f2, f3) < -touch) return [];
  if (Math.abs(f0) <= touch && Math.abs(f1) <= touch && Math.abs(f2) <= touch && Math.abs(f3) <= touch) return [0, 1];
  const zeros: number[] = [];
  let beforeCrosses = false;
  let beforeValue = Infinity;
  let t = 0;
  let value = withoutNoise(f0);
  for (const nextT of [...cubicTurns(f0, f1, f2, f3), 1, 2]) {
    // The round for 2 handles the end at 1, which nothing follows.
    const nextValue = nextT === 2 ? Infinity : withoutNoise(nextT === 1 ? f3 : cubicValue(f0, f1, f2, f3, nextT));
    const crosses = nextT !== 2 && value !== 0 && nextValue !== 0 && value < 0 !== nextValue < 0;
    const size = Math.abs(value);
    const touches = size <= touch && !beforeCrosses && !crosses && size < beforeValue && size <= Math.abs(nextValue);
    if (touches || (value === 0 && beforeValue > 0)) zeros.push(t);
    if (crosses) zeros.push(zeroBetween(f0, f1, f2, f3, t, nextT));
    beforeCrosses = crosses;
    beforeValue = size;
    t = nextT;
    value = nextValue;
  }
  return zeros;
}

// A turn that rounding pushes just across 0 would else count as two crossings beside each other.
const withoutNoise = (value: Mm): Mm => (Math.abs(value) <= COORDINATE_NOISE ? 0 : value);

/** The zero on a monotone stretch whose ends differ in sign. */
function zeroBetween(f0: number, f1: number, f2: number, f3: number, from: number, to: number): number {
  const rises = cubicValue(f0, f1, f2, f3, to) > 0;
  let low = from;
  let high = to;
  let t = (from + to) / 2;
  for (let step = 0; step < MOST_STEPS; step++) {
    const value = cubicValue(f0, f1, f2, f3, t);
    if (value === 0) return t;
    if (value > 0 === rises) high = t;
    else low = t;
    const s = 1 - t;
    const slope = 3 * (s * s * (f1 - f0) + 2 * s * t * (f2 - f1) + t * t * (f3 - f2));
    const newton = t - value / slope;
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - t) <= PARAMETER_ACCURACY) return next;
    t = next;
  }
  return t;
}
