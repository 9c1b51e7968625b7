import { useRunAll } from "../session/useRunAll";
import { useWorkStore } from "../session/useWork";
import { today } from "../session/today";
import { setAside, takenAway } from "./unreadOfSets";

/** A set begun, or taken away, each as one step with what could not be read of it. */
export function useSets() {
  const runAll = useRunAll();
  const store = useWorkStore();
  return {
    begin: (): void => {
      const { unread, tapes } = store.getState().work;
      runAll([{ kind: "newTape", taken: today() }, ...setAside(unread, tapes.length)]);
    },
    takeAway: (at: number): void => {
      const { unread, tapes } = store.getState().work;
      runAll([{ kind: "removeTape", set: at }, ...takenAway(unread, tapes.length, at)]);
    },
  };
}
