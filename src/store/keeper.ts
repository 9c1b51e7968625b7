/**
 * Keeps the open work: saves it as it changes, opens others, and tells the page how that went. Where the browser keeps
 * nothing the work stays usable, and can be downloaded.
 */
import { createStore, type StoreApi } from "zustand/vanilla";
import type { Work } from "../core/plan/work";
import { blankWork } from "../document/blank";
import { readWorkFile, writeWorkFile } from "../document/workFile";
import { fileFailureSentence, storageFailureSentence } from "../words/storage";
import { NEW_STAMP, type KeptEntry, type KeptWork, type Library, type StorageFailure } from "./library";
import type { WorkStore } from "./workStore";

export interface KeeperMessage {
  readonly id: string;
  readonly text: string;
  readonly action?: { readonly label: string; readonly run: () => void };
}

export interface KeeperState {
  readonly entries: readonly KeptEntry[];
  readonly openId: string;
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
}

/** ms. A run of typing is one save. */
const REST = 400;

/**
 * @param library null where the browser keeps nothing, with `why`
 * @param first   the work a first visit opens
 */
export function createKeeper(store: WorkStore, library: Library | null, first: Work, why: StorageFailure | null = null): Keeper {
  const state = createStore<KeeperState>(() => ({ entries: [], openId: "", storage: { state: "saved", words: "Saved here" }, messages: [] }));
  let stamp = NEW_STAMP;
  let waiting: ReturnType<typeof setTimeout> | null = null;
  let going: Promise<void> = Promise.resolve();
  // Loading a work is no change to save.
  let saved = store.getState().work;

  const say = (text: string, action?: KeeperMessage["action"]): void => {
    const message = { id: crypto.randomUUID(), text, ...(action === undefined ? {} : { action }) };
    state.setState(({ messages }) => ({ messages: [...messages, message] }));
  };
  const dismiss = (id: string): void => state.setState(({ messages }) => ({ messages: messages.filter((m) => m.id !== id) }));
  const failed = (failure: StorageFailure): void =>
    state.setState({ storage: { state: "failed", words: storageFailureSentence(failure) } });

  const refresh = async (): Promise<void> => {
    if (library === null) {
      const { openId } = state.getState();
      state.setState({ entries: [{ id: openId, name: store.getState().work.name }] });
      return;
    }
    const entries = await library.list();
    if (entries.ok) state.setState({ entries: entries.value });
    else failed(entries.failure);
  };

  const save = async (): Promise<void> => {
    const { work, past, future, gestureStart } = store.getState();
    // The middle of a drag is nobody's decision yet.
    if (library === null || gestureStart !== null || work === saved) return;
    state.setState({ storage: { state: "saving", words: "Saving…" } });
    const { openId } = state.getState();
    const done = await library.save({ id: openId, work, past, future, stamp });
    if (!done.ok) return failed(done.failure);
    saved = work;
    stamp = done.value.stamp;
    if (done.value.id !== openId) {
      state.setState({ openId: done.value.id });
      say("This work was changed in another tab. What you see here is kept beside it as a work of its own.");
      await library.setLastOpen(done.value.id);
    }
    state.setState({ storage: { state: "saved", words: "Saved here" } });
    await refresh();
  };

  const flush = (): Promise<void> => {
    if (waiting !== null) clearTimeout(waiting);
    waiting = null;
    going = going.then(save);
    return going;
  };

  store.subscribe(({ work }) => {
    if (library === null || work === saved) return;
    if (waiting !== null) clearTimeout(waiting);
    waiting = setTimeout(() => void flush(), REST);
  });

  const show = (kept: Pick<KeptWork, "id" | "work" | "past" | "future" | "stamp">): void => {
    stamp = kept.stamp;
    saved = kept.work;
    store.setState({ work: kept.work, past: kept.past, future: kept.future, gestureStart: null });
    state.setState({ openId: kept.id });
  };

  const create = async (work: Work): Promise<void> => {
    await flush();
    const id = crypto.randomUUID();
    show({ id, work, past: [], future: [], stamp: NEW_STAMP });
    if (library !== null) {
      const done = await library.save({ id, work, past: [], future: [], stamp: NEW_STAMP });
      if (done.ok) {
        stamp = done.value.stamp;
        await library.setLastOpen(id);
      } else failed(done.failure);
    }
    await refresh();
  };

  const open = async (id: string): Promise<void> => {
    await flush();
    if (library === null) return;
    const kept = await library.load(id);
    if (!kept.ok) return say(storageFailureSentence(kept.failure));
    show(kept.value);
    await library.setLastOpen(id);
    await refresh();
  };

  const remove = async (id: string): Promise<void> => {
    await flush();
    const gone = library === null ? null : await library.load(id);
    if (library === null || gone === null) return;
    if (!gone.ok) return say(storageFailureSentence(gone.failure));
    const done = await library.remove(id);
    if (!done.ok) return failed(done.failure);
    if (id === state.getState().openId) {
      const rest = await library.list();
      const next = rest.ok ? rest.value[0] : undefined;
      if (next === undefined) await create(blankWork(gone.value.work.unit));
      else await open(next.id);
    }
    await refresh();
    say(`“${gone.value.work.name}” was deleted.`, {
      label: "Bring it back",
      run: () => {
        void library.save({ ...gone.value, stamp: NEW_STAMP }).then(() => open(id));
        state.setState({ messages: [] });
      },
    });
  };

  return {
    state,
    open,
    create,
    remove,
    dismiss,
    flush,
    copy: async (id) => {
      await flush();
      const kept = library === null ? null : await library.load(id);
      const work = kept === null ? store.getState().work : kept.ok ? kept.value.work : null;
      if (work === null) return say("That work could not be read, so it was not copied.");
      await create({ ...work, name: copyName(work.name) });
    },
    openText: async (text, fileName) => {
      const work = readWorkFile(text);
      if (!work.ok) return say(`${fileName}: ${fileFailureSentence(work.failure)}`);
      await create(work.value);
    },
    file: () => {
      const { work } = store.getState();
      return { name: `${fileNameOf(work.name)}.bodice.json`, text: writeWorkFile(work) };
    },
    start: async () => {
      if (library === null) {
        state.setState({ openId: crypto.randomUUID() });
        if (why !== null) failed(why);
        return refresh();
      }
      const last = await library.lastOpen();
      const kept = last.ok && last.value !== null ? await library.load(last.value) : null;
      if (kept?.ok === true) {
        show(kept.value);
        return refresh();
      }
      if (kept !== null && !kept.ok && kept.failure.code === "storage/damaged") say(storageFailureSentence(kept.failure));
      const rest = await library.list();
      const next = rest.ok ? rest.value.find(({ id }) => !last.ok || id !== last.value) : undefined;
      if (next === undefined) await create(first);
      else await open(next.id);
    },
  };
}

const LONGEST_NAME = 190;
const copyName = (name: string): string => `${name.slice(0, LONGEST_NAME)} (copy)`;

const fileNameOf = (name: string): string =>
  name
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, "-")
    .replaceAll(/^-+|-+$/g, "")
    .slice(0, 60) || "work";
