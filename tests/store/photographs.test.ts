/** Photographs of trials: kept by themselves, found by their trial, gone with the last work; and whatever breaks, no work does. */
import { openDB } from "idb";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Result } from "../../src/core/result";
import type { Work } from "../../src/core/decisions/work";
import { applyCommand } from "../../src/core/plan/commands";
import { readAnyFile } from "../../src/document/worksFile";
import { readWorkFile, writeWorkFile } from "../../src/document/workFile";
import { openLibrary } from "../../src/store/browserLibrary";
import { inFile, openPhotographs, outOfFile, photographId, type Photograph } from "../../src/store/photographs";
import { stubDatabase } from "../support/database";
import { sampleWork } from "../support/sampleWork";

const NAME = "photographs-of-a-test";

beforeEach(stubDatabase);
afterEach(() => void vi.unstubAllGlobals());

function valueOf<T, F>(result: Result<T, F>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.failure));
  return result.value;
}

const photograph = (trial: string, added: number, ...bytes: readonly number[]): Photograph => ({
  id: photographId(trial, added),
  trial,
  added,
  type: "image/jpeg",
  bytes: new Uint8Array(bytes.length === 0 ? [0xff, 0xd8, added] : bytes).buffer,
});

/** No trial is in any other work. */
const NONE: ReadonlyMap<string, string> = new Map();

const work: Work = applyCommand(sampleWork, { kind: "beginTrial", id: "t1", day: "2026-11-20" });

describe("photographs", () => {
  it("are found by their trial, the first added first, and by another page too", async () => {
    const store = openPhotographs(NAME);
    const [one, two] = [photograph("t1", 1), photograph("t1", 2)];
    for (const each of [two, photograph("t2", 3), one]) valueOf(await store.add("w", each));
    expect(valueOf(await openPhotographs(NAME).of("w", "t1"))).toEqual({ photographs: [one, two], unreadable: 0 });
    valueOf(await store.remove(one.id));
    expect(valueOf(await store.of("w", "t1")).photographs).toEqual([two]);
    store.close();
  });

  it("go with a work that is deleted for good, but not while a copy of it has looked at them", async () => {
    const store = openPhotographs(NAME);
    valueOf(await store.add("w", photograph("t1", 1)));
    valueOf(await store.add("w", photograph("t2", 2)));
    valueOf(await store.of("copy", "t1"));
    valueOf(await store.removeWork("w", NONE));
    expect(valueOf(await store.of("copy", "t1")).photographs.length).toBe(1);
    expect(valueOf(await store.of("copy", "t2")).photographs.length).toBe(0);
    valueOf(await store.removeWork("copy", NONE));
    expect(valueOf(await store.of("w", "t1")).photographs.length).toBe(0);
    store.close();
  });

  it("stay with a copy that nobody has looked at, and go with that one", async () => {
    const store = openPhotographs(NAME);
    valueOf(await store.add("w", photograph("t1", 1)));
    valueOf(await store.add("w", photograph("t2", 2)));
    valueOf(await store.removeWork("w", new Map([["t1", "copy"]])));
    const db = await openDB(NAME, 1);
    expect((await db.getAll("photographs")).map(({ trial, works }) => [trial, works])).toEqual([["t1", ["copy"]]]);
    valueOf(await store.removeWork("copy", NONE));
    expect(await db.count("photographs")).toBe(0);
    db.close();
    store.close();
  });

  it("that came with a file go too, once no work has their trial; those of other works stay", async () => {
    const store = openPhotographs(NAME);
    valueOf(await store.add(null, photograph("t1", 1)));
    valueOf(await store.add(null, photograph("t2", 2)));
    valueOf(await store.add("other", photograph("t3", 3)));
    valueOf(await store.removeWork("w", new Map([["t1", "copy"]])));
    const db = await openDB(NAME, 1);
    const left = await db.getAll("photographs");
    // In the order of their keys.
    expect(left.map(({ trial, works }) => [trial, works])).toEqual([
      ["t1", ["copy"]],
      ["t3", ["other"]],
    ]);
    db.close();
    store.close();
  });

  it("are told from garbage that lies beside them", async () => {
    const store = openPhotographs(NAME);
    valueOf(await store.add("w", photograph("t1", 1)));
    const db = await openDB(NAME, 1);
    for (const [at, garbage] of [
      { bytes: "no bytes", type: "image/jpeg", added: 2 },
      { bytes: new ArrayBuffer(0), type: "image/jpeg", added: 3 },
      { bytes: new ArrayBuffer(2), type: "text/html", added: 4 },
      { bytes: new ArrayBuffer(2), type: "image/png", added: "today" },
      { works: "none" },
    ].entries())
      await db.put("photographs", { id: `g${at}`, trial: "t1", ...garbage });
    db.close();
    const found = valueOf(await store.of("w", "t1"));
    expect([found.photographs.length, found.unreadable]).toEqual([1, 5]);
    store.close();
  });

  it("say why they cannot be had, and never throw: a database that refuses, and one that keeps silent", async () => {
    vi.stubGlobal("indexedDB", {
      open: () => {
        throw new Error("blocked");
      },
    });
    const store = openPhotographs(NAME);
    for (const answer of [
      await store.of("w", "t1"),
      await store.add("w", photograph("t1", 1)),
      await store.remove("x"),
      await store.removeWork("w", NONE),
    ])
      expect(answer).toMatchObject({ ok: false, failure: { code: "storage/failed" } });
    store.close();
    const silent: unknown = Object.assign(Object.create(IDBOpenDBRequest.prototype), { addEventListener: () => {} });
    vi.stubGlobal("indexedDB", { open: () => silent });
    expect(await openPhotographs(NAME, 20).of("w", "t1")).toEqual({ ok: false, failure: { code: "storage/silent" } });
  });

  it("lose no trial, whatever becomes of them", async () => {
    const library = valueOf(await openLibrary("works-of-a-test"));
    const saved = { id: "w", stamp: "", work, past: [], future: [] };
    valueOf(await library.save({ saved, stamp: "s", time: 1, isHistorySaved: false }));
    const store = openPhotographs(NAME);
    valueOf(await store.add("w", photograph("t1", 1)));
    store.close();
    // The whole store is made into something else by another program.
    await new Promise((done) => {
      indexedDB.deleteDatabase(NAME).onsuccess = done;
    });
    (await openDB(NAME, 1, { upgrade: (db) => void db.createObjectStore("something else") })).close();
    expect((await openPhotographs(NAME).of("w", "t1")).ok).toBe(false);
    expect((await openPhotographs(NAME).add("w", photograph("t1", 1))).ok).toBe(false);
    expect(valueOf(await library.load("w")).work).toEqual(work);
    library.close();
  });
});

