import { describe, expect, it } from "vitest";
import { applyCommand } from "../../src/core/plan/commands";
import { fail } from "../../src/core/result";
import type { Library } from "../../src/store/library";
import { memoryLibrary } from "../../src/store/memoryLibrary";
import { createWorkSession } from "../../src/store/workSession";
import { createWorkStore, undo } from "../../src/store/workStore";
import { sampleWork } from "../support/sampleWork";
import { alone } from "../support/surroundings";
import { passes } from "../support/world";
import { FULL, named, press, pageOfEachTest } from "./sessionPage";

const page = pageOfEachTest();
const { work, state, rename, names, texts, idOf, rest, accept } = page;

const DAY = 24 * 60 * 60 * 1000;
const binnedNames = (): readonly string[] => state().binned.map(({ name }) => name);
const said = (name: string): string => `“${name}” was put in the bin. It stays there for 30 days.`;

describe("putting a work in the bin", () => {
  it("takes another work away and brings it back whole", async () => {
    rename("one");
    rename("two");
    undo(page.store);
    await page.session.create(named("next"));
    await page.session.bin(idOf("one"));
    expect(names()).toEqual(["next"]);
    expect(binnedNames()).toEqual(["one"]);
    expect(texts()).toEqual([said("one")]);
    await accept();
    expect(work().name).toBe("one");
    expect([page.store.getState().past.length, page.store.getState().future.length]).toEqual([1, 1]);
    expect(names().toSorted()).toEqual(["next", "one"]);
    expect(binnedNames()).toEqual([]);
    expect(state().messages).toEqual([]);
  });

  it("opens another work in place of the open one, saved as it was, and does not save it again", async () => {
    await page.session.create(named("next"));
    rename("gone, changed just now");
    const gone = state().openId;
    await page.session.bin(gone);
    page.library.saves.length = 0;
    await rest();
    expect(work().name).toBe(sampleWork.name);
    expect(page.library.saves).toEqual([]);
    await accept();
    expect(work().name).toBe("gone, changed just now");
  });

  it("brings back each of two of one name", async () => {
    await page.session.create(named("twin"));
    const first = state().openId;
    await page.session.create(named("twin"));
    const second = state().openId;
    await page.session.bin(first);
    await page.session.bin(second);
    expect(state().messages).toHaveLength(2);
    await accept();
    await accept();
    expect(names().filter((name) => name === "twin")).toHaveLength(2);
    expect(state().messages).toEqual([]);
  });

  it("begins a blank work where the last one goes", async () => {
    await page.session.bin(state().openId);
    expect(work()).toMatchObject({ name: "My bodice", unit: sampleWork.unit, tapes: [{ readings: {} }] });
    expect(names()).toEqual(["My bodice"]);
  });

  it("takes a damaged work too, which then lies there as it was", async () => {
    await page.session.create(named("next"));
    const first = idOf(sampleWork.name);
    page.library.damaged.add(first);
    const before = page.world.shelf.works.get(first)?.saved;
    await page.session.bin(first);
    expect(binnedNames()).toEqual([sampleWork.name]);
    expect(page.world.shelf.works.get(first)?.saved).toBe(before);
  });

  it("keeps the work where the bin cannot be reached, says so and offers to delete it for good", async () => {
    await page.session.create(named("next"));
    page.library.bin = async () => fail(FULL);
    await page.session.bin(idOf(sampleWork.name));
    expect(names()).toContain(sampleWork.name);
    expect(texts()).toEqual([
      "There is no room left to save in this browser. Download the work to keep it, then empty the bin under Works or delete for good what you no longer need. So it could not be put in the bin either.",
    ]);
    await accept();
    expect(names()).toEqual(["next"]);
  });

  it("makes room by deleting for good: what could not be saved before is saved then", async () => {
    await page.session.create(named("next"));
    page.library.refusal = FULL;
    page.library.bin = async () => fail(FULL);
    rename("unsaved");
    await rest();
    const { remove } = page.library;
    page.library.remove = (id) => {
      page.library.refusal = null;
      return remove(id);
    };
    await page.session.bin(idOf(sampleWork.name));
    press(page.page, "Delete it for good");
    await passes(page.world, 3000);
    expect(names()).toEqual(["unsaved"]);
    expect(state().storage.state).toBe("saved");
  });

  it("leaves the other messages where they are when one is taken up", async () => {
    await page.session.bringIn(fail({ code: "file/foreign" }), "x.json");
    await page.session.create(named("next"));
    await page.session.bin(idOf(sampleWork.name));
    await accept();
    expect(texts()).toEqual([expect.stringMatching(/^x\.json/)]);
  });

  it("says so where a work cannot be brought back, and leaves it in the bin", async () => {
    await page.session.create(named("next"));
    await page.session.bin(idOf(sampleWork.name));
    const { bin } = page.library;
    page.library.bin = async () => fail({ code: "storage/failed", detail: "broken" });
    await accept();
    expect(work().name).toBe("next");
    expect(texts()).toEqual([
      "The last change could not be saved here. You can work on; download the work to be safe.",
    ]);
    page.library.bin = bin;
    await page.session.bringBack(idOf(sampleWork.name));
    expect(work()).toEqual(sampleWork);
  });

  it("brings a work back once, however often that is pressed", async () => {
    await page.session.create(named("next"));
    await page.session.bin(idOf(sampleWork.name));
    const { shown } = state();
    const bringBack = state().messages[0]?.actions[0]?.run;
    bringBack?.();
    bringBack?.();
    await page.session.flush();
    expect(names().toSorted()).toEqual([sampleWork.name, "next"].toSorted());
    expect(state().shown).toBe(shown + 1);
  });
});

