/** A long random search for a lay, to hold the planner's against. */
import type { Prepared } from "../../src/core/cloth/layPrepared";
import { layPrepared } from "../../src/core/cloth/layPrepared";

/** mm: the shortest lay found by searches from many other rows of choices, each far longer than the planner's, within so many ms. */
export function longSearch(prepared: Prepared, ms: number, seed: number): number {
  const end = performance.now() + ms;
  let best = Infinity;
  for (let round = 1; performance.now() < end; round++) {
    const { length } = layPrepared(prepared, { seed: seed * 1000 + round, effort: 1 + (round % 4) });
    best = Math.min(best, length);
  }
  return best;
}
