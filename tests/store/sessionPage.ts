/** A page with a session on a library that a test can make fail, and with time in the test's hands. */
import { afterEach, beforeEach, vi } from "vitest";
import type { Work } from "../../src/core/decisions/work";
import { fail } from "../../src/core/result";
import type { Library, SavedWork, StorageFailure } from "../../src/store/library";
import { memoryLibrary } from "../../src/store/memoryLibrary";
import type { SessionState } from "../../src/store/sessionState";
import { createWorkSession, type WorkSession } from "../../src/store/workSession";
import { createWorkStore, run, type WorkStore } from "../../src/store/workStore";
import { sampleWork } from "../support/sampleWork";

export const FULL: StorageFailure = { code: "storage/full", detail: "no room" };

/** Longer than a run of typing waits before it is saved. */
const REST = 1000;

/** A library whose answers a test can put others in place of. */
type TestLibrary = { -readonly [K in keyof Library]: Library[K] } & {
  /** Every save that was asked for. */
  readonly saves: SavedWork[];
  /** What saves answer in place of saving. */
  refusal: StorageFailure | null;
  /** Ids of works that cannot be read. */
  readonly damaged: Set<string>;
};

function testLibrary(): TestLibrary {
  const inner = memoryLibrary();
  const saves: SavedWork[] = [];
  const library: TestLibrary = {
    ...inner,
    saves,
    refusal: null,
    damaged: new Set(),
    load: async (id) =>
      library.damaged.has(id)
        ? fail({ code: "storage/damaged", id, why: { code: "file/damaged", places: ["work"] } })
        : inner.load(id),
    save: async (saved) => {
      saves.push(saved);
      return library.refusal === null ? inner.save(saved) : fail(library.refusal);
    },
  };
  return library;
}

export const named = (name: string): Work => ({ ...sampleWork, name, alterations: [] });

export interface SessionPage {
  readonly store: WorkStore;
  readonly session: WorkSession;
  readonly library: TestLibrary;
  readonly work: () => Work;
  readonly state: () => SessionState;
  readonly rename: (name: string) => void;
  readonly names: () => readonly string[];
  readonly texts: () => readonly string[];
  readonly idOf: (name: string) => string;
  readonly rest: () => Promise<void>;
  /** Takes up what the last message offers. */
  readonly accept: () => Promise<void>;
  /** The page opened afresh on the same library. */
  readonly nextPage: () => Promise<void>;
  /** The page opened in a browser that keeps nothing. */
  readonly pageWithoutStorage: (why: StorageFailure) => Promise<void>;
}

/** A new page before each test, on a first visit. */
export function useSessionPage(): SessionPage {
  let library: TestLibrary;
  let store: WorkStore;
  let session: WorkSession;

  const open = async (on: Library | null, why: StorageFailure | null): Promise<void> => {
    store = createWorkStore(sampleWork);
    session = createWorkSession(store, on, sampleWork, why);
    await session.start();
  };

  beforeEach(async () => {
    localStorage.clear();
    vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
    library = testLibrary();
    await open(library, null);
    library.saves.length = 0;
  });

  afterEach(() => {
    vi.useRealTimers();
  });

  const state = (): SessionState => session.state.getState();
  return {
    get store() {
      return store;
    },
    get session() {
      return session;
    },
    get library() {
      return library;
    },
    work: () => store.getState().work,
    state,
    rename: (name) => run(store, { kind: "setName", name }),
    names: () => state().entries.map(({ name }) => name),
    texts: () => state().messages.map(({ text }) => text),
    idOf: (name) => {
      const entry = state().entries.find((one) => one.name === name);
      if (entry === undefined) throw new Error(`no work ${name}`);
      return entry.id;
    },
    rest: async () => {
      await vi.advanceTimersByTimeAsync(REST);
    },
    accept: async () => {
      state().messages.at(-1)?.action?.run();
      await session.flush();
    },
    nextPage: () => open(library, null),
    pageWithoutStorage: (why) => open(null, why),
  };
}
