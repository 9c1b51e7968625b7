/** Each fault of the browser's storage, planted in its database: what is said, and that nothing typed is lost by it. */
import { IDBObjectStore, IDBOpenDBRequest } from "fake-indexeddb";
import { openDB, type IDBPDatabase } from "idb";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { CURRENT_VERSION } from "../../src/document/upgrades";
import { writeWorkFile } from "../../src/document/workFile";
import { openLibrary } from "../../src/store/browserLibrary";
import type { Library } from "../../src/store/library";
import { run, undo } from "../../src/store/workStore";
import { stubDatabase } from "../support/database";
import { sampleWork } from "../support/sampleWork";
import { openPage, passes, type Page } from "../support/world";
import { noRoom, plantAfter, plantNoRoomAtTheEnd } from "./plantedFaults";
import { idOn, named, namesOf, press, rename, textsOf, until, worldOfEachTest } from "./sessionPage";

const NAME = "works-of-a-test";
const shared = worldOfEachTest();
const opened: { close: () => void }[] = [];

beforeEach(stubDatabase);
afterEach(() => {
  vi.restoreAllMocks();
  for (const one of opened.splice(0)) one.close();
  vi.unstubAllGlobals();
});

/** Little by little: the database keeps to no clock of ours, and is to come to its answers meanwhile. */
async function wait(ms: number): Promise<void> {
  const step = ms > 1000 ? 100 : 10;
  for (let passed = 0; passed < ms; passed += step) await passes(shared.world, step);
}

const answers = (): Promise<void> => wait(400);

async function libraryOf(): Promise<Library> {
  const library = await until(shared.world, openLibrary(NAME));
  if (!library.ok) throw new Error(library.failure.code);
  opened.push(library.value);
  return library.value;
}

async function open(): Promise<Page> {
  const library = await until(shared.world, openLibrary(NAME));
  if (library.ok) opened.push(library.value);
  return openPage(shared.world, sampleWork, library.ok ? library.value : library.failure);
}

const during = <T>(page: Page, job: (session: Page["session"]) => Promise<T>): Promise<T> =>
  until(shared.world, job(page.session));

async function database(): Promise<IDBPDatabase> {
  const db = await openDB(NAME);
  opened.push(db);
  return db;
}

/** What lies in the database under the open work's id. */
const kept = async (page: Page): Promise<unknown> => {
  const found = await until(shared.world, (await libraryOf()).load(page.state().openId));
  return found.ok ? found.value.work : found.failure.code;
};

/** She works on although nothing is saved, is told so, and can take the work with her. */
async function goesOnInMemory(page: Page, words: string): Promise<void> {
  rename(page, "typed meanwhile");
  await wait(200);
  expect(page.state().storage).toEqual({ state: "failed", words });
  run(page.store, { kind: "setPatternName", name: "and more" });
  undo(page.store);
  expect(page.work().name).toBe("typed meanwhile");
  await during(page, (session) => session.download());
  expect(page.given.map(({ text }) => text)).toEqual([writeWorkFile(page.work())]);
}

describe("a browser that keeps nothing", () => {
  const WORDS =
    "This browser does not let the page keep anything once it is closed. You can work on; download the work to keep it.";

  it.each<[string, unknown]>([
    ["has no database", undefined],
    [
      "forbids it",
      {
        open() {
          throw new DOMException("not allowed", "SecurityError");
        },
      },
    ],
  ])("is said to do so where it %s, and what was typed goes to a page that can keep it", async (_, indexedDB) => {
    vi.stubGlobal("indexedDB", indexedDB);
    const page = await open();
    expect(page.state().storage).toEqual({ state: "failed", words: WORDS });
    await goesOnInMemory(page, WORDS);
    page.kill();
    stubDatabase();
    const next = await open();
    expect(next.work().name).toBe("typed meanwhile");
    expect(next.state().storage).toEqual({ state: "saved", words: "Saved here" });
    expect(shared.world.local.size).toBe(0);
  });
});

