/**
 * Keeps the open work: saves it as it changes, opens others, and tells the page how that went. Where the browser keeps
 * nothing, works are kept as long as the page is open, and can be downloaded.
 */
import { createStore, type StoreApi } from "zustand/vanilla";
import type { Work } from "../core/decisions/work";
import { blankWork } from "../document/blank";
import { readWorkFile, writeWorkFile } from "../document/workFile";
import { besideSentence, entryName, fileFailureSentence, storageFailureSentence } from "../words/storage";
import { copyName, renamed } from "./apart";
import { NEW_STAMP, type KeptEntry, type KeptWork, type Library, type StorageFailure } from "./library";
import { memoryLibrary } from "./memoryLibrary";
import { pageBox, partingIn } from "./parting";
import { commitGesture, type WorkStore } from "./workStore";

export interface KeeperMessage {
  readonly id: string;
  readonly text: string;
  readonly action?: { readonly label: string; readonly run: () => void };
}

export interface KeeperState {
  readonly entries: readonly KeptEntry[];
  readonly openId: string;
  /** Counts the works put on the page. Unlike the id, it stays where the open work goes on under another id. */
  readonly shown: number;
  readonly storage: { readonly state: "saved" | "saving" | "failed"; readonly words: string };
  readonly messages: readonly KeeperMessage[];
}

export interface Keeper {
  readonly state: StoreApi<KeeperState>;
  /** Opens what was open last, or the first demo on a first visit. */
  readonly start: () => Promise<void>;
  readonly open: (id: string) => Promise<void>;
  readonly create: (work: Work) => Promise<void>;
  readonly copy: (id: string) => Promise<void>;
  readonly remove: (id: string) => Promise<void>;
  readonly openText: (text: string, fileName: string) => Promise<void>;
  /** The open work as a file. */
  readonly file: () => { readonly name: string; readonly text: string };
  readonly dismiss: (message: string) => void;
  /** Saves now what waits to be saved. */
  readonly flush: () => Promise<void>;
  /** The page is going: leaves what is not saved yet to the next one. */
  readonly part: () => void;
}

/** ms. A run of typing is one save. */
const REST = 400;

const SAVED = { state: "saved", words: "Saved here" } as const;
const SAVING = { state: "saving", words: "Saving…" } as const;

/**
 * @param library null where the browser keeps nothing, with `why`
 * @param first   the work a first visit opens
 */
