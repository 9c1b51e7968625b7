import { IDBDatabase, IDBObjectStore, IDBTransaction } from "fake-indexeddb";
import { openDB } from "idb";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Result } from "../../src/core/result";
import type { Work } from "../../src/core/decisions/work";
import { CURRENT_VERSION } from "../../src/document/upgrades";
import { openLibrary } from "../../src/store/browserLibrary";
import { NEW_STAMP, type Library, type SavedWork } from "../../src/store/library";
import { stubDatabase } from "../support/database";
import { sampleWork } from "../support/sampleWork";

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
const savedWork = (id: string, change: Partial<SavedWork> = {}): SavedWork => ({
  id,
  work: named(id),
  past: [],
  future: [],
  stamp: NEW_STAMP,
  ...change,
});

/** The database itself, for what no page of ours would write. */
async function raw<T>(action: (db: Awaited<ReturnType<typeof openDB>>) => Promise<T>): Promise<T> {
  const db = await openDB(NAME);
  try {
    return await action(db);
  } finally {
    db.close();
  }
}

const record = (id: string, change: object = {}): object => ({
  id,
  name: id,
  stamp: "s",
  saved: 1,
  version: CURRENT_VERSION,
  work: named(id),
  past: [],
  future: [],
  ...change,
});

describe("saving works", () => {
  it("gives back a work with its history, to the next page too", async () => {
    const work = savedWork("a", { past: [named("1"), named("2")], future: [named("3")] });
    const { id, stamp } = valueOf(await (await open()).save(work));
    expect(id).toBe("a");
    const later = await open();
    expect(valueOf(await later.load("a"))).toEqual({ ...work, stamp });
  });

  it("lists them by name, the last saved first", async () => {
    const library = await open();
    const clock = vi.spyOn(Date, "now");
    for (const [at, id] of ["a", "b", "c"].entries()) {
      clock.mockReturnValue(1000 + at);
      await library.save(savedWork(id));
    }
    const { stamp } = valueOf(await library.load("a"));
    clock.mockReturnValue(2000);
    await library.save(savedWork("a", { work: named("A again"), stamp }));
    expect(valueOf(await library.list())).toEqual([
      { id: "a", name: "A again" },
      { id: "c", name: "c" },
      { id: "b", name: "b" },
    ]);
  });

  it("removes one and leaves the others", async () => {
    const library = await open();
    await library.save(savedWork("a"));
    await library.save(savedWork("b"));
    expect(await library.remove("a")).toEqual({ ok: true, value: null });
    expect(await library.load("a")).toEqual({ ok: false, failure: { code: "storage/missing", id: "a" } });
    expect(valueOf(await library.list())).toEqual([{ id: "b", name: "b" }]);
  });

  it("remembers which was open last", async () => {
    const library = await open();
    expect(valueOf(await library.lastOpen())).toBeNull();
    await library.setLastOpen("b");
    expect(valueOf(await (await open()).lastOpen())).toBe("b");
  });

  it("keeps a work beside another tab's of the same id, so that neither is lost", async () => {
    const mine = await open();
    const theirs = await open();
    const { stamp } = valueOf(await mine.save(savedWork("a")));
    await theirs.save(savedWork("a", { work: named("theirs"), stamp }));
    const saved = valueOf(await mine.save(savedWork("a", { work: named("mine"), stamp })));
    expect(saved.id).not.toBe("a");
    expect(valueOf(await mine.load("a")).work.name).toBe("theirs");
    expect(valueOf(await mine.load(saved.id)).work.name).toBe("mine");
    // From then on the two go their own ways.
    const again = valueOf(await mine.save(savedWork(saved.id, { work: named("mine, later"), stamp: saved.stamp })));
    expect(again.id).toBe(saved.id);
    expect(valueOf(await mine.list())).toHaveLength(2);
  });
});

describe("a damaged record", () => {
  it("is said to be so, listed, and left as it is", async () => {
    const library = await open();
    await library.save(savedWork("good"));
    const broken = record("broken", { work: { ...sampleWork, tapes: [{ readings: { bustGirth: ["big"] } }] } });
    await raw((db) => db.put("works", broken));
    expect(await library.load("broken")).toEqual({
      ok: false,
      failure: {
        code: "storage/damaged",
        id: "broken",
        why: { code: "file/damaged", places: ["tapes.0.readings.bustGirth.0"] },
      },
    });
    expect(
      valueOf(await library.list())
        .map(({ id }) => id)
        .toSorted(),
    ).toEqual(["broken", "good"]);
    expect(await raw((db) => db.get("works", "broken"))).toEqual(broken);
  });

  it.each([
    ["nothing but its id", { id: "x" }, "file/foreign"],
    ["a work that no text can hold", record("x", { work: { size: 1n } }), "file/not-json"],
    ["a work of a newer version", record("x", { version: CURRENT_VERSION + 1 }), "file/newer"],
    ["a number for a name", record("x", { name: 7, work: { ...sampleWork, name: 7 } }), "file/damaged"],
    ["a number that is none", record("x", { work: { ...sampleWork, bustRadius: Number.NaN } }), "file/damaged"],
  ])("may hold %s, and the others are still there", async (_, broken, code) => {
    const library = await open();
    await library.save(savedWork("good"));
    await raw((db) => db.put("works", broken));
    expect(await library.load("x")).toMatchObject({ ok: false, failure: { code: "storage/damaged", why: { code } } });
    expect(
      valueOf(await library.list())
        .map(({ id }) => id)
        .toSorted(),
    ).toEqual(["good", "x"]);
    for (const { name } of valueOf(await library.list())) expect(typeof name).toBe("string");
    expect(valueOf(await library.load("good")).work).toEqual(named("good"));
  });

  it("is brought up to date when an older page saved it, its history too", async () => {
    const framed = (name: string) => ({ ...named(name), picks: { frame: "12", hip: 2 } });
    const now = (name: string) => ({ ...named(name), picks: { baseSize: "12", hip: 2 } });
    const library = await open();
    const older = { version: 4, work: framed("a"), past: [framed("1"), framed("2")], future: [framed("3")] };
    await raw((db) => db.put("works", record("a", older)));
    expect(valueOf(await library.load("a"))).toMatchObject({
      work: now("a"),
      past: [now("1"), now("2")],
      future: [now("3")],
    });
  });

  it("loses the steps of its history that cannot be read, not the work", async () => {
    const library = await open();
    await raw((db) => db.put("works", record("a", { past: [named("1"), { name: 5 }, named("3")], future: "none" })));
    const { work, past, future } = valueOf(await library.load("a"));
    expect(work).toEqual(named("a"));
    expect(past.map(({ name }) => name)).toEqual(["1", "3"]);
    expect(future).toEqual([]);
  });
});

