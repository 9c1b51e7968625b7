/**
 * The open work with its history. One gesture (a drag, a run of key presses, a visit to a field) is begun, previewed as often
 * as need be and then committed as one step or cancelled without a trace.
 */
import { createStore, type StoreApi } from "zustand/vanilla";
import { applyCommand, type Command } from "../core/plan/commands";
import type { Work } from "../core/decisions/work";

/**
 * A drag by the pointer is nobody's decision before it is let go. What comes by keys is one at every press: it is saved as it
 * is made.
 */
export type GestureKind = "drag" | "keys";

/** Whoever began a gesture shows by it that the gesture going on is still its own. */
export interface Hand {
  readonly kind: GestureKind;
}

/** The text in the field that is being typed in, as it stands on the screen. */
export interface Entry {
  readonly field: string;
  readonly text: string;
}

export interface Gesture {
  readonly hand: Hand;
  /** The work before it. */
  readonly start: Work;
  readonly entry: Entry | null;
}

/** A work and the steps back and forward from it. */
export interface Versions {
  readonly work: Work;
  /** Oldest first. */
  readonly past: readonly Work[];
  /** Nearest first. */
  readonly future: readonly Work[];
}

export interface WorkState extends Versions {
  /** What is going on, if anything is. */
  readonly gesture: Gesture | null;
}

export type WorkStore = StoreApi<WorkState>;

/** Steps kept for undo. */
export const HISTORY_LIMIT = 200;

export const createWorkStore = (
  work: Work,
  history: { readonly past: readonly Work[]; readonly future: readonly Work[] } = { past: [], future: [] },
): WorkStore => createStore<WorkState>(() => ({ work, ...history, gesture: null }));

/** Entries that could not be read are kept as typed, but are no steps of their own to undo. */
const isStep = (command: Command): boolean => command.kind !== "setUnread" && command.kind !== "clearUnread";

/** Carries out a command as one step. A gesture that is going on is committed first. */
export function run(store: WorkStore, command: Command): void {
  if (isStep(command)) return runAll(store, [command]);
  endGesture(store);
  const { work } = store.getState();
  const next = applyCommand(work, command);
  if (next !== work) store.setState({ work: next });
}

/** Carries out several commands, one after the other, as one step. A gesture that is going on is committed first. */
export function runAll(store: WorkStore, commands: readonly Command[]): void {
  endGesture(store);
  const { work, past } = store.getState();
  const next = commands.reduce(applyCommand, work);
  if (next !== work) store.setState({ work: next, past: pushed(past, work, movedFields(work, next)), future: [] });
}

const pushed = (past: readonly Work[], work: Work, fields: readonly string[] = []): readonly Work[] =>
  [...past, stepOf(work, fields)].slice(-HISTORY_LIMIT);

/** Fields in which another entry that could not be read stands, or none: it went along with its row, or has gone with it. */
const movedFields = ({ unread: before }: Work, { unread: after }: Work): readonly string[] =>
  before === after
    ? []
    : [...new Set([...Object.keys(before), ...Object.keys(after)])].filter((field) => before[field] !== after[field]);

/** What a step keeps of a field in which nothing was left unread. */
const NOTHING = "";

/**
 * A step with no entries that could not be read but in the fields that it itself changed: the others are no part of it, and may
 * be a whole page pasted. Always a work of its own, that nothing was planned of: a plan lives as long as the work it is
 * remembered by, and a history keeps 200.
 */
const stepOf = (work: Work, fields: readonly string[]): Work => ({
  ...work,
  unread: Object.fromEntries(fields.map((field) => [field, work.unread[field] ?? NOTHING])),
});

/** A step that is taken back or made again: what cannot be read stays in its field, or goes along with its row. */
function taken(step: Work, { unread }: Work): Work {
  if (Object.keys(step.unread).length === 0) return { ...step, unread };
  const now = Object.entries({ ...unread, ...step.unread }).filter(([, text]) => text !== NOTHING);
  return { ...step, unread: Object.fromEntries(now) };
}

