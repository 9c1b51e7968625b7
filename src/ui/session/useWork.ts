/** Hooks over the open work: read a part of it, change it. What follows from it is in usePlan.ts, which is much heavier. */
import { createContext, useContext, useMemo } from "react";
import { useStore } from "zustand";
import type { Command } from "../../core/plan/commands";
import type { Work } from "../../core/decisions/work";
import { invariant } from "../../core/result";
import { beginGesture, cancelGesture, commitGesture, preview, run, type createWorkStore } from "../../store/workStore";

export type WorkStore = ReturnType<typeof createWorkStore>;

const WorkStoreContext = createContext<WorkStore | null>(null);
export const WorkStoreProvider = WorkStoreContext.Provider;

export function useWorkStore(): WorkStore {
  return invariant(useContext(WorkStoreContext), "WorkStoreProvider above this component");
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
