/** A page with a session on a library that a test can make fail, and with time in the test's hands. */
import { afterEach, beforeEach, vi } from "vitest";
import type { Work } from "../../src/core/decisions/work";
import { fail } from "../../src/core/result";
import type { Library, SaveRequest, StorageFailure } from "../../src/store/library";
import { memoryLibrary } from "../../src/store/memoryLibrary";
import type { Message, SessionState } from "../../src/store/sessionState";
import type { WorkSession } from "../../src/store/workSession";
import { run, type WorkStore } from "../../src/store/workStore";
import { sampleWork } from "../support/sampleWork";
import { newWorld, openPage, passes, type Page, type World } from "../support/world";

export const FULL: StorageFailure = { code: "storage/full", detail: "no room" };

/** ms. Longer than it takes until what was changed is saved, and shorter than until a save that failed is tried again. */
const REST = 1000;

/** A library whose answers a test can put others in place of. */
type TestLibrary = { -readonly [K in keyof Library]: Library[K] } & {
  /** Every save that was asked for. */
  readonly saves: SaveRequest[];
  /** What saves answer in place of saving. */
  refusal: StorageFailure | null;
  /** Ids of works that cannot be read. */
  readonly damaged: Set<string>;
};

function testLibrary(world: World): TestLibrary {
  const inner = memoryLibrary(world.shelf);
  const saves: SaveRequest[] = [];
  const unreadable = (id: string) =>
    fail<StorageFailure>({ code: "storage/damaged", id, why: { code: "file/damaged", places: ["work"] } });
  const library: TestLibrary = {
    ...inner,
    saves,
    refusal: null,
    damaged: new Set(),
    load: async (id) => (library.damaged.has(id) ? unreadable(id) : inner.load(id)),
    peek: async (id) => (library.damaged.has(id) ? unreadable(id) : inner.peek(id)),
    save: async (request) => {
      saves.push(request);
      return library.refusal === null ? inner.save(request) : fail(library.refusal);
    },
  };
  return library;
}

export const named = (name: string): Work => ({ ...sampleWork, name, alterations: [] });

export const rename = ({ store }: Pick<Page, "store">, name: string): void => run(store, { kind: "setName", name });
export const textsOf = (page: Page): readonly string[] => page.state().messages.map(({ text }) => text);
export const namesOf = (page: Page): readonly string[] => page.state().entries.map(({ name }) => name);

export function idOn(page: Page, name: string): string {
  const entry = [...page.state().entries, ...page.state().binned].find((one) => one.name === name);
  if (entry === undefined) throw new Error(`no work ${name}`);
  return entry.id;
}

/** Presses what a message offers by that label, the last such message. */
export function press(page: Page, label: string): void {
  const offers = page.state().messages.flatMap(({ actions }: Message) => actions);
  const offer = offers.findLast((action) => action.label === label);
  if (offer === undefined) throw new Error(`nothing offers “${label}”`);
  offer.run();
}

/** Lets time pass until something is done. */
export async function until<T>(world: World, going: Promise<T>): Promise<T> {
  const state = { isDone: false };
  const end = (): void => {
    state.isDone = true;
  };
  going.then(end, end);
  for (let round = 0; round < 4000 && !state.isDone; round += 1) await passes(world, 10);
  return going;
}

/** A world for each test, with time in the test's hands. */
export function worldOfEachTest(): { readonly world: World; readonly open: (first?: Work) => Promise<Page> } {
  let world = newWorld();
  beforeEach(() => {
    vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
    world = newWorld();
  });
  afterEach(() => {
    vi.useRealTimers();
  });
  return {
    get world() {
      return world;
    },
    open: (first = sampleWork) => openPage(world, first),
  };
}

export interface SessionPage {
  readonly world: World;
  readonly page: Page;
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
  /** Takes up the first that the last message offers. */
  readonly accept: () => Promise<void>;
  /** The page gone and opened afresh on the same library. */
  readonly nextPage: () => Promise<void>;
  /** The page opened in a browser that keeps nothing. */
  readonly pageWithoutStorage: (why: StorageFailure) => Promise<void>;
}

/** A new page before each test, on a first visit. */
export function pageOfEachTest(): SessionPage {
  const shared = worldOfEachTest();
  let library: TestLibrary;
  let page: Page;

  const state = (): SessionState => page.state();
  const show = (next: Page): void => {
    page = next;
  };
  const begin = (): TestLibrary => {
    library = testLibrary(shared.world);
    return library;
  };
  beforeEach(async () => {
    const { saves } = begin();
    show(await openPage(shared.world, sampleWork, library));
    saves.length = 0;
  });
  const openAnother = async (on: Library | StorageFailure): Promise<void> => {
    page.kill();
    show(await openPage(shared.world, sampleWork, on));
  };
  return {
    get world() {
      return shared.world;
    },
    get page() {
      return page;
    },
    get store() {
      return page.store;
    },
    get session() {
      return page.session;
    },
    get library() {
      return library;
    },
    work: () => page.work(),
    state,
    rename: (name) => rename(page, name),
    names: () => namesOf(page),
    texts: () => textsOf(page),
    idOf: (name) => idOn(page, name),
    rest: () => passes(shared.world, REST),
    accept: async () => {
      state().messages.at(-1)?.actions[0]?.run();
      await page.session.flush();
    },
    nextPage: () => openAnother(library),
    pageWithoutStorage: openAnother,
  };
}
