import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { fail, ok } from "../../src/core/result";
import type { Work } from "../../src/core/decisions/work";
import { writeWorkFile } from "../../src/document/workFile";
import { createKeeper, type Keeper } from "../../src/store/keeper";
import { NEW_STAMP, type KeptWork, type Library, type StorageFailure } from "../../src/store/library";
import { memoryLibrary } from "../../src/store/memoryLibrary";
import {
  beginGesture,
  commitGesture,
  createWorkStore,
  preview,
  run,
  undo,
  type WorkStore,
} from "../../src/store/workStore";
import { sampleWork } from "../support/sampleWork";

const FULL: StorageFailure = { code: "storage/full", detail: "no room" };
/** Longer than a run of typing waits before it is saved. */
const REST = 1000;

/** A library whose answers a test can put others in place of. */
type TestLibrary = { -readonly [K in keyof Library]: Library[K] } & {
  /** Every save that was asked for. */
  readonly saves: KeptWork[];
  /** What saves answer in place of saving. */
  refusal: StorageFailure | null;
  /** Ids of works that cannot be read. */
  readonly damaged: Set<string>;
};

function testLibrary(): TestLibrary {
  const inner = memoryLibrary();
  const saves: KeptWork[] = [];
  const library: TestLibrary = {
    ...inner,
    saves,
    refusal: null,
    damaged: new Set(),
    load: async (id) =>
      library.damaged.has(id)
        ? fail({ code: "storage/damaged", id, why: { code: "file/damaged", places: ["work"] } })
        : inner.load(id),
    save: async (kept) => {
      saves.push(kept);
      return library.refusal === null ? inner.save(kept) : fail(library.refusal);
    },
  };
  return library;
}

let library: TestLibrary;
let store: WorkStore;
let keeper: Keeper;

beforeEach(async () => {
  localStorage.clear();
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
  library = testLibrary();
  store = createWorkStore(sampleWork);
  keeper = createKeeper(store, library, sampleWork);
  await keeper.start();
  library.saves.length = 0;
});

afterEach(() => {
  vi.useRealTimers();
});

const named = (name: string): Work => ({ ...sampleWork, name, alterations: [] });
const work = (): Work => store.getState().work;
const state = () => keeper.state.getState();
const rename = (name: string): void => run(store, { kind: "setName", name });
const names = (): readonly string[] => state().entries.map(({ name }) => name);
const texts = (): readonly string[] => state().messages.map(({ text }) => text);
const idOf = (name: string): string => {
  const entry = state().entries.find((one) => one.name === name);
  if (entry === undefined) throw new Error(`no work ${name}`);
  return entry.id;
};
const rest = async (): Promise<void> => {
  await vi.advanceTimersByTimeAsync(REST);
};
/** Takes up what the last message offers. */
const accept = async (): Promise<void> => {
  state().messages.at(-1)?.action?.run();
  await keeper.flush();
};
/** A page opened afresh on the same library. */
async function nextPage(): Promise<void> {
  store = createWorkStore(sampleWork);
  keeper = createKeeper(store, library, sampleWork);
  await keeper.start();
}

describe("start", () => {
  it("opens and keeps the first work on a first visit", () => {
    expect(work()).toBe(sampleWork);
    expect(state()).toMatchObject({
      entries: [{ id: state().openId, name: sampleWork.name }],
      storage: { state: "saved" },
      messages: [],
    });
  });

  it("opens what was open last, with its history", async () => {
    await keeper.create(named("mine"));
    rename("mine, changed");
    rename("mine, again");
    undo(store);
    await keeper.create(named("other"));
    await keeper.open(idOf("mine, changed"));
    const { past, future } = store.getState();
    await nextPage();
    expect(work().name).toBe("mine, changed");
    expect(store.getState()).toMatchObject({ past, future, gestureStart: null });
    undo(store);
    expect(work()).toEqual(named("mine"));
  });

  it("passes over what is damaged, says so, and never saves over it", async () => {
    await keeper.create(named("mine"));
    const broken = state().openId;
    library.damaged.add(broken);
    library.saves.length = 0;
    await nextPage();
    expect(work().name).toBe(sampleWork.name);
    expect(texts()).toEqual(["A work kept here could not be read. It was left as it is, untouched."]);
    rename("changed");
    await rest();
    expect(library.saves.map(({ id }) => id)).not.toContain(broken);
    expect(state().entries.map(({ id }) => id)).toContain(broken);
  });

  it("opens the first work anew where all that is kept is damaged", async () => {
    library.damaged.add(state().openId);
    await nextPage();
    expect(work()).toEqual(sampleWork);
    expect(state().entries).toHaveLength(2);
    expect(library.damaged.has(state().openId)).toBe(false);
  });

  it("opens any other work where the last one is gone", async () => {
    await keeper.create(named("mine"));
    await library.remove(state().openId);
    await nextPage();
    expect(work()).toEqual(sampleWork);
    expect(texts()).toEqual([]);
  });
});

