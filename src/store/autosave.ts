/** Autosave: saves the open work as it changes, one save after the other. */
import type { Work } from "../core/decisions/work";
import type { SessionParts } from "./sessionParts";
import { backFromBinSentence, keptAgainSentence, SAVED_AFRESH_WORDS } from "../words/storage";
import type { Copies } from "./copies";
import { takeIn } from "./takeIn";
import { endGesture } from "./workStore";

export interface Autosave {
  /** Saves the open work where it has changed; for jobs that have their turn. */
  readonly save: () => Promise<void>;
  /** Saves now what waits to be saved. */
  readonly flush: () => Promise<void>;
  /** Nothing of a work is to be left: it was deleted for good. */
  readonly forget: (id: string) => void;
  /** Saves now what may not be saved in time, and leaves a backup of it to the next page. */
  readonly pageIsClosing: () => void;
}

/** ms. What a key has changed is on its way into storage by then. */
const SOON = 40;

/** ms until a save that failed is tried again, without anything being changed: at first, and at most. */
const TRY_AGAIN = { first: 2000, most: 30_000 };

/** How often another tab may come first before a save is put off. */
const ROUNDS = 5;

export function createAutosave(parts: SessionParts, copies: Copies): Autosave {
  const { store, library, isLasting, backup, openWork, list, status, messages, tabs, queue, now, binnedElsewhere } =
    parts;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let retry: ReturnType<typeof setTimeout> | undefined;
  let wait = TRY_AGAIN.first;
  let isQueued = false;
  /** Works that were changed where nothing is kept for longer than the page is open. */
  const unkept = new Set<string>();
  /** Whether a backup lies there that may be older than the page. */
  let isLeft = false;
  /** What was left with its history. */
  let leftWhole: Work | null = null;

  /** What is not saved yet; a new work that nobody has touched is not worth it. */
  const leave = (whole: boolean): void => {
    const left = openWork.left();
    // Not once more without its history.
    if (left.saved.work === leftWhole || (!isLasting && left.base === null)) return;
    leftWhole = whole ? left.saved.work : null;
    isLeft = true;
    backup.write(left, whole);
  };

  /** What was left is no longer what stands on the page: all of it is saved. */
  const takeAway = (): void => {
    if (!isLeft || !isLasting) return;
    isLeft = false;
    leftWhole = null;
    backup.discard(openWork.id());
  };

  const isDone = (): boolean => !openWork.isUnsaved() && !openWork.isUncertain();

  const save = async (): Promise<void> => {
    for (let round = 0; round < ROUNDS && !isDone(); round += 1) {
      leave(false);
      status.saving();
      const current = openWork.current();
      const [stamp, time] = [openWork.begin(current), now()];
      const isHistorySaved = openWork.isHistorySaved(current);
      const done = await library.save({ saved: current, stamp, time, isHistorySaved });
      if (!done.ok) {
        status.failed(done.failure);
        tryAgain();
        return;
      }
      clearTimeout(retry);
      retry = undefined;
      wait = TRY_AGAIN.first;
      // What is kept only as long as the page is open is left to the next one too; a new work untouched is not worth it.
      if (!isLasting && openWork.base() !== null) unkept.add(current.id);
      if (done.value.kind === "stale") {
        await takeIn(parts, done.value.theirs);
        continue;
      }
      openWork.markSaved(current, stamp);
      tabs.tell({ kind: "saved", id: current.id, stamp });
      const { id, work } = current;
      list.put({ id, name: work.name, wearer: work.wearer ?? null, stamp, saved: time, binned: null });
      if (done.value.kind === "savedAfresh") {
        const isDeleted = binnedElsewhere.delete(id);
        messages.dismissAbout(id);
        messages.add(isDeleted ? keptAgainSentence(work.name) : SAVED_AFRESH_WORDS);
        await list.changed();
      }
      if (done.value.kind === "broughtBack") {
        messages.dismissAbout(id);
        messages.add(backFromBinSentence(work.name));
      }
      await copies.wasSaved(id, work);
    }
    if (!isDone()) return later(SOON);
    takeAway();
    status.saved();
  };

  const flush = (): Promise<void> => {
    clearTimeout(timer);
    timer = undefined;
    // Jobs that have their turn before may take long.
    if (openWork.isUnsaved()) leave(false);
    return queue(save);
  };

  const soon = async (): Promise<void> => {
    timer = undefined;
    if (isDone()) {
      takeAway();
      status.saved();
      return;
    }
    leave(false);
    // One that waits for its turn will save this too.
    if (isQueued) return;
    isQueued = true;
    await queue(async () => {
      isQueued = false;
      await save();
    });
  };

  const later = (ms: number): void => {
    timer ??= setTimeout(() => void soon(), ms);
  };

  const tryAgain = (): void => {
    if (retry !== undefined) return;
    retry = setTimeout(() => {
      retry = undefined;
      void soon();
    }, wait);
    wait = Math.min(wait * 2, TRY_AGAIN.most);
  };

  store.subscribe(() => {
    if (isDone() && !isLeft) return;
    if (openWork.isUnsaved()) status.saving();
    later(SOON);
  });

  return {
    save,
    flush,
    forget: (id) => {
      unkept.delete(id);
      backup.discard(id);
    },
    pageIsClosing: () => {
      endGesture(store);
      if (isDone() && !unkept.has(openWork.id())) return takeAway();
      leave(true);
      void flush();
    },
  };
}
