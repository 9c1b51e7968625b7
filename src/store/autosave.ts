/** Autosave: saves the open work as it changes, one save after the other. */
import { goOnAsConflictCopy } from "./conflictCopy";
import type { SessionParts } from "./sessionParts";
import { endGesture } from "./workStore";

export interface Autosave {
  /** Saves the open work where it has changed; for jobs that have their turn. */
  readonly save: () => Promise<void>;
  /** Saves now what waits to be saved. */
  readonly flush: () => Promise<void>;
  /** Saves now what may not be saved in time, and leaves a backup of it to the next page. */
  readonly pageIsClosing: () => void;
}

/** ms. A run of typing is one save. */
const REST = 400;

export function createAutosave(parts: SessionParts): Autosave {
  const { store, library, backup, openWork, list, status, queue } = parts;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const save = async (): Promise<void> => {
    // The middle of a drag is nobody's decision yet.
    if (store.getState().gesture?.hand.kind === "drag" || !openWork.isUnsaved()) return;
    status.saving();
    const current = openWork.current();
    const done = await library.save(current);
    if (!done.ok) return status.failed(done.failure);
    openWork.markSaved(current.work, done.value);
    backup.discard(current.id);
    if (done.value.id !== current.id) await goOnAsConflictCopy(parts, { ...current, ...done.value });
    status.saved();
    await list.refresh();
  };

  const flush = (): Promise<void> => {
    clearTimeout(timer);
    return queue(save);
  };

  store.subscribe(() => {
    if (!openWork.isUnsaved()) return;
    clearTimeout(timer);
    timer = setTimeout(() => void flush(), REST);
  });

  return {
    save,
    flush,
    pageIsClosing: () => {
      endGesture(store);
      if (!openWork.isUnsaved()) return;
      backup.write(openWork.current());
      void flush();
    },
  };
}