describe("a store with no room left", () => {
  const WORDS =
    "There is no room left to save in this browser. Download the work to keep it, then empty the bin under Works or delete for good what you no longer need.";

  it.each<[string, () => void]>([
    [
      "when a record is put",
      () => {
        vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(() => {
          throw noRoom();
        });
      },
    ],
    ["when all is put, at the end of the transaction", plantNoRoomAtTheEnd],
  ])("is told %s, and all is saved once there is room, without another change", async (_, plant) => {
    const page = await open();
    plant();
    await goesOnInMemory(page, WORDS);
    expect(await kept(page)).toEqual(sampleWork);
    vi.restoreAllMocks();
    await wait(30_000);
    expect(page.state().storage).toEqual({ state: "saved", words: "Saved here" });
    expect(await kept(page)).toMatchObject({ name: "typed meanwhile", pattern: sampleWork.pattern });
    expect([namesOf(page), textsOf(page), shared.world.local.size]).toEqual([["typed meanwhile"], [], 0]);
  });

  it("loses nothing of a page that is closed meanwhile", async () => {
    const page = await open();
    vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(() => {
      throw noRoom();
    });
    await goesOnInMemory(page, WORDS);
    page.close();
    const still = await open();
    expect(still.state().storage.words).toBe(WORDS);
    still.close();
    vi.restoreAllMocks();
    const next = await open();
    expect([next.work().name, namesOf(next)]).toEqual(["typed meanwhile", ["typed meanwhile"]]);
    expect(shared.world.local.size).toBe(0);
  });
});

describe("a transaction that is given up", () => {
  it("is told, does nothing by halves, and the work is saved at the next try", async () => {
    const page = await open();
    plantAfter("put", ({ name, transaction }) => {
      if (name === "entries") transaction.abort();
    });
    await goesOnInMemory(
      page,
      "The last change could not be saved here. You can work on; download the work to be safe.",
    );
    expect(await kept(page)).toEqual(sampleWork);
    vi.restoreAllMocks();
    await wait(30_000);
    expect(page.state().storage).toEqual({ state: "saved", words: "Saved here" });
    expect(await kept(page)).toMatchObject({ name: "typed meanwhile" });
    expect([textsOf(page), shared.world.local.size]).toEqual([[], 0]);
  });
});

describe("a database that does not answer", () => {
  /** Another page's transaction that does not end until it is let go. */
  async function heldUp(): Promise<() => void> {
    const db = await database();
    const hold = { isOn: true };
    const store = db.transaction(["works", "entries", "histories", "page"], "readwrite").objectStore("works");
    const goOn = async (): Promise<void> => {
      await store.get("nothing");
      if (hold.isOn) await goOn();
    };
    void goOn();
    return () => {
      hold.isOn = false;
    };
  }
  const SILENT =
    "This browser’s storage does not answer, so nothing is saved for the moment. You can work on: it is tried again by itself. Download the work to be safe.";

  it("is not waited for when the page begins, which says so; what is typed is left to the next page", async () => {
    const first = await open();
    rename(first, "kept before");
    await answers();
    first.close();
    await answers();
    const real = indexedDB;
    vi.stubGlobal("indexedDB", { open: () => new IDBOpenDBRequest() });
    const page = await open();
    const words =
      "This browser’s storage did not answer when the page was opened. You can work on, and what you change is put by for the next time, as far as the browser lets it be. Download the work to be safe; load the page again to find your other works.";
    expect(page.state().storage).toEqual({ state: "failed", words });
    await goesOnInMemory(page, words);
    page.close();
    vi.stubGlobal("indexedDB", real);
    const next = await open();
    expect(namesOf(next).toSorted()).toEqual(["kept before", "typed meanwhile"]);
    expect(shared.world.local.size).toBe(0);
  });

  it("later is told, and a save that comes through after all is known for our own: no copy, nothing lost", async () => {
    const page = await open();
    const letGo = await heldUp();
    rename(page, "typed");
    await wait(4200);
    expect(page.state().storage).toEqual({ state: "failed", words: SILENT });
    rename(page, "typed on");
    await wait(5000);
    expect(page.state().storage.words).toBe(SILENT);
    rename(page, "typed to the end");
    letGo();
    await wait(30_000);
    await answers();
    expect(page.state().storage).toEqual({ state: "saved", words: "Saved here" });
    expect([namesOf(page), textsOf(page)]).toEqual([["typed to the end"], []]);
    expect(await kept(page)).toMatchObject({ name: "typed to the end" });
    expect(page.store.getState().past.map(({ name }) => name)).toEqual([sampleWork.name, "typed", "typed on"]);
    expect(shared.world.local.size).toBe(0);
  });

  it("loses nothing where the page goes while it is silent, whether what it asked for was still done or not", async () => {
    const page = await open();
    const letGo = await heldUp();
    rename(page, "typed");
    await wait(4200);
    rename(page, "typed on");
    await wait(100);
    page.kill();
    letGo();
    await answers();
    const next = await open();
    expect([namesOf(next), textsOf(next), next.work().name]).toEqual([["typed on"], [], "typed on"]);
    expect(shared.world.local.size).toBe(0);
  });
});