/** Begins a gesture; one that is still going on is committed first. */
export function beginGesture(store: WorkStore, kind: GestureKind): Hand {
  endGesture(store);
  const hand: Hand = { kind };
  store.setState(({ work }) => ({ gesture: { hand, start: work, entry: null } }));
  return hand;
}

/** Whether the gesture going on is this hand's: anything else that was done has ended it. */
export const isGoingOn = (store: WorkStore, hand: Hand | null): boolean =>
  hand !== null && store.getState().gesture?.hand === hand;

/**
 * Shows what commands would make of the work as it was when the gesture began. One that something else has ended shows
 * nothing any more: the hand has to begin another.
 *
 * @param entry the text that says so, where it is typed
 */
export function preview(
  store: WorkStore,
  hand: Hand,
  commands: readonly Command[],
  entry: Gesture["entry"] = null,
): void {
  const { gesture } = store.getState();
  if (gesture?.hand !== hand) return;
  store.setState({ work: commands.reduce(applyCommand, gesture.start), gesture: { ...gesture, entry } });
}

/** Makes the previewed work a step; none where nothing but entries that could not be read is other than before. */
export function commitGesture(store: WorkStore, hand: Hand): void {
  if (isGoingOn(store, hand)) endGesture(store);
}

/** Puts everything back as it was when the gesture began. */
export function cancelGesture(store: WorkStore, hand: Hand): void {
  if (isGoingOn(store, hand)) dropGesture(store);
}

/** Commits what is going on, whosever it is. */
export function endGesture(store: WorkStore): void {
  const state = store.getState();
  if (state.gesture !== null) store.setState({ ...committed(state), gesture: null });
}

function dropGesture(store: WorkStore): void {
  store.setState(({ work, gesture }) => ({ work: gesture?.start ?? work, gesture: null }));
}

function committed({ work, past, future, gesture }: WorkState): Versions {
  if (gesture === null || isSameButUnread(gesture.start, work)) return { work, past, future };
  return { work, past: pushed(past, gesture.start), future: [] };
}

/** Works share what did not change. */
export const isSameButUnread = (a: Work, b: Work): boolean => a === b || isSameIn(Object.entries(a), Object.entries(b));

function isSameIn(a: readonly (readonly [string, unknown])[], b: readonly (readonly [string, unknown])[]): boolean {
  const there = new Map(b);
  return (
    a.length === b.length && a.every(([key, value]) => key === "unread" || (there.has(key) && there.get(key) === value))
  );
}

/** The work as it is to be saved: with what is typed so far, and without a drag that is not let go yet. */
export function toSave(state: WorkState): Versions {
  const { gesture, past, future } = state;
  return gesture?.hand.kind === "drag" ? { work: gesture.start, past, future } : committed(state);
}

/** One step back; a drag that is going on is cancelled instead. */
export function undo(store: WorkStore): void {
  const { gesture } = store.getState();
  if (gesture?.hand.kind === "drag") return dropGesture(store);
  // What is typed is first made a step, so that it can be brought on again.
  endGesture(store);
  const { past, work, future } = store.getState();
  const last = past.at(-1);
  if (last === undefined) return;
  store.setState({
    work: taken(last, work),
    past: past.slice(0, -1),
    future: [stepOf(work, Object.keys(last.unread)), ...future],
  });
}

/** One step forward again; a drag that is going on is cancelled first. */
export function redo(store: WorkStore): void {
  if (!canRedo(store.getState())) return;
  if (store.getState().gesture?.hand.kind === "drag") dropGesture(store);
  endGesture(store);
  const { past, work, future } = store.getState();
  const [next, ...rest] = future;
  if (next === undefined) return;
  store.setState({ work: taken(next, work), past: pushed(past, work, Object.keys(next.unread)), future: rest });
}

export const canUndo = (state: WorkState): boolean => state.past.length > 0 || state.gesture !== null;
export const canRedo = (state: WorkState): boolean => state.future.length > 0;
