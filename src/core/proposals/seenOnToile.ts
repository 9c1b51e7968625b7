/** What the body itself has shown, on a toile that was sewn: it stands before what a tape asks for. */
import type { Alteration } from "../decisions/alteration";
import type { Work } from "../decisions/work";
import type { Tapes } from "../measures/tape";

interface SeenOnToile {
  readonly alteration: Alteration;
  /** What was measured when it was seen. */
  readonly tapes: Tapes;
}

/** Alterations of a work that an answer to a trial made, that were sewn in a garment that was kept, or that came from a base. */
export function seenOnToile({ alterations, trials = [], begunFrom, tapes }: Work): readonly SeenOnToile[] {
  if (begunFrom !== undefined) return alterations.map((alteration) => ({ alteration, tapes }));
  return trials.flatMap(({ taken = [], verdict, sewn }) => {
    const ids = new Set([
      ...taken.flatMap((answer) => answer.alterations),
      ...(verdict === "keep" ? sewn.alterations.map(({ id }) => id) : []),
    ]);
    return alterations.filter(({ id }) => ids.has(id)).map((alteration) => ({ alteration, tapes: sewn.tapes }));
  });
}
