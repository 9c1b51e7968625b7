/** The order the wearer's alterations are made in, against the trade's. */
import type { Alteration } from "../decisions/alteration";
import { phaseOf, placeInOrder, rankOf, type Phase } from "../decisions/tradeOrder";

/** Alterations made before one of an earlier phase: by their id, the earliest phase that comes after them. */
export function outOfTradeOrder(alterations: readonly Alteration[]): ReadonlyMap<string, Phase> {
  const found: (readonly [string, Phase])[] = [];
  let earliest: Phase | null = null;
  // From the last: the earliest phase of all that come after.
  for (const alteration of alterations.toReversed()) {
    const phase = phaseOf(alteration);
    if (earliest === null || rankOf(phase) <= rankOf(earliest)) earliest = phase;
    else found.push([alteration.id, earliest]);
  }
  return new Map(found.toReversed());
}

/** The same alterations in the trade's order; those that stand alike in it keep the order they are in. */
export const inTradeOrder = (alterations: readonly Alteration[]): readonly Alteration[] =>
  alterations.toSorted((a, b) => placeInOrder(a) - placeInOrder(b));
