import { IDBDatabase, IDBObjectStore, IDBTransaction } from "fake-indexeddb";
import { openDB } from "idb";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Result } from "../../src/core/result";
import type { Work } from "../../src/core/decisions/work";
import { CURRENT_VERSION } from "../../src/document/upgrades";
import { openLibrary } from "../../src/store/browserLibrary";
import { forgetIn, forgottenIn } from "../../src/store/forgotten";
import { NEW_STAMP, type Library, type SavedWork, type SaveRequest } from "../../src/store/library";
import { stubDatabase } from "../support/database";
import { sampleWork } from "../support/sampleWork";
import { noRoom, plantAfter, plantNoRoomAtTheEnd } from "./plantedFaults";

const NAME = "works-of-a-test";
const opened: Library[] = [];

beforeEach(stubDatabase);

afterEach(() => {
  for (const library of opened.splice(0)) library.close();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

function valueOf<T, F>(result: Result<T, F>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.failure));
  return result.value;
}

async function open(): Promise<Library> {
  const library = valueOf(await openLibrary(NAME));
  opened.push(library);
  return library;
}

const named = (name: string): Work => ({ ...sampleWork, name });

const asked = (id: string, stamp: string, change: Partial<SavedWork & SaveRequest> = {}): SaveRequest => {
  const { time = 1, isHistorySaved = false, ...saved } = change;
  return {
    saved: { id, work: named(id), past: [], future: [], stamp: NEW_STAMP, ...saved },
    stamp,
    time,
    isHistorySaved,
  };
};

/** The database itself, for what no page of ours would write. */
async function raw<T>(action: (db: Awaited<ReturnType<typeof openDB>>) => Promise<T>): Promise<T> {
  const db = await openDB(NAME);
  try {
    return await action(db);
  } finally {
    db.close();
  }
}

const idsOf = async (library: Library): Promise<readonly string[]> =>
  valueOf(await library.list())
    .map(({ id }) => id)
    .toSorted();