describe("a database of the first layout", () => {
  it("is taken over with its works", async () => {
    const old = await openDB(NAME, 1, {
      upgrade(db) {
        db.createObjectStore("works", { keyPath: "id" });
        db.createObjectStore("page");
      },
    });
    await old.put("works", record("a"));
    await old.put("page", "a", "last-open");
    old.close();
    const library = await open();
    expect(valueOf(await library.list())).toEqual([{ id: "a", name: "a" }]);
    expect(valueOf(await library.load("a")).work).toEqual(named("a"));
    expect(valueOf(await library.lastOpen())).toBe("a");
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

  it("is unavailable where the database never answers, and the page goes on", async () => {
    // An older page in another tab that does not let go.
    const old = await openDB(NAME, 1);
    expect(await openLibrary(NAME, 30)).toMatchObject({
      ok: false,
      failure: { code: "storage/unavailable", detail: expect.stringContaining("in time") },
    });
    old.close();
    const library = await open();
    expect(valueOf(await library.list())).toEqual([]);
    library.close();
    // The answer that came too late was put away: nothing stands in the way of a newer page.
    (await openDB(NAME, 3)).close();
  });

  it("says that it is full when there is no room, and keeps what was there", async () => {
    const library = await open();
    const { stamp } = valueOf(await library.save(savedWork("a")));
    vi.spyOn(IDBObjectStore.prototype, "put").mockImplementationOnce(() => {
      throw new DOMException("no room", "QuotaExceededError");
    });
    expect(await library.save(savedWork("a", { work: named("more"), stamp }))).toMatchObject({
      ok: false,
      failure: { code: "storage/full" },
    });
    expect(valueOf(await library.load("a")).work.name).toBe("a");
    // And goes on where there is room again.
    expect(valueOf(await library.save(savedWork("a", { work: named("more"), stamp }))).id).toBe("a");
  });

  it("says that it is full when the room runs out at the end of the transaction", async () => {
    const library = await open();
    vi.spyOn(IDBObjectStore.prototype, "put").mockImplementationOnce(function putAndAbort(
      this: IDBObjectStore,
      value: unknown,
    ) {
      const request = this.add(value);
      Object.defineProperty(this.transaction, "error", { value: new DOMException("no room", "QuotaExceededError") });
      this.transaction.abort();
      return request;
    });
    expect(await library.save(savedWork("a"))).toMatchObject({ ok: false, failure: { code: "storage/full" } });
    expect(await library.load("a")).toMatchObject({ failure: { code: "storage/missing" } });
  });

  it("answers every other failure too, and throws nothing", async () => {
    const library = await open();
    vi.spyOn(IDBTransaction.prototype, "objectStore").mockImplementation(() => {
      throw new DOMException("broken", "UnknownError");
    });
    const answers = await Promise.all([
      library.list(),
      library.load("a"),
      library.save(savedWork("a")),
      library.remove("a"),
      library.lastOpen(),
      library.setLastOpen("a"),
    ]);
    for (const answer of answers)
      expect(answer).toMatchObject({
        ok: false,
        failure: { code: "storage/failed", detail: expect.stringContaining("broken") },
      });
  });

  it("opens the database again where the browser itself closed it", async () => {
    const library = await open();
    await library.save(savedWork("a"));
    const asked = vi.spyOn(IDBDatabase.prototype, "transaction");
    await library.load("a");
    const db: unknown = asked.mock.contexts[0];
    if (!(db instanceof IDBDatabase)) throw new Error("no database was used");
    db.close();
    // The only event that can be made by hand in this database; its type is what counts.
    db.dispatchEvent(new IDBVersionChangeEvent("close"));
    expect(valueOf(await library.load("a")).work).toEqual(named("a"));
  });

  it("opens the database again where another page made it anew", async () => {
    const library = await open();
    await library.save(savedWork("a"));
    // A page of a newer layout asks for the database; this one lets it go.
    const newer = await openDB(NAME, 3);
    expect(await library.load("a")).toMatchObject({ ok: false, failure: { code: "storage/failed" } });
    newer.close();
    await new Promise((resolve) => {
      indexedDB.deleteDatabase(NAME).addEventListener("success", resolve);
    });
    // Its data cleared, it begins afresh.
    expect(valueOf(await library.list())).toEqual([]);
    expect(valueOf(await library.save(savedWork("b"))).id).toBe("b");
  });
});
