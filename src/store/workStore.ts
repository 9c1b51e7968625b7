/**
 * The open work with its history. One gesture (a drag, a run of key presses) is begun, previewed as often as need be and
 * then committed as one step or cancelled without a trace.
 */
import { createStore, type StoreApi } from "zustand/vanilla";
import { applyCommand, type Command } from "../core/plan/commands";
import type { Work } from "../core/decisions/work";

export interface WorkState {
  readonly work: Work;
  /** Oldest first. */
  readonly past: readonly Work[];
  /** Nearest first. */
  readonly future: readonly Work[];
  /** The work before the gesture that is going on. */
  readonly gestureStart: Work | null;
  /** Something else has ended a gesture; what its hand still previews counts for nothing until it lets go. */
  readonly isCutShort: boolean;
}

export type WorkStore = StoreApi<WorkState>;

/** Nothing is being dragged. */
export const NO_GESTURE = { gestureStart: null, isCutShort: false } as const;

/** Steps kept for undo. */
export const HISTORY_LIMIT = 200;

export const createWorkStore = (
  work: Work,
  history: { readonly past: readonly Work[]; readonly future: readonly Work[] } = { past: [], future: [] },
): WorkStore => createStore<WorkState>(() => ({ work, ...history, ...NO_GESTURE }));

/** Entries that could not be read are kept as typed, but are no steps of their own to undo. */
const isStep = (command: Command): boolean => command.kind !== "setUnread" && command.kind !== "clearUnread";

/** Carries out a command as one step. A gesture that is going on is committed first. */
export function run(store: WorkStore, command: Command): void {
  if (isStep(command)) return runAll(store, [command]);
  cutGestureShort(store);
  const { work } = store.getState();
  const next = applyCommand(work, command);
  if (next !== work) store.setState({ work: next });
}

/** Carries out several commands, one after the other, as one step. A gesture that is going on is committed first. */
export function runAll(store: WorkStore, commands: readonly Command[]): void {
  cutGestureShort(store);
  const { work, past } = store.getState();
  const next = commands.reduce(applyCommand, work);
  if (next !== work) store.setState({ work: next, past: pushed(past, work), future: [] });
}

const pushed = (past: readonly Work[], work: Work): readonly Work[] => [...past, stepOf(work)].slice(-HISTORY_LIMIT);

/** A step without entries that could not be read: they are no part of it, and may be a whole page pasted. */
const stepOf = (work: Work): Work => (Object.keys(work.unread).length === 0 ? work : { ...work, unread: {} });

/** Begins a gesture; one that is still going on is committed first. */
export function beginGesture(store: WorkStore): void {
  commitGesture(store);
  store.setState(({ work }) => ({ gestureStart: work, isCutShort: false }));
}

/** Shows what commands would make of the work as it was when the gesture began. Without a gesture each is a step. */
export function preview(store: WorkStore, ...commands: readonly Command[]): void {
  const { gestureStart, isCutShort } = store.getState();
  if (isCutShort) return;
  if (gestureStart === null) return commands.forEach((command) => run(store, command));
  store.setState({ work: commands.reduce(applyCommand, gestureStart) });
}

/** Makes the previewed work a step; none where it is the same as before. */
export function commitGesture(store: WorkStore): void {
  const { gestureStart, work, past } = store.getState();
  if (gestureStart === null || gestureStart === work) return store.setState(NO_GESTURE);
  store.setState({ ...NO_GESTURE, past: pushed(past, gestureStart), future: [] });
}

/** Puts everything back as it was when the gesture began. */
export function cancelGesture(store: WorkStore): void {
  store.setState(({ work, gestureStart }) => ({ ...NO_GESTURE, work: gestureStart ?? work }));
}

/** Ends a gesture that is still in somebody's hand: as one step, or cancelled. */
export function cutGestureShort(store: WorkStore, end: typeof commitGesture = commitGesture): void {
  if (store.getState().gestureStart === null) return;
  end(store);
  store.setState({ isCutShort: true });
}

/** One step back; a gesture that is going on is cancelled instead. */
export function undo(store: WorkStore): void {
  const { gestureStart, past, work, future } = store.getState();
  if (gestureStart !== null) return cutGestureShort(store, cancelGesture);
  const last = past.at(-1);
  if (last === undefined) return;
  store.setState({
    work: { ...last, unread: work.unread },
    past: past.slice(0, -1),
    future: [stepOf(work), ...future],
  });
}

/** One step forward again; a gesture that is going on is cancelled first. */
export function redo(store: WorkStore): void {
  if (!canRedo(store.getState())) return;
  cutGestureShort(store, cancelGesture);
  const { past, work, future } = store.getState();
  const [next, ...rest] = future;
  if (next === undefined) return;
  store.setState({ work: { ...next, unread: work.unread }, past: pushed(past, work), future: rest });
}

export const canUndo = (state: WorkState): boolean => state.past.length > 0 || state.gestureStart !== null;
export const canRedo = (state: WorkState): boolean => state.future.length > 0;
