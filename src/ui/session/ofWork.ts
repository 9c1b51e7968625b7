/**
 * What the page remembers of the open work without its being part of it: nothing of it is saved or undone. It belongs to the
 * work that is shown, so that another work begins with none of it.
 */
import { createContext, useContext } from "react";
import { createStore, useStore, type StateCreator, type StoreApi } from "zustand";
import { invariant } from "../../core/result";

/** One showing of one work: what is remembered of it hangs on this and goes with it. */
export interface Showing {
  /** Heard once, when another work takes its place. */
  readonly onEnd: (end: () => void) => void;
  /** It is on the page, perhaps again: React takes what it is developing off and puts it back at once. */
  readonly stay: () => void;
  /** It is off the page; unless it is put back at once, that is its end. */
  readonly leave: () => void;
}

export function createShowing(): Showing {
  const ends: (() => void)[] = [];
  let isShown = false;
  return {
    onEnd: (end) => ends.push(end),
    stay: () => {
      isShown = true;
    },
    leave: () => {
      isShown = false;
      queueMicrotask(() => {
        if (!isShown) for (const end of ends.splice(0)) end();
      });
    },
  };
}

const ShowingContext = createContext<Showing | null>(null);
export const ShowingProvider = ShowingContext.Provider;

export function useShowing(): Showing {
  return invariant(useContext(ShowingContext), "ShowingProvider above this component");
}

/**
 * Something there is one of for each showing of a work, made when it is first asked for.
 *
 * @param end lets go of it when another work takes its place
 */
export function ofWork<T extends object>(make: () => T, end?: (made: T) => void): (showing: Showing) => T {
  const made = new WeakMap<Showing, T>();
  return (showing) => {
    const known = made.get(showing);
    if (known !== undefined) return known;
    const fresh = make();
    made.set(showing, fresh);
    if (end !== undefined) showing.onEnd(() => end(fresh));
    return fresh;
  };
}

export interface UseStoreOfWork<T> {
  <U>(selector: (state: T) => U): U;
  /** The store itself, for what is read when something happens. */
  readonly of: (showing: Showing) => StoreApi<T>;
}

/** A store of the open work as a hook, as zustand's own `create` gives one of the whole page. */
export function storeOfWork<T extends object>(initial: StateCreator<T>): UseStoreOfWork<T> {
  const of = ofWork(() => createStore(initial));
  function useOfWork<U>(selector: (state: T) => U): U {
    return useStore(of(useShowing()), selector);
  }
  return Object.assign(useOfWork, { of });
}