describe("the bin", () => {
  it("shows what was put there last first", async () => {
    await page.session.create(named("b"));
    await page.session.create(named("c"));
    for (const name of ["b", sampleWork.name]) {
      await page.session.bin(idOf(name));
      await passes(page.world, 1000);
    }
    expect(binnedNames()).toEqual([sampleWork.name, "b"]);
  });

  it("keeps a work for 30 days, and a page that begins after that removes it for good", async () => {
    await page.session.create(named("next"));
    await page.session.bin(idOf(sampleWork.name));
    page.world.now += 30 * DAY - 60_000;
    await page.nextPage();
    expect(binnedNames()).toEqual([sampleWork.name]);
    page.world.now += 120_000;
    await page.nextPage();
    expect(binnedNames()).toEqual([]);
    expect([...page.world.shelf.works.values()].map(({ saved }) => saved.work.name)).toEqual(["next"]);
  });

  it("is emptied one by one, and never of what is open", async () => {
    await page.session.create(named("next"));
    await page.session.bin(idOf(sampleWork.name));
    await page.session.removeForGood(idOf(sampleWork.name));
    expect(binnedNames()).toEqual([]);
    expect(page.world.shelf.works.size).toBe(1);
    await page.session.removeForGood(state().openId);
    expect(page.world.shelf.works.size).toBe(1);
  });

  it("says so where nothing can be removed", async () => {
    await page.session.create(named("next"));
    await page.session.bin(idOf(sampleWork.name));
    page.library.remove = async () => fail({ code: "storage/silent" });
    await page.session.removeForGood(idOf(sampleWork.name));
    expect(binnedNames()).toEqual([sampleWork.name]);
    expect(texts().at(-1)).toBe(
      "This browser’s storage does not answer, so nothing is saved for the moment. You can work on: it is tried again by itself. Download the work to be safe.",
    );
  });
});

describe("what is kept beside a work that is removed for good", () => {
  const tried = applyCommand(sampleWork, { kind: "beginTrial", id: "t1", day: "2026-11-20" });

  async function withCopy(changed = (library: Library): Library => library) {
    const library = changed(memoryLibrary());
    const told: [string, readonly (readonly [string, string])[]][] = [];
    const removed = (id: string, heirs: ReadonlyMap<string, string>): void => void told.push([id, [...heirs]]);
    const session = createWorkSession(createWorkStore(tried), { ...alone({ library }), removed }, tried);
    await session.start();
    const original = session.state.getState().openId;
    await session.copy(original);
    return { session, told, original, copy: session.state.getState().openId };
  }

  it("goes on to a copy that has its trials, open or in the bin", async () => {
    const { session, told, original, copy } = await withCopy();
    await session.bin(original);
    await session.removeForGood(original);
    expect(told).toEqual([[original, [["t1", copy]]]]);
    const { session: other, told: toldThen, original: first, copy: second } = await withCopy();
    await other.open(first);
    await other.bin(second);
    await other.bin(first);
    await other.removeForGood(first);
    expect(toldThen).toEqual([[first, [["t1", second]]]]);
  });

  it("goes on to what is on the page, though that could not be saved", async () => {
    let isFull = false;
    const { session, told, original } = await withCopy((library) => ({
      ...library,
      save: async (request) => (isFull ? fail(FULL) : library.save(request)),
    }));
    await session.open(original);
    isFull = true;
    await session.copy(original);
    const { openId } = session.state.getState();
    expect(openId).not.toBe(original);
    await session.removeForGood(original);
    expect(told).toEqual([[original, [["t1", openId]]]]);
  });

  it("stays where a work that is left cannot be read", async () => {
    const { session, told, original } = await withCopy((library) => ({
      ...library,
      peek: async () => fail({ code: "storage/silent" }),
    }));
    await session.create(named("third"));
    await session.bin(original);
    await session.removeForGood(original);
    expect(told).toEqual([]);
  });
});
