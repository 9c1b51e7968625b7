/** Hooks over the open work: read a part of it, change it. What follows from it is in usePlan.ts, which is much heavier. */
import { createContext, useContext, useEffect, useMemo } from "react";
import { useStore } from "zustand";
import type { Command } from "../../core/plan/commands";
import type { Work } from "../../core/decisions/work";
import { invariant } from "../../core/result";
import {
  beginGesture,
  cancelGesture,
  commitGesture,
  isGoingOn,
  preview,
  run,
  type createWorkStore,
  type Entry,
  type GestureKind,
  type Hand,
  type WorkState,
} from "../../store/workStore";

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

/**
 * The same for what may be out of sight, where it stands still while something is dragged: nobody sees it follow, and a phone
 * would have to lay it out at every move. What keys do it always follows, since it may be read without being seen.
 */
export function useWorkInSight<T>(isInSight: boolean, selector: (work: Work) => T): T {
  return useStore(useWorkStore(), (state) => selector(workInSight(state, isInSight)));
}

export const workInSight = ({ work, gesture }: WorkState, isInSight: boolean): Work =>
  isInSight || gesture?.hand.kind !== "drag" ? work : gesture.start;

/** The same, but standing still while something is dragged: for panels that show no live figure. */
export function useSettledWork<T>(selector: (work: Work) => T): T {
  return useStore(useWorkStore(), (state) => selector(state.gesture?.start ?? state.work));
}

/** Whether something is being dragged or stepped just now. */
export function useIsMoving(): boolean {
  return useStore(useWorkStore(), (state) => state.gesture !== null);
}

/** Runs a command as one undoable step. */
export function useRun(): (command: Command) => void {
  const store = useWorkStore();
  return useMemo(() => (command: Command) => run(store, command), [store]);
}

export interface Gesture {
  readonly begin: (kind: GestureKind) => void;
  /** Whether it was begun and nothing else has ended it since. */
  readonly isGoingOn: () => boolean;
  readonly preview: (commands: readonly Command[], entry?: Entry) => void;
  readonly commit: () => void;
  readonly cancel: () => void;
}

function gestureOf(store: WorkStore): Gesture & { readonly leave: () => void } {
  let hand: Hand | null = null;
  const finish = (how: typeof commitGesture): void => {
    if (hand !== null) how(store, hand);
    hand = null;
  };
  return {
    begin: (kind) => {
      hand = beginGesture(store, kind);
    },
    isGoingOn: () => isGoingOn(store, hand),
    preview: (commands, entry) => {
      if (hand !== null) preview(store, hand, commands, entry);
    },
    commit: () => finish(commitGesture),
    cancel: () => finish(cancelGesture),
    leave: () => finish(hand?.kind === "drag" ? cancelGesture : commitGesture),
  };
}

/**
 * One drag, or one run of key presses, or one visit to a field: previewed as it goes, one undo entry at its end. What goes off
 * the page in the middle of it leaves what keys have made, and takes back what was dragged.
 */
export function useGesture(): Gesture {
  const store = useWorkStore();
  const gesture = useMemo(() => gestureOf(store), [store]);
  useEffect(() => gesture.leave, [gesture]);
  return gesture;
}
