/** Solving for the fractional size whose finished girth, measured on the pieces, is the girth wanted. */
import { fail, invariant, ok, type Result } from "../result";
import { EXTRAPOLATION_STEPS, SOLVER_ACCURACY } from "../tolerance";
import type { Mm } from "../units";

export type SolveFailure = { readonly least: Mm; readonly most: Mm };

/**
 * The size s with F(s) = wanted, F being the straight lines between the finished girths of the printed sizes, carried on
 * by the nearest grade for at most `EXTRAPOLATION_STEPS` sizes past either end.
 *
 * @param finished finished girth at each size, smallest size first; mm
 * @param near     where several sizes would do (equal or falling rows), the one nearest this index is taken
 * @returns a fractional index; or the least and the most that can be reached
 */
export function solveLevel(finished: readonly Mm[], wanted: Mm, near: number): Result<number, SolveFailure> {
  const last = finished.length - 1;
  const found: number[] = [];
  for (let i = 0; i < last; i += 1) {
    const low = invariant(finished[i], "size");
    const step = invariant(finished[i + 1], "size") - low;
    if (Math.abs(step) < SOLVER_ACCURACY) {
      if (Math.abs(wanted - low) < SOLVER_ACCURACY) found.push(Math.min(i + 1, Math.max(i, near)));
      continue;
    }
    const share = (wanted - low) / step;
    const from = i === 0 ? -EXTRAPOLATION_STEPS : 0;
    const to = i === last - 1 ? 1 + EXTRAPOLATION_STEPS : 1;
    if (share >= from && share <= to) found.push(i + share);
  }
  const nearest = found.toSorted((a, b) => Math.abs(a - near) - Math.abs(b - near))[0];
  if (nearest !== undefined) return ok(nearest);
  const reach = [girthAt(finished, -EXTRAPOLATION_STEPS), girthAt(finished, last + EXTRAPOLATION_STEPS)];
  return fail({ least: Math.min(...reach), most: Math.max(...reach) });
}

/** Rounds at the most; each leaves a small part of the error. */
const ROUNDS = 6;

/**
 * The size brought to the girth itself. Between two printed sizes a blended seam bends, and measures up to a tenth of a
 * millimetre less or more than the straight line between them.
 *
 * @param size     found by `solveLevel`
 * @param measured the finished girth at a fractional size, measured on the pieces; mm
 * @returns the size at which it measures what is wanted; the nearest met where the rows hardly differ
 */
export function settleLevel(size: number, finished: readonly Mm[], wanted: Mm, measured: (size: number) => Mm): number {
  const step = gradeAt(finished, size);
  if (Math.abs(step) < SOLVER_ACCURACY) return size;
  let best = { size, off: measured(size) - wanted };
  for (let round = 0; round < ROUNDS && Math.abs(best.off) >= SOLVER_ACCURACY; round += 1) {
    const next = best.size - best.off / step;
    const off = measured(next) - wanted;
    if (!(Math.abs(off) < Math.abs(best.off))) break;
    best = { size: next, off };
  }
  return best.size;
}

/** F at a fractional size: the straight lines through the printed sizes, carried on past the ends. */
export function girthAt(finished: readonly Mm[], size: number): Mm {
  const lower = lineBelow(finished, size);
  return invariant(finished[lower], "size") + gradeAt(finished, size) * (size - lower);
}

const lineBelow = (finished: readonly Mm[], size: number): number =>
  Math.min(Math.max(Math.floor(size), 0), finished.length - 2);

function gradeAt(finished: readonly Mm[], size: number): Mm {
  const lower = lineBelow(finished, size);
  return invariant(finished[lower + 1], "size") - invariant(finished[lower], "size");
}