describe("saving", () => {
  it("saves once after a run of changes, with the history", async () => {
    for (const name of ["a", "ab", "abc"]) {
      rename(name);
      await vi.advanceTimersByTimeAsync(100);
    }
    expect(library.saves).toEqual([]);
    await rest();
    expect(library.saves.map((kept) => [kept.work.name, kept.past.length])).toEqual([["abc", 3]]);
    expect(names()).toEqual(["abc"]);
    await rest();
    expect(library.saves).toHaveLength(1);
  });

  it("waits until the changes rest, however long they go on", async () => {
    for (const name of ["a", "ab", "abc", "abcd"]) {
      rename(name);
      await vi.advanceTimersByTimeAsync(300);
    }
    expect(library.saves).toEqual([]);
    await rest();
    expect(library.saves.map((kept) => kept.work.name)).toEqual(["abcd"]);
  });

  it("saves at once when asked to, and not again", async () => {
    rename("now");
    await keeper.flush();
    expect(library.saves.map((kept) => kept.work.name)).toEqual(["now"]);
    await rest();
    expect(library.saves).toHaveLength(1);
  });

  it("saves an undo like any other change, and an entry that could not be read", async () => {
    rename("changed");
    await keeper.flush();
    undo(store);
    run(store, { kind: "setUnread", field: "bust", text: "9o" });
    await rest();
    expect(library.saves.at(-1)).toMatchObject({
      work: { name: sampleWork.name, unread: { bust: "9o" } },
      past: [],
      future: [{ name: "changed" }],
    });
  });

  it("leaves a drag alone until it is committed", async () => {
    beginGesture(store);
    preview(store, { kind: "setName", name: "dragging" });
    await rest();
    expect(library.saves).toEqual([]);
    commitGesture(store);
    await rest();
    expect(library.saves.map((kept) => kept.work.name)).toEqual(["dragging"]);
  });

  it("saves what changed while it was saving", async () => {
    rename("one");
    const saving = keeper.flush();
    rename("two");
    await saving;
    await rest();
    expect(library.saves.at(-1)?.work.name).toBe("two");
  });

  it("says when it fails, goes on, and saves everything once it can", async () => {
    library.refusal = FULL;
    rename("one");
    await rest();
    expect(state().storage).toMatchObject({ state: "failed", words: expect.stringMatching(/no room left.*Download/) });
    rename("two");
    expect(work().name).toBe("two");
    library.refusal = null;
    await rest();
    expect(state().storage).toMatchObject({ state: "saved" });
    const kept = await library.load(state().openId);
    expect(kept).toMatchObject({
      ok: true,
      value: { work: { name: "two" }, past: [{ name: sampleWork.name }, { name: "one" }] },
    });
  });

  it("goes on under a new name's id where another tab has changed the work", async () => {
    const id = state().openId;
    library.save = async (kept) => ok({ id: kept.id === id ? "beside" : kept.id, stamp: "s" });
    rename("mine");
    await keeper.flush();
    expect(state().openId).toBe("beside");
    expect(work().name).toBe("mine (copy)");
    expect(texts()).toEqual([
      "“mine” was changed in another tab too. What was changed here is kept beside it, as “mine (copy)”.",
    ]);
  });
});