describe("saving works", () => {
  it("gives back a work with its history, to the next page too", async () => {
    const [past, future] = [[named("1"), named("2")], [named("3")]];
    expect(await (await open()).save(asked("a", "s1", { past, future }))).toEqual({
      ok: true,
      value: { kind: "saved" },
    });
    const later = await open();
    expect(valueOf(await later.load("a"))).toEqual({ id: "a", work: named("a"), past, future, stamp: "s1" });
    expect(valueOf(await later.peek("a"))).toEqual(named("a"));
  });

  it("lists them by name and wearer, the last saved first", async () => {
    const library = await open();
    await library.save(asked("a", "1", { time: 1000 }));
    await library.save(asked("b", "2", { time: 1001, work: { ...named("b"), wearer: "Ada" } }));
    await library.save(asked("c", "3", { time: 1002 }));
    await library.save(asked("a", "4", { time: 2000, work: named("A again"), stamp: "1" }));
    const entry = { wearer: null, binned: null };
    const again = { ...entry, id: "a", name: "A again", stamp: "4", saved: 2000 };
    expect(valueOf(await library.list())).toEqual([
      again,
      { ...entry, id: "c", name: "c", stamp: "3", saved: 1002 },
      { ...entry, id: "b", name: "b", wearer: "Ada", stamp: "2", saved: 1001 },
    ]);
    expect(valueOf(await library.entry("a"))).toEqual(again);
    expect(valueOf(await library.entry("z"))).toBeNull();
  });

  it("writes the history only where it has changed, and always with the first save", async () => {
    const library = await open();
    const put = vi.spyOn(IDBObjectStore.prototype, "put");
    const tables = (): readonly string[] =>
      put.mock.contexts.splice(0).flatMap((store) => (store instanceof IDBObjectStore ? [store.name] : []));
    const past = [named("1")];
    await library.save(asked("a", "1", { past, isHistorySaved: true }));
    expect(tables()).toEqual(["works", "entries", "histories"]);
    await library.save(asked("a", "2", { work: named("typed"), past, stamp: "1", isHistorySaved: true }));
    expect(tables()).toEqual(["works", "entries"]);
    await library.save(asked("a", "3", { past: [...past, named("typed")], stamp: "2" }));
    expect(tables()).toEqual(["works", "entries", "histories"]);
    expect(valueOf(await library.load("a")).past.map(({ name }) => name)).toEqual(["1", "typed"]);
  });

  it("looks into a work without touching its history, and lists works without reading one", async () => {
    const library = await open();
    await library.save(asked("a", "1", { past: [named("1")] }));
    const got = vi.spyOn(IDBObjectStore.prototype, "get");
    const gotAll = vi.spyOn(IDBObjectStore.prototype, "getAll");
    const read = (spy: { mock: { contexts: unknown[] } }): readonly string[] =>
      spy.mock.contexts.splice(0).flatMap((store) => (store instanceof IDBObjectStore ? [store.name] : []));
    await library.peek("a");
    expect(read(got)).toEqual(["works"]);
    await library.list();
    await library.entry("a");
    expect([read(gotAll), read(got)]).toEqual([["entries"], ["entries"]]);
  });

  it("leaves another tab’s later save as it is, and hands it over", async () => {
    const [mine, theirs] = [await open(), await open()];
    await mine.save(asked("a", "1"));
    const past = [named("a")];
    expect(valueOf(await theirs.save(asked("a", "2", { work: named("theirs"), past, stamp: "1" })))).toEqual({
      kind: "saved",
    });
    const version = { id: "a", work: named("theirs"), past, future: [], stamp: "2" };
    const answer = valueOf(await mine.save(asked("a", "3", { work: named("mine"), stamp: "1" })));
    expect(answer).toEqual({ kind: "stale", theirs: version });
    expect(valueOf(await mine.load("a"))).toEqual(version);
    // A new work of an id that is there already is no reason to write over it either.
    expect(valueOf(await mine.save(asked("a", "4")))).toEqual({ kind: "stale", theirs: version });
  });

  it("tells a save over what cannot be read from one over what can", async () => {
    const library = await open();
    await library.save(asked("a", "1"));
    await raw((db) => db.put("works", { id: "a", stamp: "2", version: CURRENT_VERSION, work: 7 }));
    expect(valueOf(await library.save(asked("a", "3", { stamp: "1" })))).toEqual({ kind: "stale", theirs: null });
    expect(await raw((db) => db.get("works", "a"))).toMatchObject({ work: 7 });
  });

  it("says where a work was in the bin and is no longer", async () => {
    const library = await open();
    await library.save(asked("a", "1", { work: { ...named("a"), wearer: "Ada" } }));
    await library.bin("a", 77);
    const entry = { id: "a", name: "a", wearer: "Ada", stamp: "1", saved: 1 };
    expect(valueOf(await library.list())).toEqual([{ ...entry, binned: 77 }]);
    expect(valueOf(await library.load("a")).stamp).toBe("1");
    await library.bin("a", null);
    expect(valueOf(await library.entry("a"))).toEqual({ ...entry, binned: null });
    await library.bin("a", 78);
    expect(valueOf(await library.save(asked("a", "2", { stamp: "1" })))).toEqual({ kind: "broughtBack" });
    expect(valueOf(await library.entry("a"))).toMatchObject({ binned: null });
    expect(valueOf(await library.save(asked("a", "3", { stamp: "2" })))).toEqual({ kind: "saved" });
    // What is not there cannot be put in the bin, and does not come to be by it.
    await library.bin("z", 79);
    expect(valueOf(await library.entry("z"))).toBeNull();
  });

  it("says where all that was kept is gone, and keeps the work with its history all the same", async () => {
    const library = await open();
    await library.save(asked("a", "1"));
    for (const table of ["works", "entries", "histories", "page"]) await raw((db) => db.clear(table));
    const save = asked("a", "2", { past: [named("1")], stamp: "1", isHistorySaved: true });
    expect(valueOf(await library.save(save))).toEqual({ kind: "savedAfresh" });
    expect(valueOf(await library.load("a")).past).toEqual([named("1")]);
  });

  it("removes one for good, and leaves the others", async () => {
    const library = await open();
    await library.save(asked("a", "1"));
    await library.save(asked("b", "2"));
    expect(await library.remove("a")).toEqual({ ok: true, value: null });
    expect(await library.load("a")).toEqual({ ok: false, failure: { code: "storage/missing", id: "a" } });
    expect(await library.peek("a")).toEqual({ ok: false, failure: { code: "storage/missing", id: "a" } });
    expect(await idsOf(library)).toEqual(["b"]);
    expect(await raw((db) => db.getAllKeys("histories"))).toEqual(["b"]);
  });

  it("remembers what the page is to remember beside the works", async () => {
    const library = await open();
    expect(valueOf(await library.pageValue("last-open"))).toBeNull();
    await library.setPageValue("last-open", "b");
    await library.setPageValue("reminded", "5");
    const later = await open();
    expect(valueOf(await later.pageValue("last-open"))).toBe("b");
    await later.setPageValue("reminded", null);
    expect(valueOf(await library.pageValue("reminded"))).toBeNull();
  });

  it("makes a value of the one that is kept at one go, whatever another tab makes of it meanwhile", async () => {
    const tabs = [await open(), await open()];
    const turns = Array.from({ length: 20 }, (_, turn) => turn);
    await Promise.all(
      tabs.flatMap((tab, at) =>
        turns.map((turn) => tab.changePageValue("forgotten", (kept) => `${kept ?? ""}${at}.${turn} `)),
      ),
    );
    const kept = valueOf(await (await open()).pageValue("forgotten")) ?? "";
    expect(new Set(kept.trim().split(" "))).toEqual(new Set(turns.flatMap((turn) => [`0.${turn}`, `1.${turn}`])));
    await tabs[0]?.changePageValue("forgotten", () => null);
    expect(valueOf(await (await open()).pageValue("forgotten"))).toBeNull();
  });

  it("forgets for good what two tabs are told to at once", async () => {
    const [one, other] = [await open(), await open()];
    await Promise.all([forgetIn(one, ["a"]), forgetIn(other, ["b"]), forgetIn(one, ["c"]), forgetIn(other, ["d"])]);
    expect((await forgottenIn(one)).toSorted()).toEqual(["a", "b", "c", "d"]);
  });
});

