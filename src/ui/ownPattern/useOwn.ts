/** Hooks over her own pattern: what is said of it, what it comes to, and how she changes it. */
import { useDeferredValue, useMemo } from "react";
import type { OwnPattern } from "../../core/decisions/ownPattern";
import { readOwn } from "../../core/ownPieces/readOwn";
import type { OwnReading } from "../../core/ownPieces/ownReading";
import type { Command } from "../../core/plan/commands";
import { invariant } from "../../core/result";
import { endGesture, run } from "../../store/workStore";
import { useSettledWork, useWorkStore } from "../session/useWork";

export interface OwnAndReading {
  readonly own: OwnPattern;
  readonly reading: OwnReading;
}

/**
 * What was said and what it comes to, as one, so that nothing on the page is of two moments. Of settled work, and after what
 * is pressed and typed has been shown: a large file takes its time.
 */
export function useOwnAndReading(): OwnAndReading | null {
  const settled = useSettledWork((work) => work.pattern);
  const pattern = useDeferredValue(settled);
  return useMemo(() => {
    const { own } = pattern;
    return own === undefined ? null : { own, reading: readOwn({ own, pattern }) };
  }, [pattern]);
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

/** Her own pattern as it is settled, where there is one: for what a field makes of it. */
export function useOwn(): OwnPattern {
  return invariant(
    useSettledWork((work) => work.pattern.own),
    "a file on the page",
  );
}