describe("changing works", () => {
  it("saves the open one first", async () => {
    rename("left");
    await keeper.create(named("next"));
    expect(work()).toEqual(named("next"));
    expect(names().toSorted()).toEqual(["left", "next"]);
    await keeper.open(idOf("left"));
    expect(work().name).toBe("left");
    expect(store.getState().past).toHaveLength(1);
  });

  it("commits a drag that is going on", async () => {
    beginGesture(store);
    preview(store, { kind: "setName", name: "dragged" });
    await keeper.create(named("next"));
    expect(names().toSorted()).toEqual(["dragged", "next"]);
    expect(store.getState().gestureStart).toBeNull();
  });

  it("loses nothing that is typed while the other work is loading", async () => {
    await keeper.create(named("next"));
    const load = library.load;
    library.load = (id) => {
      rename("typed meanwhile");
      return load(id);
    };
    await keeper.open(idOf(sampleWork.name));
    expect(work().name).toBe(sampleWork.name);
    expect(names()).toContain("typed meanwhile");
  });

  it("asks before it leaves what was typed while the other work was loading and could not be saved", async () => {
    await keeper.create(named("next"));
    const load = library.load;
    library.load = (id) => {
      library.load = load;
      library.refusal = FULL;
      rename("typed meanwhile");
      return load(id);
    };
    await keeper.open(idOf(sampleWork.name));
    expect(work().name).toBe("typed meanwhile");
    expect(texts()).toEqual([expect.stringMatching(/could not be saved, so it stays open/)]);
    await accept();
    expect(work().name).toBe(sampleWork.name);
  });

  it("opens the open work without going back to what is kept of it", async () => {
    rename("changed");
    library.damaged.add(state().openId);
    await keeper.open(state().openId);
    expect(work().name).toBe("changed");
    expect(texts()).toEqual([]);
  });

  it("asks before it leaves changes that could not be saved", async () => {
    library.refusal = FULL;
    rename("unsaved");
    await keeper.create(named("next"));
    expect(work().name).toBe("unsaved");
    expect(texts()).toEqual([expect.stringMatching(/could not be saved, so it stays open/)]);
    library.refusal = null;
    await accept();
    expect(work().name).toBe("next");
    expect(state().messages).toEqual([]);
  });

  it("does not take a new work for saved where it could not be", async () => {
    library.refusal = FULL;
    await keeper.create(named("new"));
    expect(work().name).toBe("new");
    expect(state().storage.state).toBe("failed");
    library.refusal = null;
    await keeper.flush();
    expect(names()).toContain("new");
    expect(state().storage.state).toBe("saved");
  });

  it("says where a work cannot be opened, and stays", async () => {
    await keeper.create(named("next"));
    library.damaged.add(idOf(sampleWork.name));
    await keeper.open(idOf(sampleWork.name));
    expect(work().name).toBe("next");
    expect(texts()).toEqual([expect.stringMatching(/could not be read/)]);
  });

  it("lists a work without a name so that it can still be found", async () => {
    rename(" ");
    await keeper.flush();
    expect(names()).toEqual(["(no name)"]);
    await keeper.remove(state().openId);
    expect(texts()).toEqual(["“(no name)” was deleted."]);
  });

  it("copies the open work as it stands, and any other as it is kept, without their histories", async () => {
    rename("one");
    await keeper.copy(state().openId);
    expect(work()).toEqual({ ...sampleWork, name: "one (copy)" });
    expect(store.getState().past).toEqual([]);
    await keeper.copy(idOf("one"));
    expect(names().filter((name) => name === "one (copy)")).toHaveLength(2);
  });
});

describe("files", () => {
  it("opens a file as a work of its own", async () => {
    await keeper.openText(writeWorkFile(named("from a file")), "x.json");
    expect(work()).toEqual(named("from a file"));
    expect(names()).toContain(sampleWork.name);
  });

  it("changes nothing on a file that cannot be read, and names it", async () => {
    rename("unsaved yet");
    await keeper.openText("[]", "x.json");
    expect(work().name).toBe("unsaved yet");
    expect(state().entries).toHaveLength(1);
    expect(texts()).toEqual(["x.json: This is a file of something else, not a saved work. Nothing was changed."]);
    keeper.dismiss(state().messages[0]?.id ?? "");
    expect(texts()).toEqual([]);
  });

  it.each([
    ["Summer Dress / Nº 2", "summer-dress-nº-2.bodice.json"],
    ["../..", "work.bodice.json"],
    ["Été", "été.bodice.json"],
  ])("hands out %j as %j", (name, file) => {
    rename(name);
    expect(keeper.file()).toEqual({ name: file, text: writeWorkFile(work()) });
  });
});