describe("what is kept, cleared while the page is open", () => {
  const CLEARED =
    "What this browser kept of this work was cleared while it was open. It has been saved again; other works may be gone.";
  const clear = async (): Promise<void> => {
    const db = await database();
    for (const table of db.objectStoreNames) await db.clear(table);
    shared.world.local.clear();
  };

  it("is noticed with the next key: the work is saved again with its history, and that is said", async () => {
    const page = await open();
    rename(page, "one");
    await answers();
    await during(page, (session) => session.create(named("other")));
    await during(page, (session) => session.open(idOn(page, "one")));
    await clear();
    rename(page, "two");
    await answers();
    expect([textsOf(page), namesOf(page)]).toEqual([[CLEARED], ["two"]]);
    const next = await open();
    expect(next.work().name).toBe("two");
    expect(next.store.getState().past.map(({ name }) => name)).toEqual([sampleWork.name, "one"]);
  });

  it("is noticed when the page is looked at again, though nothing was changed", async () => {
    const page = await open();
    rename(page, "one");
    await answers();
    await clear();
    await during(page, (session) => session.pageIsBack());
    expect([textsOf(page), namesOf(page)]).toEqual([[CLEARED], ["one"]]);
    expect(await kept(page)).toMatchObject({ name: "one" });
    await during(page, (session) => session.pageIsBack());
    expect(textsOf(page)).toEqual([CLEARED]);
  });

  it("is nothing new on a second page with the same work: no copy is made", async () => {
    const [one, two] = [await open(), await open()];
    await clear();
    await Promise.all([during(one, (session) => session.pageIsBack()), during(two, (session) => session.pageIsBack())]);
    rename(two, "typed");
    await answers();
    await answers();
    expect([namesOf(one), namesOf(two), one.work().name]).toEqual([["typed"], ["typed"], "typed"]);
  });
});

