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
}

export type WorkStore = StoreApi<WorkState>;

/** Steps kept for undo. */
export const HISTORY_LIMIT = 200;

export const createWorkStore = (
  work: Work,
  history: { readonly past: readonly Work[]; readonly future: readonly Work[] } = { past: [], future: [] },
): WorkStore => createStore<WorkState>(() => ({ work, ...history, gestureStart: null }));

/** Entries that could not be read are kept as typed, but are no steps of their own to undo. */
const isStep = (command: Command): boolean => command.kind !== "setUnread" && command.kind !== "clearUnread";

/** Carries out a command as one step. A gesture that is going on is committed first. */
export function run(store: WorkStore, command: Command): void {
  commitGesture(store);
  const { work, past } = store.getState();
  const next = applyCommand(work, command);
  if (next === work) return;
  if (!isStep(command)) return store.setState({ work: next });
  store.setState({ work: next, past: pushed(past, work), future: [] });
}

const pushed = (past: readonly Work[], work: Work): readonly Work[] => [...past, stepOf(work)].slice(-HISTORY_LIMIT);

/** A step without entries that could not be read: they are no part of it, and may be a whole page pasted. */
const stepOf = (work: Work): Work => (Object.keys(work.unread).length === 0 ? work : { ...work, unread: {} });

/** Begins a gesture; one that is still going on is committed first. */
export function beginGesture(store: WorkStore): void {
  commitGesture(store);
  store.setState({ gestureStart: store.getState().work });
}

/** Shows what commands would make of the work as it was when the gesture began. Without a gesture each is a step. */
export function preview(store: WorkStore, ...commands: readonly Command[]): void {
  const { gestureStart } = store.getState();
  if (gestureStart === null) return commands.forEach((command) => run(store, command));
  store.setState({ work: commands.reduce(applyCommand, gestureStart) });
}

/** Makes the previewed work a step; none where it is the same as before. */
export function commitGesture(store: WorkStore): void {
  const { gestureStart, work, past } = store.getState();
  if (gestureStart === null) return;
  if (work === gestureStart) return store.setState({ gestureStart: null });
  store.setState({ gestureStart: null, past: pushed(past, gestureStart), future: [] });
}

/** Puts everything back as it was when the gesture began. */
export function cancelGesture(store: WorkStore): void {
  const { gestureStart } = store.getState();
  if (gestureStart !== null) store.setState({ work: gestureStart, gestureStart: null });
}

/** One step back; a gesture that is going on is cancelled instead. */
export function undo(store: WorkStore): void {
  const { gestureStart, past, work, future } = store.getState();
  if (gestureStart !== null) return cancelGesture(store);
  const last = past.at(-1);
  if (last === undefined) return;
  store.setState({
    work: { ...last, unread: work.unread },
    past: past.slice(0, -1),
    future: [stepOf(work), ...future],
  });
}

/** One step forward again. */
export function redo(store: WorkStore): void {
  const { past, work, future } = store.getState();
  const [next, ...rest] = future;
  if (next === undefined) return;
  store.setState({
    work: { ...next, unread: work.unread },
    past: pushed(past, work),
    future: rest,
    gestureStart: null,
  });
}

export const canUndo = (state: WorkState): boolean => state.past.length > 0 || state.gestureStart !== null;
export const canRedo = (state: WorkState): boolean => state.future.length > 0;