describe("a damaged record", () => {
  const put = (change: object): Promise<unknown> =>
    raw((db) => db.put("works", { id: "x", stamp: "s", version: CURRENT_VERSION, work: named("x"), ...change }));

  it("is said to be so, listed, handed out as it lies, and left as it is", async () => {
    const library = await open();
    await library.save(asked("good", "1"));
    await library.save(asked("x", "2"));
    const broken = {
      id: "x",
      stamp: "2",
      version: CURRENT_VERSION,
      work: { ...sampleWork, tapes: [{ readings: { bustGirth: ["big"] } }] },
    };
    await put(broken);
    const failure = {
      code: "storage/damaged",
      id: "x",
      why: { code: "file/damaged", places: ["tapes.0.readings.bustGirth.0"] },
    };
    expect(await library.load("x")).toEqual({ ok: false, failure });
    expect(await library.peek("x")).toEqual({ ok: false, failure });
    expect(valueOf(await library.raw("x"))).toEqual(broken);
    expect(await idsOf(library)).toEqual(["good", "x"]);
    expect(await raw((db) => db.get("works", "x"))).toEqual(broken);
  });

  it.each([
    ["nothing but its id", { version: undefined, work: undefined, stamp: undefined }, "file/foreign"],
    ["a work that no text can hold", { work: { size: 1n } }, "file/not-json"],
    ["a work of a newer version", { version: CURRENT_VERSION + 1 }, "file/newer"],
    ["a number for a name", { work: { ...sampleWork, name: 7 } }, "file/damaged"],
    ["a number that is none", { work: { ...sampleWork, bustRadius: Number.NaN } }, "file/damaged"],
    ["a text for a work", { work: "?" }, "file/damaged"],
  ])("may hold %s, and the others are still listed and open", async (_, change, code) => {
    const library = await open();
    await library.save(asked("good", "1"));
    await put(change);
    expect(await library.load("x")).toMatchObject({ ok: false, failure: { code: "storage/damaged", why: { code } } });
    // It came without an entry, and must be found all the same.
    expect(await idsOf(library)).toEqual(["good", "x"]);
    for (const { name } of valueOf(await library.list())) expect(typeof name).toBe("string");
    expect(valueOf(await library.load("good")).work).toEqual(named("good"));
  });

  it("can be put in the bin even where nothing is known of it but its key", async () => {
    const library = await open();
    await put({ work: 7 });
    await library.bin("x", 77);
    expect(valueOf(await library.list())).toMatchObject([{ id: "x", binned: 77 }]);
    expect(valueOf(await library.raw("x"))).toMatchObject({ work: 7 });
    await library.bin("x", null);
    expect(valueOf(await library.list())).toMatchObject([{ id: "x", binned: null }]);
  });

  it("is brought up to date when an older page saved it, its history too", async () => {
    const framed = (name: string) => ({ ...named(name), picks: { frame: "12", hip: 2 } });
    const now = (name: string) => ({ ...named(name), picks: { baseSize: "12", hip: 2 } });
    const library = await open();
    await put({ version: 4, work: framed("x") });
    const history = { id: "x", version: 4, past: [framed("1"), framed("2")], future: [framed("3")] };
    await raw((db) => db.put("histories", history));
    expect(valueOf(await library.load("x"))).toMatchObject({
      work: now("x"),
      past: [now("1"), now("2")],
      future: [now("3")],
    });
  });

  it("may have a history of another version than the work: each is brought up to date from its own", async () => {
    const framed = { ...named("1"), picks: { frame: "12" } };
    const library = await open();
    await put({});
    await raw((db) => db.put("histories", { id: "x", version: 4, past: [framed], future: [] }));
    expect(valueOf(await library.load("x"))).toMatchObject({ work: named("x"), past: [{ picks: { baseSize: "12" } }] });
  });

  it("loses the steps of its history that cannot be read, not the work", async () => {
    const library = await open();
    await put({});
    const history = { id: "x", version: CURRENT_VERSION, past: [named("1"), { name: 5 }, named("3")], future: "none" };
    await raw((db) => db.put("histories", history));
    const { work, past, future } = valueOf(await library.load("x"));
    expect(work).toEqual(named("x"));
    expect(past.map(({ name }) => name)).toEqual(["1", "3"]);
    expect(future).toEqual([]);
    await raw((db) => db.delete("histories", "x"));
    expect(valueOf(await library.load("x"))).toMatchObject({ work: named("x"), past: [], future: [] });
  });
});

