/** What a page does while its storage takes nothing, and after. */
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { fail } from "../../src/core/result";
import type { Library } from "../../src/store/library";
import { memoryLibrary } from "../../src/store/memoryLibrary";
import { beginGesture, cancelGesture, preview, run } from "../../src/store/workStore";
import { sampleWork } from "../support/sampleWork";
import { newWorld, openPage, passes, type Page, type World } from "../support/world";

let world: World;

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
  world = newWorld();
});
afterEach(() => {
  vi.useRealTimers();
});

const rename = ({ store }: Page, name: string): void => run(store, { kind: "setName", name });
const keptNames = (): readonly string[] =>
  [...world.shelf.works.values()].map(({ saved }) => saved.work.name).toSorted();
const press = (page: Page, label: string): void => {
  const found = page
    .state()
    .messages.flatMap(({ actions }) => actions)
    .find((action) => action.label === label);
  if (found === undefined) throw new Error(`no ${label}`);
  found.run();
};

describe("while storage is full", () => {
  it("saving is tried again one at a time, however many keys were typed", async () => {
    const inner = memoryLibrary(world.shelf);
    let saves = 0;
    let isFull = false;
    const library: Library = {
      ...inner,
      save: (request) => {
        saves += 1;
        return isFull ? Promise.resolve(fail({ code: "storage/full", detail: "no room" })) : inner.save(request);
      },
    };
    const page = await openPage(world, sampleWork, library);
    isFull = true;
    for (let key = 0; key < 60; key += 1) {
      rename(page, `typed ${key}`);
      await passes(world, 100);
    }
    saves = 0;
    await passes(world, 120_000);
    expect(saves).toBeGreaterThan(1);
    expect(saves).toBeLessThan(10);
    isFull = false;
    await passes(world, 40_000);
    expect(keptNames()).toEqual(["typed 59"]);
    expect(page.state().storage.state).toBe("saved");
  });

  it("a file of all works holds the open one first, though it is not saved", async () => {
    const page = await openPage(world, sampleWork);
    await passes(world, 100);
    world.fault = "full";
    void page.session.create({ ...sampleWork, name: "new", invented: false });
    await passes(world, 100);
    rename(page, "new, typed");
    await passes(world, 100);
    world.fault = "none";
    void page.session.downloadAll();
    await passes(world, 100);
    const file: unknown = JSON.parse(page.given.at(-1)?.text ?? "");
    expect(file).toMatchObject({ works: [{ work: { name: "new, typed" } }, { work: { name: sampleWork.name } }] });
  });

  it("what she goes on without is there again with the next page, whatever is done with the work on this one", async () => {
    const page = await openPage(world, sampleWork);
    const first = page.state().openId;
    void page.session.create({ ...sampleWork, name: "other" });
    await passes(world, 100);
    const other = page.state().openId;
    void page.session.open(first);
    await passes(world, 100);
    world.fault = "full";
    run(page.store, { kind: "setPatternName", name: "typed in vain" });
    await passes(world, 100);
    void page.session.open(other);
    await passes(world, 100);
    world.fault = "none";
    press(page, "Go on without them");
    await passes(world, 100);
    expect(page.state().openId).toBe(other);
    void page.session.open(first);
    await passes(world, 100);
    run(page.store, { kind: "setAge", age: 50 });
    await passes(world, 100);
    page.close();
    await openPage(world, sampleWork);
    await passes(world, 100);
    expect(world.shelf.works.get(first)?.saved.work).toMatchObject({ age: 50, pattern: { name: "typed in vain" } });
    expect(world.local.size).toBe(0);
  });
});

describe("a save that lands long after it was given up", () => {
  it("makes no copy of her own work, however many were given up", async () => {
    const page = await openPage(world, sampleWork);
    world.fault = "late";
    for (let key = 0; key < 40; key += 1) {
      rename(page, `typed ${key}`);
      await passes(world, 600);
    }
    world.fault = "none";
    await passes(world, 60_000);
    expect(keptNames()).toEqual(["typed 39"]);
    expect(page.state().messages).toEqual([]);
  });
});

describe("a question of the browser that nobody answers", () => {
  it("holds up no saving", async () => {
    const page = await openPage(world, sampleWork, null, () => new Promise(() => {}));
    void page.session.create({ ...sampleWork, name: "mine", invented: false });
    await passes(world, 100);
    rename(page, "mine, typed");
    await passes(world, 100);
    expect(keptNames()).toContain("mine, typed");
    expect(page.state().storage.state).toBe("saved");
  });
});

describe("a page that ends while a save is on its way", () => {
  it("leaves what stood on it, not what the save still carries", async () => {
    const page = await openPage(world, sampleWork);
    await passes(world, 100);
    const hand = beginGesture(page.store, "keys");
    preview(page.store, hand, [{ kind: "setName", name: "typed" }]);
    // On its way after 40 ms, and there 3 ms later.
    await passes(world, 41);
    cancelGesture(page.store, hand);
    page.close();
    // The library has taken it all the same.
    const [id] = world.shelf.works.keys();
    const lying = world.shelf.works.get(id ?? "");
    if (id === undefined || lying === undefined) throw new Error("no work");
    const saved = { ...lying.saved, work: { ...lying.saved.work, name: "typed" }, stamp: stampOnTheWay() };
    world.shelf.works.set(id, { saved, entry: { ...lying.entry, stamp: saved.stamp } });
    await openPage(world, sampleWork);
    await passes(world, 100);
    expect(keptNames()).toEqual([sampleWork.name]);
  });
});

/** The stamp that the save had: the page's name, and its next number after what the backup counts. */
function stampOnTheWay(): string {
  const [key] = world.local.keys();
  const [, tab] = /unsaved\/([^/]+)\//.exec(key ?? "") ?? [];
  const { begun }: { begun?: unknown } = JSON.parse(world.local.get(key ?? "") ?? "{}");
  return `${tab}.${String(begun)}`;
}

describe("a page that is taken for gone", () => {
  it("goes on with its own work, of which another has saved what it had left", async () => {
    const first = await openPage(world, sampleWork);
    await passes(world, 100);
    world.isChannelOpen = false;
    world.fault = "full";
    const hand = beginGesture(first.store, "keys");
    preview(first.store, hand, [{ kind: "setName", name: "9" }]);
    await passes(world, 60);
    world.fault = "none";
    await openPage(world, sampleWork);
    expect(keptNames()).toEqual(["9"]);
    preview(first.store, hand, [{ kind: "setName", name: "92" }]);
    await passes(world, 5000);
    expect(keptNames()).toEqual(["92"]);
  });
});
