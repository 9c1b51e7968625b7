/** Hooks over her own pattern: what is said of it, what it comes to, and how she changes it. */
import { useDeferredValue, useMemo } from "react";
import type { OwnPattern } from "../../core/decisions/ownPattern";
import { readOwn } from "../../core/ownPieces/readOwn";
import type { OwnReading } from "../../core/ownPieces/ownReading";
import type { Command } from "../../core/plan/commands";
import { endGesture, run } from "../../store/workStore";
import { useSettledWork, useWorkStore } from "../session/useWork";

export interface OwnAndReading {
  readonly own: OwnPattern;
  readonly reading: OwnReading;
}

/**
 * What is said, as it is settled, and what it comes to: that follows after what is pressed and typed has been shown, since a
 * large file takes its time.
 */
export function useOwnAndReading(): OwnAndReading | null {
  const pattern = useSettledWork((work) => work.pattern);
  const read = useDeferredValue(pattern);
  const reading = useMemo(() => (read.own === undefined ? null : readOwn({ own: read.own, pattern: read })), [read]);
  const { own } = pattern;
  return own === undefined || reading === null ? null : { own, reading };
}

export const setOwn = (own: OwnPattern | null): Command => ({ kind: "setOwnPattern", own });

/** One change of her own pattern as it is now, as one step of undo. */
export function useEditOwn(): (change: (own: OwnPattern) => OwnPattern) => void {
  const store = useWorkStore();
  return useMemo(
    () => (change: (own: OwnPattern) => OwnPattern) => {
      endGesture(store);
      const { own } = store.getState().work.pattern;
      if (own !== undefined) run(store, setOwn(change(own)));
    },
    [store],
  );
}