describe("a file with photographs", () => {
  const large = photograph("t1", 5, ...Array.from({ length: 70_000 }, (_, at) => at % 256));
  const text = writeWorkFile(work, [inFile(large), inFile(photograph("t1", 6))]);

  it("holds them beside the work, and gives back the same bytes", () => {
    const read = valueOf(readAnyFile(text));
    expect(read.works[0]?.work).toEqual(work);
    expect(read.works[0]?.photographs?.map(outOfFile)).toEqual([large, photograph("t1", 6)]);
    // What knows nothing of them reads the work.
    expect(readWorkFile(text)).toEqual({ ok: true, value: work });
  });

  it("has none where they were not asked for", () => {
    expect(writeWorkFile(work)).not.toContain("photographs");
    expect(valueOf(readAnyFile(writeWorkFile(work))).works[0]).not.toHaveProperty("photographs");
  });

  it("loses only what is damaged of them, and never the work", () => {
    const data = JSON.parse(text) as { photographs: unknown[] };
    const [first] = data.photographs;
    for (const [photographs, left] of [
      ["none", 0],
      [[first, 7, { trial: "t1" }, { ...Object(first), type: "text/html" }, { ...Object(first), data: "<script>" }], 1],
      // As many as there are: writing knows no bound either.
      [Array.from({ length: 301 }, () => first), 301],
    ] as const) {
      const read = valueOf(readAnyFile(JSON.stringify({ ...data, photographs })));
      expect(read.works[0]?.work).toEqual(work);
      expect(read.works[0]?.photographs?.length ?? 0).toBe(left);
    }
  });
});