describe("storage that fails", () => {
  it.each<[string, unknown]>([
    ["is not there", undefined],
    [
      "is forbidden",
      {
        open() {
          throw new DOMException("not allowed", "SecurityError");
        },
      },
    ],
  ])("is unavailable where the database %s", async (_, database) => {
    vi.stubGlobal("indexedDB", database);
    expect(await openLibrary(NAME)).toMatchObject({ ok: false, failure: { code: "storage/unavailable" } });
  });

  it("is unavailable where the browser refuses to open it", async () => {
    // Of a newer layout than this page knows.
    (await openDB(NAME, 99)).close();
    expect(await openLibrary(NAME)).toMatchObject({
      ok: false,
      failure: { code: "storage/unavailable", detail: expect.stringContaining("VersionError") },
    });
  });

  it("says that it is full when there is no room, and keeps what was there", async () => {
    const library = await open();
    await library.save(asked("a", "1"));
    const more = asked("a", "2", { work: named("more"), stamp: "1" });
    vi.spyOn(IDBObjectStore.prototype, "put").mockImplementationOnce(() => {
      throw noRoom();
    });
    expect(await library.save(more)).toMatchObject({ ok: false, failure: { code: "storage/full" } });
    expect(valueOf(await library.load("a"))).toMatchObject({ work: { name: "a" }, stamp: "1" });
    // And goes on where there is room again.
    expect(valueOf(await library.save(more))).toEqual({ kind: "saved" });
  });

  it.each(["works", "entries", "histories"])(
    "keeps all of the last save or all of the one before where it ends in the middle, at the %s",
    async (table) => {
      const library = await open();
      await library.save(asked("a", "1", { past: [named("first")] }));
      plantAfter("put", ({ name, transaction }) => {
        if (name === table) transaction.abort();
      });
      const more = asked("a", "2", { work: named("more"), past: [named("second")], stamp: "1" });
      expect(await library.save(more)).toMatchObject({ ok: false, failure: { code: "storage/failed" } });
      vi.restoreAllMocks();
      expect(valueOf(await library.load("a"))).toMatchObject({
        work: { name: "a" },
        past: [{ name: "first" }],
        stamp: "1",
      });
      expect(valueOf(await library.entry("a"))).toMatchObject({ name: "a", stamp: "1" });
    },
  );

  it("does nothing by halves where the second of its records is refused", async () => {
    const library = await open();
    await library.save(asked("a", "1"));
    plantAfter("put", ({ name }) => {
      if (name === "entries") throw noRoom();
    });
    const more = asked("a", "2", { work: named("more"), stamp: "1" });
    expect(await library.save(more)).toMatchObject({ ok: false, failure: { code: "storage/full" } });
    expect(valueOf(await library.load("a"))).toMatchObject({ work: { name: "a" }, stamp: "1" });
  });

  it("says that it is full when the room runs out at the end of the transaction", async () => {
    const library = await open();
    plantNoRoomAtTheEnd();
    expect(await library.save(asked("a", "1"))).toMatchObject({ ok: false, failure: { code: "storage/full" } });
    expect(await library.load("a")).toMatchObject({ failure: { code: "storage/missing" } });
  });

  it("answers every other failure too, and throws nothing", async () => {
    const library = await open();
    vi.spyOn(IDBTransaction.prototype, "objectStore").mockImplementation(() => {
      throw new DOMException("broken", "UnknownError");
    });
    const answers = await Promise.all([
      library.list(),
      library.entry("a"),
      library.load("a"),
      library.peek("a"),
      library.raw("a"),
      library.save(asked("a", "1")),
      library.bin("a", 1),
      library.remove("a"),
      library.pageValue("last-open"),
      library.setPageValue("last-open", "a"),
      library.setPageValue("last-open", null),
      library.changePageValue("last-open", () => "a"),
    ]);
    for (const answer of answers)
      expect(answer).toMatchObject({
        ok: false,
        failure: { code: "storage/failed", detail: expect.stringContaining("broken") },
      });
  });

  it("answers where a transaction is given up before anything was asked of it, and no fault is left unheard", async () => {
    const library = await open();
    await library.save(asked("a", "1"));
    const unheard: unknown[] = [];
    const hear = (reason: unknown): void => void unheard.push(reason);
    process.on("unhandledRejection", hear);
    plantAfter("get", ({ transaction }) => transaction.abort());
    const failed = { ok: false, failure: { code: "storage/failed" } };
    expect(await library.load("a")).toMatchObject(failed);
    expect(await library.peek("a")).toMatchObject(failed);
    expect(await library.entry("a")).toMatchObject(failed);
    expect(await library.pageValue("last-open")).toMatchObject(failed);
    expect(await library.save(asked("a", "2", { stamp: "1" }))).toMatchObject(failed);
    expect(await library.bin("a", 1)).toMatchObject(failed);
    await new Promise((resolve) => {
      setTimeout(resolve, 20);
    });
    process.off("unhandledRejection", hear);
    expect(unheard).toEqual([]);
  });

  it("opens the database again where the browser itself closed it", async () => {
    const library = await open();
    await library.save(asked("a", "1"));
    const asking = vi.spyOn(IDBDatabase.prototype, "transaction");
    await library.load("a");
    const db: unknown = asking.mock.contexts[0];
    if (!(db instanceof IDBDatabase)) throw new Error("no database was used");
    db.close();
    // The only event that can be made by hand in this database; its type is what counts.
    db.dispatchEvent(new IDBVersionChangeEvent("close"));
    expect(valueOf(await library.load("a")).work).toEqual(named("a"));
  });

  it("opens the database again where another page made it anew", async () => {
    const library = await open();
    await library.save(asked("a", "1"));
    // A page of a newer layout asks for the database; this one lets it go.
    const newer = await openDB(NAME, 99);
    expect(await library.load("a")).toMatchObject({ ok: false, failure: { code: "storage/failed" } });
    newer.close();
    await new Promise((resolve) => {
      indexedDB.deleteDatabase(NAME).addEventListener("success", resolve);
    });
    // Its data cleared, it begins afresh.
    expect(valueOf(await library.list())).toEqual([]);
    expect(valueOf(await library.save(asked("b", "2")))).toEqual({ kind: "saved" });
  });
});
