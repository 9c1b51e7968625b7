/** What an alteration crowds out: others that could be made without it, and are left out with it. */
import type { Work } from "../decisions/work";
import { applyCommand } from "./commands";
import type { PlannedAlteration } from "./plan";
import { planOf } from "./planOf";

/** The lines of the ledger that are left out for an alteration's sake; asked only where any line is left out at all. */
export function leftOutBy(work: Work, id: string): readonly PlannedAlteration[] {
  const plan = planOf(work);
  if (!plan.ok) return [];
  const leftOut = plan.value.ledger.filter((planned) => planned.id !== id && !planned.outcome.ok);
  if (leftOut.length === 0 || !work.alterations.some((alteration) => alteration.id === id)) return [];
  const without = planOf(applyCommand(work, { kind: "removeAlteration", id }));
  if (!without.ok) return [];
  return leftOut.filter((planned) =>
    without.value.ledger.some((other) => isSameLine(other, planned) && other.outcome.ok),
  );
}

const isSameLine = (one: PlannedAlteration, { id, half }: PlannedAlteration): boolean =>
  one.id === id && (one.half === undefined || half === undefined || one.half === half);
