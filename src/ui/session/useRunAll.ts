import { useMemo } from "react";
import type { Command } from "../../core/plan/commands";
import { runAll } from "../../store/workStore";
import { useWorkStore } from "./useWork";

/** Runs several commands as one undoable step. */
export function useRunAll(): (commands: readonly Command[]) => void {
  const store = useWorkStore();
  return useMemo(() => (commands: readonly Command[]) => runAll(store, commands), [store]);
}
