/**
 * Several pages of one browser: what they share (the library, local storage, the channel between tabs), with faults of storage
 * that a test plants, and with pages that end in every way. Time is the test's.
 */
import { salvageWork } from "../../src/document/salvageWork";
import { vi } from "vitest";
import type { Work } from "../../src/core/decisions/work";
import { fail, type Result } from "../../src/core/result";
import type { Download } from "../../src/store/download";
import type { Library, StorageFailure } from "../../src/store/library";
import { emptyShelf, memoryLibrary, type Shelf } from "../../src/store/memoryLibrary";
import { withPatience } from "../../src/store/patience";
import type { SessionState } from "../../src/store/sessionState";
import type { Channel } from "../../src/store/tabs";
import { createWorkSession, type WorkSession } from "../../src/store/workSession";
import { createWorkStore, type WorkStore } from "../../src/store/workStore";

/** What the library does instead of what it is asked. */
export type Fault =
  | "none"
  | "full"
  /** The transaction is given up, and nothing of it done. */
  | "aborted"
  /** No answer, and nothing done. */
  | "silent"
  /** Done, but no answer. */
  | "unheard"
  /** Done long after it was given up. */
  | "late";

export interface World {
  readonly shelf: Shelf;
  /** What local storage holds. */
  readonly local: Map<string, string>;
  fault: Fault;
  /** Local storage takes nothing more. */
  isLocalFull: boolean;
  /** ms since 1970, by the test's clock. */
  now: number;
  /** Whether letters between pages arrive. */
  isChannelOpen: boolean;
  readonly pages: Set<Page>;
}

export interface Page {
  readonly store: WorkStore;
  readonly session: WorkSession;
  readonly work: () => Work;
  readonly state: () => SessionState;
  /** What was handed to the wearer. */
  readonly given: Download[];
  isHidden: boolean;
  /** Nothing of it happens any more, from one moment to the next. */
  readonly kill: () => void;
  /** It is closed as a browser closes it. */
  readonly close: () => void;
}

export const newWorld = (): World => ({
  shelf: emptyShelf(),
  local: new Map(),
  fault: "none",
  isLocalFull: false,
  now: Date.UTC(2026, 0, 1),
  isChannelOpen: true,
  pages: new Set(),
});

/** ms until a library that keeps silent is given up. */
const PATIENCE = 4000;

/** ms. So late is what comes late. */
const LATE = 6000;

/** ms that the library takes for an answer. */
const ANSWER = 3;

const never = <T>(): Promise<T> => new Promise(() => {});

const soon = (): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, ANSWER);
  });

function faultyLibrary(world: World, isDead: () => boolean): Library {
  const inner = memoryLibrary(world.shelf);
  const through = async <T>(ask: () => Promise<Result<T, StorageFailure>>): Promise<Result<T, StorageFailure>> => {
    await soon();
    if (isDead() || world.fault === "silent") return never();
    if (world.fault === "full") return fail({ code: "storage/full", detail: "no room" });
    if (world.fault === "aborted") return fail({ code: "storage/failed", detail: "aborted" });
    if (world.fault === "late") {
      await new Promise((resolve) => {
        setTimeout(resolve, LATE);
      });
      if (isDead()) return never();
    }
    const answer = await ask();
    return world.fault === "unheard" || isDead() ? never() : answer;
  };
  return {
    list: () => through(inner.list),
    entry: (id) => through(() => inner.entry(id)),
    load: (id) => through(() => inner.load(id)),
    peek: (id) => through(() => inner.peek(id)),
    raw: (id) => through(() => inner.raw(id)),
    save: (request) => through(() => inner.save(request)),
    bin: (id, time) => through(() => inner.bin(id, time)),
    remove: (id) => through(() => inner.remove(id)),
    pageValue: (name) => through(() => inner.pageValue(name)),
    setPageValue: (name, value) => through(() => inner.setPageValue(name, value)),
    changePageValue: (name, change) => through(() => inner.changePageValue(name, change)),
    close: inner.close,
  };
}

function localStorageOf(world: World, isDead: () => boolean): Storage {
  return {
    get length() {
      return world.local.size;
    },
    key: (at) => [...world.local.keys()][at] ?? null,
    getItem: (key) => world.local.get(key) ?? null,
    setItem: (key, text) => {
      if (world.isLocalFull) throw new Error("no room");
      if (!isDead()) world.local.set(key, text);
    },
    removeItem: (key) => {
      if (!isDead()) world.local.delete(key);
    },
    clear: () => world.local.clear(),
  };
}

interface WorldChannel extends Channel {
  readonly hear: (data: unknown) => void;
}

const channels = new WeakMap<World, Set<WorldChannel>>();

function channelOf(world: World, isDead: () => boolean): Channel {
  const all = channels.get(world) ?? new Set();
  channels.set(world, all);
  const heard: ((event: { readonly data: unknown }) => void)[] = [];
  const own: WorldChannel = {
    postMessage: (letter) => {
      if (isDead() || !world.isChannelOpen) return;
      const data: unknown = structuredClone(letter);
      for (const other of all) if (other !== own) setTimeout(() => other.hear(data), 1);
    },
    addEventListener: (_kind, listener) => heard.push(listener),
    close: () => all.delete(own),
    hear: (data) => {
      if (!isDead()) for (const listener of heard) listener({ data });
    },
  };
  all.add(own);
  return own;
}

/** Opens a page, as far as the session has started. */
export async function openPage(
  world: World,
  first: Work,
  library: Library | StorageFailure | null = null,
  persist: () => Promise<boolean | null> = async () => true,
): Promise<Page> {
  let isOver = false;
  const isDead = (): boolean => isOver;
  const store = createWorkStore(first);
  const given: Download[] = [];
  const session = createWorkSession(
    store,
    {
      library: library ?? withPatience(faultyLibrary(world, isDead), PATIENCE),
      storage: localStorageOf(world, isDead),
      channel: channelOf(world, isDead),
      now: () => world.now,
      isHidden: () => page.isHidden,
      give: (file) => given.push(file),
      persist: (asks) => (asks ? persist() : Promise.resolve(null)),
      salvage: async (work, version) => salvageWork(work, version),
      collisionWords: async (collisions) => collisions.map(({ of }) => of),
    },
    first,
  );
  const end = (): void => {
    isOver = true;
    world.pages.delete(page);
  };
  const page: Page = {
    store,
    session,
    work: () => store.getState().work,
    state: () => session.state.getState(),
    given,
    isHidden: false,
    kill: end,
    close: () => {
      session.pageIsClosing();
      end();
    },
  };
  world.pages.add(page);
  const started = session.start();
  await passes(world, 0);
  const progress = { isOver: false };
  void started.then(() => {
    progress.isOver = true;
  });
  // Where the library keeps silent it takes long, of which nobody sees each moment.
  for (let step = 10; step < 20_000 && !progress.isOver; step *= 1.1) await passes(world, Math.round(step));
  return page;
}

/** Lets time pass. */
export async function passes(world: World, ms: number): Promise<void> {
  world.now += ms;
  await vi.advanceTimersByTimeAsync(ms);
}