export function createKeeper(
  store: WorkStore,
  library: Library | null,
  first: Work,
  why: StorageFailure | null = null,
): Keeper {
  const shelf = library ?? memoryLibrary();
  const parting = partingIn(library === null ? null : pageBox());
  const state = createStore<KeeperState>(() => ({ entries: [], openId: "", shown: 0, storage: SAVED, messages: [] }));
  let stamp = NEW_STAMP;
  let waiting: ReturnType<typeof setTimeout> | null = null;
  let going: Promise<void> = Promise.resolve();
  /** The open work as it was saved last; loading a work is no change to save. */
  let saved: Work | null = store.getState().work;

  /** One thing after the other, so that no save lands on a work that is just being put away. */
  const inTurn = (job: () => Promise<void>): Promise<void> => {
    going = going.then(job, job);
    return going;
  };

  const say = (text: string, action?: KeeperMessage["action"]): string => {
    const message = { id: crypto.randomUUID(), text, ...(action === undefined ? {} : { action }) };
    state.setState(({ messages }) => ({ messages: [...messages, message] }));
    return message.id;
  };
  const dismiss = (id: string): void =>
    state.setState(({ messages }) => ({ messages: messages.filter((m) => m.id !== id) }));

  const report = (storage: KeeperState["storage"]): void => {
    // Kept only until the page is closed is not saved.
    if (library !== null) state.setState({ storage });
  };
  const failed = (failure: StorageFailure): void =>
    state.setState({ storage: { state: "failed", words: storageFailureSentence(failure) } });

  const refresh = async (): Promise<void> => {
    const entries = await shelf.list();
    if (entries.ok) state.setState({ entries: entries.value.map(({ id, name }) => ({ id, name: entryName(name) })) });
    else failed(entries.failure);
  };

  const setLastOpen = async (id: string): Promise<void> => {
    const done = await shelf.setLastOpen(id);
    if (!done.ok) failed(done.failure);
  };

  const isUnsaved = (): boolean => store.getState().work !== saved;

  const save = async (): Promise<void> => {
    const { work, past, future, gestureStart } = store.getState();
    // The middle of a drag is nobody's decision yet.
    if (gestureStart !== null || !isUnsaved()) return;
    report(SAVING);
    const { openId } = state.getState();
    const done = await shelf.save({ id: openId, work, past, future, stamp });
    if (!done.ok) return failed(done.failure);
    saved = work;
    stamp = done.value.stamp;
    parting.forget(openId);
    if (done.value.id !== openId) {
      state.setState({ openId: done.value.id });
      const name = copyName(work.name);
      // A change to save like any other.
      store.setState(renamed(store.getState(), name));
      say(besideSentence(work.name, name));
      await setLastOpen(done.value.id);
    }
    report(SAVED);
    await refresh();
  };

  const flush = (): Promise<void> => {
    if (waiting !== null) clearTimeout(waiting);
    waiting = null;
    return inTurn(save);
  };

  store.subscribe(() => {
    if (!isUnsaved()) return;
    if (waiting !== null) clearTimeout(waiting);
    waiting = setTimeout(() => void flush(), REST);
  });

  /** Saves what is open, so that another work can take its place. */
  const settle = async (): Promise<void> => {
    commitGesture(store);
    await save();
  };

  /** Does what puts another work in place of the open one; where that one could not be saved, only once it is asked again. */
  const leave = async (go: () => Promise<void>): Promise<void> => {
    await settle();
    if (!isUnsaved()) return go();
    const message = say(
      "The last changes to the open work could not be saved, so it stays open. Download it first, or go on without them.",
      {
        label: "Go on without them",
        run: () => {
          dismiss(message);
          void inTurn(go);
        },
      },
    );
  };

  const show = (kept: KeptWork): void => {
    stamp = kept.stamp;
    saved = kept.work;
    store.setState({ work: kept.work, past: kept.past, future: kept.future, gestureStart: null });
    state.setState(({ shown }) => ({ openId: kept.id, shown: shown + 1 }));
  };

  const showNew = async (work: Work): Promise<void> => {
    const kept: KeptWork = { id: crypto.randomUUID(), work, past: [], future: [], stamp: NEW_STAMP };
    show(kept);
    const done = await shelf.save(kept);
    if (done.ok) {
      stamp = done.value.stamp;
      report(SAVED);
      await setLastOpen(kept.id);
    } else {
      // Not the same work, so that it is still to be saved.
      saved = null;
      failed(done.failure);
    }
    await refresh();
  };

  const showKept = async (id: string): Promise<boolean> => {
    const before = store.getState().work;
    const kept = await shelf.load(id);
    if (!kept.ok) {
      say(storageFailureSentence(kept.failure));
      return false;
    }
    const put = async (): Promise<void> => {
      show(kept.value);
      await setLastOpen(id);
      await refresh();
    };
    // What was changed while it was loading nobody has agreed to go on without.
    if (store.getState().work === before) await put();
    else await leave(put);
    return true;
  };

  /** The first of the kept works that can be read, or a work made new. */
  const showAny = async (ids: readonly string[], otherwise: Work): Promise<void> => {
    for (const id of ids) if (await showKept(id)) return;
    await showNew(otherwise);
  };

  /** Saves what an earlier page could not save before it went. */
  const takeUp = async (): Promise<void> => {
    for (const left of parting.take()) {
      const kept = await shelf.load(left.id);
      // It may have been saved after all.
      if (kept.ok && writeWorkFile(kept.value.work) === writeWorkFile(left.work)) continue;
      const done = await shelf.save(left);
      if (!done.ok) {
        failed(done.failure);
        parting.leave(left);
      } else if (done.value.id !== left.id) await nameApart({ ...left, ...done.value });
    }
  };

  /** A work that was just kept beside another of its name. */
  const nameApart = async (kept: KeptWork): Promise<void> => {
    const name = copyName(kept.work.name);
    const { work, past, future } = renamed({ ...kept, gestureStart: null }, name);
    const done = await shelf.save({ ...kept, work, past, future });
    if (!done.ok) return failed(done.failure);
    say(besideSentence(kept.work.name, name));
  };

  const keptIds = async (): Promise<readonly string[] | null> => {
    const entries = await shelf.list();
    if (entries.ok) return entries.value.map(({ id }) => id);
    failed(entries.failure);
    return null;
  };

  /** The open work as it is on the page, any other as it is kept. */
  const current = async (id: string) => {
    const { work, past, future } = store.getState();
    return id === state.getState().openId
      ? ({ ok: true, value: { id, work, past, future, stamp } } as const)
      : shelf.load(id);
  };

  /** Offered until it succeeds, and only once then. */
  const bringBack = async (kept: KeptWork, offer: string): Promise<void> => {
    if (!state.getState().messages.some(({ id }) => id === offer)) return;
    const done = await shelf.save({ ...kept, stamp: NEW_STAMP });
    if (!done.ok) return failed(done.failure);
    dismiss(offer);
    await leave(async () => void (await showKept(done.value.id)));
    await refresh();
  };

  const remove = async (id: string): Promise<void> => {
    commitGesture(store);
    const gone = await current(id);
    if (!gone.ok) return void say(storageFailureSentence(gone.failure));
    const done = await shelf.remove(id);
    if (!done.ok) return failed(done.failure);
    if (id === state.getState().openId) {
      // What is gone is not saved again.
      saved = store.getState().work;
      await showAny((await keptIds()) ?? [], blankWork(gone.value.work.unit));
    }
    // There may be room again.
    await save();
    await refresh();
    const message = say(`“${entryName(gone.value.work.name)}” was deleted.`, {
      label: "Bring it back",
      run: () => void inTurn(() => bringBack(gone.value, message)),
    });
  };

  return {
    state,
    dismiss,
    flush,
    part: () => {
      commitGesture(store);
      if (!isUnsaved()) return;
      const { work, past, future } = store.getState();
      parting.leave({ id: state.getState().openId, work, past, future, stamp });
      void flush();
    },
    open: (id) => inTurn(() => leave(async () => void (id === state.getState().openId || (await showKept(id))))),
    create: (work) => inTurn(() => leave(() => showNew(work))),
    copy: (id) =>
      inTurn(async () => {
        const kept = await current(id);
        if (!kept.ok) return void say(storageFailureSentence(kept.failure));
        const { work } = kept.value;
        await leave(() => showNew({ ...work, name: copyName(work.name) }));
      }),
    remove: (id) => inTurn(() => remove(id)),
    openText: (text, fileName) =>
      inTurn(async () => {
        const work = readWorkFile(text);
        if (!work.ok) return void say(`${fileName}: ${fileFailureSentence(work.failure)}`);
        await leave(() => showNew(work.value));
      }),
    file: () => {
      const { work } = store.getState();
      return { name: `${fileNameOf(work.name)}.bodice.json`, text: writeWorkFile(work) };
    },
    start: () =>
      inTurn(async () => {
        if (why !== null) failed(why);
        await takeUp();
        const last = await shelf.lastOpen();
        const ids = await keptIds();
        const begin = last.ok && last.value !== null && ids?.includes(last.value) !== false ? [last.value] : [];
        await showAny([...begin, ...(ids ?? []).filter((id) => !begin.includes(id))], first);
      }),
  };
}

const fileNameOf = (name: string): string =>
  name
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, "-")
    .replaceAll(/^-+|-+$/g, "")
    .slice(0, 60) || "work";
