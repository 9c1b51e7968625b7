/** A plan in several steps. */
import type { Decided } from "../decisions/decided";
import { readingOf } from "../nest/piecesOfPattern";
import { outlinesFor } from "../ownPieces/readOwn";
import { planOf, printedNestOf } from "./planOf";

/**
 * What a plan of a work never seen takes, in steps that are each much shorter than all of it: who must not be kept waiting does
 * something else between. After the last of them `planOf` has the plan at hand, the plan its checks, and the nest every printed
 * size, which is drawn under it.
 */
export const stepsToPlan = (work: Decided): readonly (() => unknown)[] => {
  const { own, chart } = work.pattern;
  const reading = own === undefined ? [] : [() => outlinesFor(own, chart), () => readingOf(work.pattern)];
  const checks = (): unknown => {
    const plan = planOf(work);
    return plan.ok ? plan.value.checks : null;
  };
  const printed = (): unknown => {
    const nest = printedNestOf(work);
    return nest.ok ? [...nest.value.sizes] : null;
  };
  return [...reading, () => planOf(work), checks, printed];
};
