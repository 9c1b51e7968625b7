/** The order the wearer's alterations are made in, against the trade's. */
import { HALVES, isMadeOn, type Alteration } from "../decisions/alteration";
import { phaseOf, placeInOrder, rankOf, type Phase } from "../decisions/tradeOrder";

/**
 * Alterations made before one of an earlier phase on the same half: by their id, the earliest phase that comes after them.
 */
export function outOfTradeOrder(alterations: readonly Alteration[]): ReadonlyMap<string, Phase> {
  const found: (readonly [string, Phase])[] = [];
  const earliest: { left: Phase | null; right: Phase | null } = { left: null, right: null };
  // From the last: the earliest phase of all that come after.
  for (const alteration of alterations.toReversed()) {
    const phase = phaseOf(alteration);
    const before = HALVES.filter((half) => isMadeOn(alteration, half)).flatMap((half) => {
      const after = earliest[half];
      if (after !== null && rankOf(phase) > rankOf(after)) return [after];
      earliest[half] = phase;
      return [];
    });
    const [first] = before.toSorted((a, b) => rankOf(a) - rankOf(b));
    if (first !== undefined) found.push([alteration.id, first]);
  }
  return new Map(found.toReversed());
}

/** The same alterations in the trade's order; those that stand alike in it keep the order they are in. */
export const inTradeOrder = (alterations: readonly Alteration[]): readonly Alteration[] =>
  alterations.toSorted((a, b) => placeInOrder(a) - placeInOrder(b));
