/**
 * One kind of field: what is typed in it is in the work at every key. What reads well is taken as it is typed, what does not
 * is kept as it was typed, and a whole visit to the field is one step of undo.
 */
import { useRef, type KeyboardEvent } from "react";
import { useStore } from "zustand";
import type { Command } from "../../core/plan/commands";
import { useGesture, useRun, useWork, useWorkStore } from "../session/useWork";

/**
 * What a text does to the work, or why it cannot be taken. What reads well and does nothing before more of it is there, as one
 * entry of a line of a chart, is kept as it was typed too.
 */
type Reading = { readonly commands: readonly Command[] } | { readonly reason: string } | { readonly isPart: true };

/** What a press of an arrow key does, and the text for it. */
export interface Stepped {
  readonly commands: readonly Command[];
  readonly text: string;
}

export interface EntryOptions {
  /** Key of the entry among those that could not be read. */
  readonly field: string;
  /** The text for what the work holds. */
  readonly settled: string;
  /** Reads a text without spaces around it that is neither empty nor what is settled. */
  readonly read: (text: string) => Reading;
  /** What else belongs to an entry, as one step with it; asked for when a visit begins to change something. */
  readonly also?: () => readonly Command[];
  /** What emptying the field does; without it an emptied field goes back to its value. Asked for at the time. */
  readonly clear?: () => readonly Command[];
  /** What a press of an arrow key does, up or down, from the text that stands there; null: nothing. */
  readonly step?: (direction: 1 | -1, isLarge: boolean, from: string) => Stepped | null;
  /** Whether letting go of an arrow key ends the step of undo, or only leaving the field does. */
  readonly endsWithKey?: boolean;
  /** Called when a visit begins to change something. */
  readonly onStart?: () => void;
}

export interface EntryProps {
  /** What stands in the field. */
  readonly text: string;
  /** It is being typed in: nothing is said of it yet. */
  readonly isTyped: boolean;
  /** Why what stands in it cannot be taken; not said while it is still being typed. */
  readonly reason: string | null;
  /** It could be taken by now, and is taken by Enter or by leaving the field: the unit may be another one than when it was typed. */
  readonly isWaiting: boolean;
  readonly input: {
    readonly value: string;
    readonly onChange: (event: { readonly target: { readonly value: string } }) => void;
    readonly onBlur: () => void;
    readonly onKeyDown: (event: KeyboardEvent<HTMLInputElement>) => void;
    readonly onKeyUp: (event: KeyboardEvent<HTMLInputElement>) => void;
  };
}

const isArrow = (key: string): key is "ArrowUp" | "ArrowDown" => key === "ArrowUp" || key === "ArrowDown";

export function useEntry(options: EntryOptions): EntryProps {
  const { field, settled, read, also, clear, step, endsWithKey = false, onStart } = options;
  const store = useWorkStore();
  const typed = useStore(store, ({ gesture }) => (gesture?.entry?.field === field ? gesture.entry.text : null));
  const unread = useWork((work) => work.unread[field]);
  const run = useRun();
  const gesture = useGesture();
  /** What the field said when this visit began, which is no entry to be taken. */
  const before = useRef(settled);
  const along = useRef<readonly Command[]>([]);
  const isStepping = useRef(false);
  const text = typed ?? unread ?? settled;

  const begin = (): void => {
    if (gesture.isGoingOn()) return;
    before.current = settled;
    along.current = also?.() ?? [];
    gesture.begin("keys");
    onStart?.();
  };

  const commandsOf = (entry: string): readonly Command[] => {
    const forget: Command = { kind: "clearUnread", field };
    if (entry === before.current) return [forget];
    if (entry === "") return [forget, ...(clear?.() ?? [])];
    const reading = read(entry);
    return "commands" in reading
      ? [forget, ...along.current, ...reading.commands]
      : // Read or not, it stands in the work as it was typed.
        [{ kind: "setUnread", field, text: entry }];
  };

  const type = (next: string): void => {
    isStepping.current = false;
    begin();
    gesture.preview(commandsOf(next.trim()), { field, text: next });
  };

  const reading = typed === null && unread !== undefined ? read(unread) : null;
  const isWaiting = reading !== null && "commands" in reading;

  const settle = (): void => {
    if (isWaiting && unread !== undefined && !gesture.isGoingOn()) type(unread);
    gesture.commit();
  };

  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>): void => {
    if (event.key === "Enter") return settle();
    if (event.key === "Escape") {
      const isGoing = gesture.isGoingOn();
      if (!isGoing && unread === undefined) return;
      event.stopPropagation();
      gesture.cancel();
      // What was typed at an earlier visit is taken back once this one's is.
      if (!isGoing) run({ kind: "clearUnread", field });
      return;
    }
    if (!isArrow(event.key) || step === undefined) return;
    event.preventDefault();
    const stepped = step(event.key === "ArrowUp" ? 1 : -1, event.shiftKey, text);
    if (stepped === null) return;
    begin();
    isStepping.current = true;
    const { commands, text: next } = stepped;
    gesture.preview([{ kind: "clearUnread", field }, ...along.current, ...commands], { field, text: next });
  };

  return {
    text,
    isTyped: typed !== null,
    reason: reading !== null && "reason" in reading ? reading.reason : null,
    isWaiting,
    input: {
      value: text,
      onChange: (event) => type(event.target.value),
      onBlur: settle,
      onKeyDown,
      onKeyUp: (event) => {
        if (endsWithKey && isStepping.current && isArrow(event.key)) gesture.commit();
      },
    },
  };
}
