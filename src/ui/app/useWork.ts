/** Hooks over the open work: read a part of it, read the plan that follows from it, change it. */
import type { PlanFailure } from "../../core/plan/planFailure";
import { createContext, useContext, useMemo } from "react";
import { useStore } from "zustand";
import type { Command } from "../../core/plan/commands";
import { derivePlan } from "../../core/plan/derivePlan";
import { derivePrintedNest } from "../../core/plan/printed";
import type { Plan } from "../../core/plan/plan";
import type { Nest } from "../../core/pattern/piece";
import type { Work } from "../../core/decisions/work";
import { must, type Result } from "../../core/result";
import { beginGesture, cancelGesture, commitGesture, preview, run, type createWorkStore } from "../../store/workStore";

export type WorkStore = ReturnType<typeof createWorkStore>;

const WorkStoreContext = createContext<WorkStore | null>(null);
export const WorkStoreProvider = WorkStoreContext.Provider;

/** A work never changes in place, so what follows from it is worked out once for each and dropped with it. */
const plans = new WeakMap<Work, Result<Plan, PlanFailure>>();
const nests = new WeakMap<Work, Result<Nest, PlanFailure>>();

function remembered<T>(memory: WeakMap<Work, T>, work: Work, derive: (work: Work) => T): T {
  const known = memory.get(work);
  if (known !== undefined) return known;
  const fresh = derive(work);
  memory.set(work, fresh);
  return fresh;
}

export const planOf = (work: Work): Result<Plan, PlanFailure> => remembered(plans, work, derivePlan);
export const printedNestOf = (work: Work): Result<Nest, PlanFailure> => remembered(nests, work, derivePrintedNest);

export function useWorkStore(): WorkStore {
  return must(useContext(WorkStoreContext), "WorkStoreProvider above this component");
}

/** A part of the work as it is now, in the middle of a drag too. The selector must return a stable value. */
export function useWork<T>(selector: (work: Work) => T): T {
  return useStore(useWorkStore(), (state) => selector(state.work));
}

/** The same, but standing still while something is dragged: for panels that show no live figure. */
export function useSettledWork<T>(selector: (work: Work) => T): T {
  return useStore(useWorkStore(), (state) => selector(state.gestureStart ?? state.work));
}

/** Whether something is being dragged or stepped just now. */
export function useIsMoving(): boolean {
  return useStore(useWorkStore(), (state) => state.gestureStart !== null);
}

/** The plan as it is now, in the middle of a drag too. */
export function usePlan(): Result<Plan, PlanFailure> {
  return useWork(planOf);
}

/** The plan from before the drag that is going on, if one is. */
export function useSettledPlan(): Result<Plan, PlanFailure> {
  return useSettledWork(planOf);
}

/** The printed pieces, there even before there is a plan. */
export function usePrintedNest(): Result<Nest, PlanFailure> {
  return useWork(printedNestOf);
}

/** Runs a command as one undoable step. */
export function useRun(): (command: Command) => void {
  const store = useWorkStore();
  return useMemo(() => (command: Command) => run(store, command), [store]);
}

export interface Gesture {
  readonly begin: () => void;
  readonly preview: (...commands: readonly Command[]) => void;
  readonly commit: () => void;
  readonly cancel: () => void;
}

/** One drag, or one run of key presses: previewed as it goes, one undo entry at its end. */
export function useGesture(): Gesture {
  const store = useWorkStore();
  return useMemo(
    () => ({
      begin: () => beginGesture(store),
      preview: (...commands: readonly Command[]) => preview(store, ...commands),
      commit: () => commitGesture(store),
      cancel: () => cancelGesture(store),
    }),
    [store],
  );
}
