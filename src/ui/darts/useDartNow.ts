import { isSameDart } from "../../core/pattern/piece";
import type { PlannedDart } from "../../core/plan/plan";
import { usePlan } from "../session/usePlan";
import { useViewState } from "../session/viewState";

/**
 * A dart as it is just now, on the half that is looked at. For what follows a drag and nothing else: whatever asks is drawn anew
 * at every move.
 *
 * @param settled as it is while nothing moves
 * @param isInSight what is not need not follow
 */
export function useDartNow(settled: PlannedDart, isInSight: boolean): PlannedDart {
  const half = useViewState((view) => view.half);
  const now = usePlan(isInSight);
  const found = now.ok ? now.value[half].darts.find(({ ref }) => isSameDart(ref, settled.ref)) : undefined;
  return found ?? settled;
}