describe("deleting", () => {
  it("takes another work away and brings it back whole", async () => {
    rename("one");
    rename("two");
    undo(store);
    await keeper.create(named("next"));
    await keeper.remove(idOf("one"));
    expect(names()).toEqual(["next"]);
    expect(texts()).toEqual(["“one” was deleted."]);
    await accept();
    expect(work().name).toBe("one");
    expect([store.getState().past.length, store.getState().future.length]).toEqual([1, 1]);
    expect(names().toSorted()).toEqual(["next", "one"]);
    expect(state().messages).toEqual([]);
  });

  it("opens another work in place of the open one, and does not save what is gone", async () => {
    await keeper.create(named("next"));
    rename("gone, changed just now");
    const gone = state().openId;
    library.saves.length = 0;
    await keeper.remove(gone);
    await rest();
    expect(work().name).toBe(sampleWork.name);
    expect(library.saves.map(({ id }) => id)).not.toContain(gone);
    await accept();
    expect(work().name).toBe("gone, changed just now");
  });

  it("begins a blank work where the last one goes", async () => {
    await keeper.remove(state().openId);
    expect(work()).toMatchObject({ name: "My bodice", unit: sampleWork.unit, tapes: [{ readings: {} }] });
    expect(names()).toEqual(["My bodice"]);
  });

  it("keeps a damaged work, and what could not be deleted", async () => {
    await keeper.create(named("next"));
    const first = idOf(sampleWork.name);
    library.damaged.add(first);
    await keeper.remove(first);
    expect(names()).toContain(sampleWork.name);
    expect(texts()).toEqual([expect.stringMatching(/could not be read/)]);
    library.remove = async () => fail({ code: "storage/failed", detail: "broken" });
    await keeper.remove(idOf("next"));
    expect(work().name).toBe("next");
    expect(state().storage.state).toBe("failed");
  });

  it("makes room: what could not be saved before is saved then", async () => {
    await keeper.create(named("next"));
    library.refusal = FULL;
    rename("unsaved");
    await rest();
    const { remove } = library;
    library.remove = (id) => {
      library.refusal = null;
      return remove(id);
    };
    await keeper.remove(idOf(sampleWork.name));
    expect(names()).toEqual(["unsaved"]);
    expect(state().storage.state).toBe("saved");
  });

  it("leaves the other messages where they are when one is taken up", async () => {
    await keeper.openText("[]", "x.json");
    await keeper.create(named("next"));
    await keeper.remove(idOf(sampleWork.name));
    await accept();
    expect(texts()).toEqual([expect.stringMatching(/^x\.json/)]);
  });

  it("says so where a work cannot be brought back for want of room, and offers it still", async () => {
    await keeper.create(named("next"));
    await keeper.remove(idOf(sampleWork.name));
    library.refusal = FULL;
    await accept();
    expect(state().storage.state).toBe("failed");
    expect(texts()).toEqual([expect.stringMatching(/was deleted/)]);
    library.refusal = null;
    await accept();
    expect(work()).toEqual(sampleWork);
  });

  it("brings a work back once, however often that is pressed", async () => {
    await keeper.create(named("next"));
    await keeper.remove(idOf(sampleWork.name));
    const bringBack = state().messages[0]?.action?.run;
    bringBack?.();
    bringBack?.();
    await keeper.flush();
    expect(names().toSorted()).toEqual([sampleWork.name, "next"].toSorted());
    expect(library.saves.filter((kept) => kept.work.name === sampleWork.name)).toHaveLength(1);
  });
});

