/** What the body itself has shown, on a toile that was sewn: it stands before what a tape asks for. */
import type { Alteration } from "../decisions/alteration";
import type { Work } from "../decisions/work";

/**
 * Alterations of a work that an answer to a trial made, that were sewn in a garment that was kept, or that came from a base.
 */
export function seenOnToile({ alterations, trials = [], begunFrom }: Work): readonly Alteration[] {
  if (begunFrom !== undefined) return alterations;
  const ids = new Set(
    trials.flatMap(({ taken = [], verdict, sewn }) => [
      ...taken.flatMap((answer) => answer.alterations),
      ...(verdict === "keep" ? sewn.alterations.map(({ id }) => id) : []),
    ]),
  );
  return alterations.filter(({ id }) => ids.has(id));
}
