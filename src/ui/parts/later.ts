/** A piece of the page's code that is loaded after the page: asked for by whoever shows it, or fetched ahead. */
import { useSyncExternalStore } from "react";
import { restoreStyles } from "./restoreStyles";

export type LaterState<T> =
  | { readonly kind: "waiting" }
  | { readonly kind: "here"; readonly value: T }
  | { readonly kind: "failed" };

export interface Later<T> {
  readonly get: () => LaterState<T>;
  readonly subscribe: (heard: () => void) => () => void;
  /** Loads it for somebody who waits for it, once more where that failed. */
  readonly load: () => Promise<void>;
  /** Loads it before anybody waits for it; a failure then is nobody's matter yet. */
  readonly fetchAhead: () => Promise<void>;
}

/** ms. A network can stall so that nothing comes and nothing fails: then it is said, and can be asked for once more. */
const PATIENCE = 30_000;

/**
 * What is here is here at once, without a promise to wait for: a sheet is printed in the same breath in which it is shown.
 *
 * @param load imports it; called again after a failure
 */
export function createLater<T>(load: () => Promise<T>): Later<T> {
  const listeners = new Set<() => void>();
  let state: LaterState<T> = { kind: "waiting" };
  let going: Promise<void> | null = null;
  let isWanted = false;
  const show = (next: LaterState<T>): void => {
    state = next;
    for (const heard of listeners) heard();
  };
  const attempt = (): Promise<void> => {
    const own = new Promise<void>((resolve) => {
      const end = (came: LaterState<T>): void => {
        clearTimeout(late);
        const isLast = going === own;
        if (isLast) going = null;
        // What comes after all is as good; what fails then was told already.
        if (state.kind !== "here" && (came.kind === "here" || (isLast && isWanted))) show(came);
        resolve();
      };
      const late = setTimeout(() => end({ kind: "failed" }), PATIENCE);
      // A stylesheet of another part that still does not come is no reason not to load this one.
      restoreStyles()
        .catch(() => undefined)
        .then(load)
        .then(
          (value) => end({ kind: "here", value }),
          () => end({ kind: "failed" }),
        );
    });
    return own;
  };
  const begin = (): Promise<void> => {
    going ??= attempt();
    return going;
  };
  return {
    get: () => state,
    subscribe: (heard) => {
      listeners.add(heard);
      return () => void listeners.delete(heard);
    },
    load: async () => {
      if (state.kind === "here") return;
      isWanted = true;
      if (state.kind === "failed") show({ kind: "waiting" });
      await begin();
    },
    fetchAhead: async () => {
      if (state.kind === "waiting") await begin();
    },
  };
}

const nothing = async (): Promise<void> => {};

/** What came with the page. */
export function alreadyHere<T>(value: T): Later<T> {
  const state: LaterState<T> = { kind: "here", value };
  return { get: () => state, subscribe: () => () => {}, load: nothing, fetchAhead: nothing };
}

export const useLaterState = <T>(later: Later<T>): LaterState<T> => useSyncExternalStore(later.subscribe, later.get);