describe("a record that cannot be read", () => {
  const DAMAGED = "A work kept here is damaged and could not be read whole. It was left as it is, untouched.";
  const damage = async (id: string, change: object): Promise<void> => {
    const db = await database();
    await db.put("works", { ...(await db.get("works", id)), ...change });
  };
  const record = async (id: string): Promise<unknown> => (await database()).get("works", id);

  /** A page with the sample open, and a work beside it that is damaged so. */
  async function withDamaged(change: object): Promise<{ readonly page: Page; readonly id: string }> {
    const page = await open();
    await during(page, (session) => session.create(named("hurt")));
    const id = page.state().openId;
    await during(page, (session) => session.open(idOn(page, sampleWork.name)));
    await damage(id, change);
    await during(page, (session) => session.open(id));
    return { page, id };
  }

  it("can be opened as far as it can be read, as a work of its own", async () => {
    const work = { ...named("hurt"), tapes: [{ readings: { bustGirth: ["big"], waistGirth: [700] } }] };
    const { page, id } = await withDamaged({ work });
    expect(page.work()).toEqual(sampleWork);
    expect(page.state().messages.map(({ text, actions }) => [text, actions.map(({ label }) => label)])).toEqual([
      [DAMAGED, ["Open what can be read", "Download it as it lies"]],
    ]);
    press(page, "Open what can be read");
    await answers();
    expect(page.work()).toMatchObject({
      name: "hurt (what could be read)",
      tapes: [{ readings: { waistGirth: [700] } }],
      pattern: sampleWork.pattern,
    });
    expect(textsOf(page).at(-1)).toMatch(
      /^What could be read is open as a work of its own; the damaged one was left as it is\. Look through it before you cut\. Not readable: tapes\.0\.readings\.bustGirth.*\.$/,
    );
    expect(await record(id)).toMatchObject({ work });
    expect(namesOf(page).toSorted()).toEqual([sampleWork.name, "hurt", "hurt (what could be read)"].toSorted());
  });

  it("can be downloaded as it lies, even with what no text can hold", async () => {
    const { page, id } = await withDamaged({ work: { name: "hurt", size: 1n } });
    press(page, "Download it as it lies");
    await answers();
    expect(page.given.map(({ name }) => name)).toEqual([`${id}.record.json`]);
    const [file] = page.given;
    expect(JSON.parse(file?.text ?? "")).toMatchObject({ id, work: { name: "hurt", size: "1" } });
  });

  it("of which nothing can be read says so", async () => {
    const { page } = await withDamaged({ work: 7 });
    press(page, "Open what can be read");
    await answers();
    expect(textsOf(page).at(-1)).toBe(
      "Nothing of it could be read. Download it as it lies: somebody who knows such files may find more.",
    );
    expect(page.work()).toEqual(sampleWork);
  });

  it("of a newer version is no damage: it is handed out, not opened in part", async () => {
    const { page, id } = await withDamaged({ version: CURRENT_VERSION + 1 });
    expect(page.state().messages.map(({ text, actions }) => [text, actions.map(({ label }) => label)])).toEqual([
      [
        "A work kept here was saved by a newer version of Bodicewright. It was left as it is; reload the page to get that version.",
        ["Download it as it lies"],
      ],
    ]);
    expect(await record(id)).toMatchObject({ version: CURRENT_VERSION + 1, work: { name: "hurt" } });
  });

  it("under the open work is not written over: what is typed goes on beside it", async () => {
    const page = await open();
    const id = page.state().openId;
    await damage(id, { stamp: "of somebody else", work: 7 });
    rename(page, "typed");
    await answers();
    expect(page.work().name).toBe("typed (copy)");
    expect(page.state().openId).not.toBe(id);
    expect(await record(id)).toMatchObject({ work: 7 });
    expect(await kept(page)).toMatchObject({ name: "typed (copy)" });
    expect(page.state().storage.state).toBe("saved");
  });

  it("under the open work is said when the page is looked at again, and not taken back", async () => {
    const page = await open();
    await damage(page.state().openId, { stamp: "of somebody else", work: 7 });
    const db = await database();
    await db.put("entries", { ...(await db.get("entries", page.state().openId)), stamp: "of somebody else" });
    await during(page, (session) => session.pageIsBack());
    expect(page.state().storage).toEqual({ state: "failed", words: DAMAGED });
    expect(page.work()).toEqual(sampleWork);
  });

  it("bars none of the others when the page begins", async () => {
    const page = await open();
    await during(page, (session) => session.create(named("hurt")));
    const id = page.state().openId;
    page.kill();
    await damage(id, { work: 7 });
    const next = await open();
    expect([next.work(), textsOf(next)]).toEqual([sampleWork, [DAMAGED]]);
    expect(await record(id)).toMatchObject({ work: 7 });
  });
});