describe("a page that goes before its last change is saved", () => {
  /** The database answers no more once the page is going; the next page begins with one that does. */
  const part = async (): Promise<void> => {
    const { save } = library;
    library.save = () => new Promise(() => {});
    keeper.part();
    await rest();
    library.save = save;
    expect(library.saves).toEqual([]);
  };

  it("leaves it to the next page, with its history", async () => {
    const id = state().openId;
    rename("changed");
    await part();
    await nextPage();
    expect(state().openId).toBe(id);
    expect(work().name).toBe("changed");
    undo(store);
    expect(work()).toEqual(sampleWork);
    await nextPage();
    expect(state().entries).toHaveLength(1);
  });

  it("leaves a drag as far as it went", async () => {
    beginGesture(store);
    preview(store, { kind: "setName", name: "dragged" });
    await part();
    await nextPage();
    expect(work().name).toBe("dragged");
    undo(store);
    expect(work()).toEqual(sampleWork);
  });

  it("leaves nothing where all is saved, or is saved after all", async () => {
    keeper.part();
    expect(localStorage.length).toBe(0);
    rename("changed");
    keeper.part();
    expect(localStorage.length).toBe(1);
    await keeper.flush();
    expect(localStorage.length).toBe(0);
    expect(library.saves).toHaveLength(1);
  });

  it("saves at once where the page has time for it, or stays after all", async () => {
    rename("changed");
    keeper.part();
    // Not yet long enough for a run of typing to be over.
    await vi.advanceTimersByTimeAsync(1);
    expect(library.saves.map((kept) => kept.work.name)).toEqual(["changed"]);
    expect(localStorage.length).toBe(0);
  });

  it("makes no second work of one that was saved just the same", async () => {
    rename("changed");
    keeper.part();
    const key = localStorage.key(0) ?? "";
    const left = localStorage.getItem(key) ?? "";
    await keeper.flush();
    // Saved, but gone before that could be noted.
    localStorage.setItem(key, left);
    expect(localStorage.length).toBe(1);
    await nextPage();
    expect(names()).toEqual(["changed"]);
    expect(localStorage.length).toBe(0);
  });

  it("is left once more where it cannot be saved yet", async () => {
    rename("changed");
    await part();
    library.refusal = FULL;
    await nextPage();
    expect(work()).toEqual(sampleWork);
    expect(state().storage.state).toBe("failed");
    library.refusal = null;
    await nextPage();
    expect(work().name).toBe("changed");
  });
});

describe("a browser that keeps nothing", () => {
  const why: StorageFailure = { code: "storage/unavailable", detail: "blocked" };

  beforeEach(async () => {
    store = createWorkStore(sampleWork);
    keeper = createKeeper(store, null, sampleWork, why);
    await keeper.start();
  });

  it("says so from the start and after every change, and the work stays usable", async () => {
    const words = expect.stringMatching(/does not let the page keep anything.*download/);
    expect(state().storage).toEqual({ state: "failed", words });
    rename("changed");
    await rest();
    expect(work().name).toBe("changed");
    expect(state().storage).toEqual({ state: "failed", words });
    expect(keeper.file().text).toBe(writeWorkFile(work()));
  });

  it("keeps works as long as the page is open: none is lost by beginning another", async () => {
    rename("first, changed");
    await keeper.create(named("next"));
    expect(names().toSorted()).toEqual(["first, changed", "next"]);
    await keeper.open(idOf("first, changed"));
    expect(work().name).toBe("first, changed");
    await keeper.remove(idOf("next"));
    await accept();
    expect(work().name).toBe("next");
  });
});

describe("memoryLibrary", () => {
  it("answers for what it does not have", async () => {
    const shelf = memoryLibrary();
    expect(await shelf.load("a")).toEqual({ ok: false, failure: { code: "storage/missing", id: "a" } });
    expect(await shelf.lastOpen()).toEqual({ ok: true, value: null });
    await shelf.save({ id: "a", work: sampleWork, past: [], future: [], stamp: NEW_STAMP });
    await shelf.setLastOpen("a");
    expect(await shelf.lastOpen()).toEqual({ ok: true, value: "a" });
    shelf.close();
    expect(await shelf.list()).toEqual({ ok: true, value: [] });
  });
});
