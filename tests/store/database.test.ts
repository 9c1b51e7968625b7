/** The database of earlier layouts, taken over: what lies in it, whatever that is, and pages that still have it open. */
import { openDB, type IDBPDatabase } from "idb";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Result } from "../../src/core/result";
import { openLibrary } from "../../src/store/browserLibrary";
import type { Library } from "../../src/store/library";
import { stubDatabase } from "../support/database";
import { sampleWork } from "../support/sampleWork";
import { noRoom, plantAfter } from "./plantedFaults";

const NAME = "works-of-a-test";
const opened: { close: () => void }[] = [];

beforeEach(stubDatabase);

afterEach(() => {
  for (const one of opened.splice(0)) one.close();
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

/** As the page of before laid it out: one record for a work, and an index of what a list shows. */
async function secondLayout(): Promise<IDBPDatabase> {
  const db = await openDB(NAME, 2, {
    upgrade(made) {
      const works = made.createObjectStore("works", { keyPath: "id" });
      works.createIndex("list", ["saved", "name"]);
      made.createObjectStore("page");
    },
  });
  opened.push(db);
  return db;
}

/** What a page of the sixth version saved, and what a page of the fifth did. */
const sixth = (name: string) => ({ ...sampleWork, name });
const fifth = (name: string) => {
  const { wearer: _none, seen: _neither, ...work } = sixth(name);
  return work;
};
const record = (id: string, change: object = {}): object => ({
  id,
  name: id,
  stamp: `stamp of ${id}`,
  saved: 1000,
  version: 5,
  work: fifth(id),
  past: [fifth(`${id} before`)],
  future: [fifth(`${id} later`)],
  ...change,
});

describe("a database of the second layout", () => {
  it("is taken over with its works, their histories and what was open last", async () => {
    const old = await secondLayout();
    await old.put("works", record("a"));
    await old.put("works", record("b", { saved: 2000, version: 6, work: { ...sixth("b"), wearer: "Ada" } }));
    await old.put("page", "a", "last-open");
    old.close();
    const library = await open();
    expect(valueOf(await library.list())).toEqual([
      { id: "b", name: "b", wearer: null, stamp: "stamp of b", saved: 2000, binned: null },
      { id: "a", name: "a", wearer: null, stamp: "stamp of a", saved: 1000, binned: null },
    ]);
    expect(valueOf(await library.load("a"))).toEqual({
      id: "a",
      stamp: "stamp of a",
      work: sixth("a"),
      past: [sixth("a before")],
      future: [sixth("a later")],
    });
    expect(valueOf(await library.peek("b"))).toMatchObject({ wearer: "Ada" });
    expect(valueOf(await library.pageValue("last-open"))).toBe("a");
  });

  it("goes on from there: the stamp of before is the one to save over, and the steps are kept", async () => {
    const old = await secondLayout();
    await old.put("works", record("a"));
    old.close();
    const library = await open();
    const saved = { ...valueOf(await library.load("a")), work: sixth("gone on") };
    const request = { saved, stamp: "new", time: 3000, isHistorySaved: true };
    expect(valueOf(await library.save(request))).toEqual({ kind: "saved" });
    const later = await open();
    expect(valueOf(await later.load("a"))).toEqual({ ...saved, stamp: "new" });
  });

  it("loses nothing that is damaged: it lies there as it lay, and its neighbours are open", async () => {
    const old = await secondLayout();
    const damaged = record("broken", { work: { ...fifth("broken"), tapes: "none" }, past: "?", future: undefined });
    await old.put("works", damaged);
    await old.put("works", { id: "bare" });
    await old.put("works", { id: "odd", name: 7, stamp: 7, saved: "now", version: 9, work: 1n, past: [1, 2] });
    await old.put("works", record("good"));
    old.close();
    const library = await open();
    const ids = valueOf(await library.list()).map(({ id, name }) => [id, name] as const);
    expect(Object.fromEntries(ids)).toEqual({ bare: "", broken: "broken", good: "good", odd: "" });
    expect(valueOf(await library.raw("broken"))).toMatchObject({ work: { name: "broken", tapes: "none" }, version: 5 });
    expect(valueOf(await library.raw("odd"))).toMatchObject({ work: 1n, version: 9 });
    expect(await library.load("bare")).toMatchObject({ failure: { code: "storage/damaged", id: "bare" } });
    expect(await library.load("broken")).toMatchObject({ failure: { code: "storage/damaged" } });
    expect(await library.load("odd")).toMatchObject({ failure: { why: { code: "file/not-json" } } });
    expect(valueOf(await library.load("good")).work).toEqual(sixth("good"));
  });

  it("keeps the steps of a work that cannot be read, for whoever mends it", async () => {
    const old = await secondLayout();
    await old.put("works", record("broken", { work: null }));
    old.close();
    await open();
    const db = await openDB(NAME);
    opened.push(db);
    expect(await db.get("histories", "broken")).toEqual({
      id: "broken",
      version: 5,
      past: [fifth("broken before")],
      future: [fifth("broken later")],
    });
  });

  it("is taken over whole or not at all", async () => {
    const old = await secondLayout();
    const ids = Array.from({ length: 60 }, (_, count) => `work ${count}`);
    for (const id of ids) await old.put("works", record(id));
    old.close();
    let count = 0;
    plantAfter("put", () => {
      count += 1;
      if (count > 31) throw noRoom();
    });
    expect(await openLibrary(NAME)).toMatchObject({ ok: false });
    vi.restoreAllMocks();
    const library = await open();
    expect(valueOf(await library.list())).toHaveLength(ids.length);
    for (const id of ids) {
      const { work, past } = valueOf(await library.load(id));
      expect([work, past]).toEqual([sixth(id), [sixth(`${id} before`)]]);
    }
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
    expect(valueOf(await library.list())).toMatchObject([{ id: "a", name: "a", saved: 1000 }]);
    expect(valueOf(await library.load("a")).work).toEqual(sixth("a"));
    expect(valueOf(await library.pageValue("last-open"))).toBe("a");
  });
});

describe("a page of another layout that is open at the same time", () => {
  it("of before lets go, and then finds nothing it could write over", async () => {
    const old = await secondLayout();
    old.addEventListener("versionchange", () => old.close());
    await old.put("works", record("a"));
    const library = await open();
    expect(valueOf(await library.load("a")).work).toEqual(sixth("a"));
    expect(() => old.transaction("works", "readwrite")).toThrow(/not allowed/);
    await expect(openDB(NAME, 2)).rejects.toThrow(/version/i);
  });

  it("of before that does not let go is not waited for, and the database is there once it has", async () => {
    const old = await secondLayout();
    await old.put("works", record("a"));
    expect(await openLibrary(NAME, 30)).toEqual({ ok: false, failure: { code: "storage/unanswered" } });
    old.close();
    expect(valueOf(await (await open()).load("a")).work).toEqual(sixth("a"));
  });

  it("of a newer layout gets the database at once", async () => {
    const library = await open();
    const newer = await openDB(NAME, 99);
    newer.close();
    expect(await library.list()).toMatchObject({ ok: false, failure: { code: "storage/failed" } });
  });
});
