/** The order the wearer's alterations are made in, against the trade's. */
import type { Alteration } from "../decisions/alteration";
import { phaseOf, placeInOrder, rankOf, type Phase } from "../decisions/tradeOrder";

/** Alterations made before one of an earlier phase: by their id, the earliest phase that comes after them. */
export function outOfTradeOrder(alterations: readonly Alteration[]): ReadonlyMap<string, Phase> {
  const found = new Map<string, Phase>();
  alterations.forEach((alteration, index) => {
    const own = rankOf(phaseOf(alteration));
    const later = alterations
      .slice(index + 1)
      .map(phaseOf)
      .filter((phase) => rankOf(phase) < own);
    const [first] = later.toSorted((a, b) => rankOf(a) - rankOf(b));
    if (first !== undefined) found.set(alteration.id, first);
  });
  return found;
}

/** The same alterations in the trade's order; those that stand alike in it keep the order they are in. */
export const inTradeOrder = (alterations: readonly Alteration[]): readonly Alteration[] =>
  alterations.toSorted((a, b) => placeInOrder(a) - placeInOrder(b));
