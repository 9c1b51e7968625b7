import { describe, expect, it } from "vitest";
import { CURRENT_VERSION } from "../../src/document/upgrades";
import { beginGesture, preview, run, undo } from "../../src/store/workStore";
import { sampleWork } from "../support/sampleWork";
import { openPage, passes } from "../support/world";
import {
  FULL,
  idOn,
  named,
  namesOf,
  rename as renameOn,
  textsOf,
  until,
  pageOfEachTest,
  worldOfEachTest,
} from "./sessionPage";

describe("a page that closes before its last change is saved", () => {
  const page = pageOfEachTest();
  const { work, state, rename, names, rest, nextPage } = page;

  /** The database answers no more once the page is closing; the next page begins with one that does. */
  const closePage = async (): Promise<void> => {
    const { save } = page.library;
    page.library.save = () => new Promise(() => {});
    page.session.pageIsClosing();
    await rest();
    page.page.kill();
    page.library.save = save;
    expect(page.library.saves).toEqual([]);
  };

  it("leaves it to the next page, with its history", async () => {
    const id = state().openId;
    rename("changed");
    await closePage();
    await nextPage();
    expect(state().openId).toBe(id);
    expect(work().name).toBe("changed");
    undo(page.store);
    expect(work()).toEqual(sampleWork);
    await nextPage();
    expect(state().entries).toHaveLength(1);
    expect(page.world.local.size).toBe(0);
  });

  it("leaves a drag as far as it went, whatever the hand still does", async () => {
    const hand = beginGesture(page.store, "drag");
    preview(page.store, hand, [{ kind: "setName", name: "dragged" }]);
    await closePage();
    preview(page.store, hand, [{ kind: "setName", name: "dragged on" }]);
    expect(work().name).toBe("dragged");
    expect(page.store.getState().past).toHaveLength(1);
    await nextPage();
    expect(work().name).toBe("dragged");
    undo(page.store);
    expect(work()).toEqual(sampleWork);
  });

  it("leaves nothing where all is saved, or is saved after all", async () => {
    page.session.pageIsClosing();
    expect(page.world.local.size).toBe(0);
    rename("changed");
    page.session.pageIsClosing();
    expect(page.world.local.size).toBe(1);
    await page.session.flush();
    expect(page.world.local.size).toBe(0);
    expect(page.library.saves).toHaveLength(1);
  });

  it("saves at once where the page has time for it, or stays after all", async () => {
    rename("changed");
    page.session.pageIsClosing();
    // Sooner than it is saved while somebody types.
    await passes(page.world, 1);
    expect(page.library.saves.map(({ saved }) => saved.work.name)).toEqual(["changed"]);
    expect(page.world.local.size).toBe(0);
  });

  it("makes no second work of one that was saved just the same", async () => {
    rename("changed");
    page.session.pageIsClosing();
    const left = new Map(page.world.local);
    await page.session.flush();
    // Saved, but gone before that could be noted.
    for (const [key, text] of left) page.world.local.set(key, text);
    expect(page.world.local.size).toBe(1);
    await nextPage();
    expect(names()).toEqual(["changed"]);
    expect(page.world.local.size).toBe(0);
  });

  it("is thrown away only once it was saved, and where it cannot be yet shown and left once more", async () => {
    rename("changed");
    await closePage();
    page.library.refusal = FULL;
    await nextPage();
    expect(work().name).toBe("changed");
    expect(state().storage.state).toBe("failed");
    expect(page.world.local.size).toBe(1);
    page.library.refusal = null;
    await nextPage();
    expect(work().name).toBe("changed");
    expect(page.world.local.size).toBe(0);
  });

  it("is kept beside a work that cannot be read, which stays as it is", async () => {
    rename("changed");
    const id = state().openId;
    await closePage();
    page.library.damaged.add(id);
    await nextPage();
    expect(names().toSorted()).toEqual([sampleWork.name, "changed (copy)"].toSorted());
    expect(page.world.shelf.works.get(id)?.saved.work).toEqual(sampleWork);
    expect(page.world.local.size).toBe(0);
  });

  it("is kept under its id where the work is no longer there", async () => {
    rename("changed");
    const id = state().openId;
    await closePage();
    page.world.shelf.works.clear();
    await nextPage();
    expect(idOn(page.page, "changed")).toBe(id);
    expect(page.world.local.size).toBe(0);
  });
});

describe("what other pages left", () => {
  const shared = worldOfEachTest();
  const { open } = shared;

  /** A page of which the database hears nothing any more. */
  const typedAndGone = async (names: readonly string[]): Promise<void> => {
    const { world } = shared;
    const page = await open();
    world.fault = "silent";
    for (const name of names) {
      renameOn(page, name);
      await passes(world, 100);
    }
    page.kill();
    world.fault = "none";
  };

  it("is left alone as long as that page is there", async () => {
    const { world } = shared;
    const typing = await open();
    world.fault = "full";
    renameOn(typing, "typing");
    await passes(world, 100);
    expect(world.local.size).toBe(1);
    const [before] = world.local;
    world.fault = "none";
    const other = await open();
    // Saved by nobody: the page that is typing does so itself.
    expect(other.work().name).toBe(sampleWork.name);
    expect([...world.local]).toEqual([before]);
    await passes(world, 4000);
    expect(world.local.size).toBe(0);
    expect([namesOf(other), other.work().name, textsOf(other)]).toEqual([["typing"], "typing", []]);
  });

  it("is saved though the page went from one moment to the next", async () => {
    await typedAndGone(["a", "ab"]);
    const next = await open();
    expect([next.work().name, namesOf(next)]).toEqual(["ab", ["ab"]]);
    // What stood before the page typed is one step back.
    undo(next.store);
    expect(next.work().name).toBe(sampleWork.name);
    expect(shared.world.local.size).toBe(0);
  });

  it("is read in the form that older pages left it in", async () => {
    const { world } = shared;
    const first = await open();
    const id = first.state().openId;
    const stamp = world.shelf.works.get(id)?.saved.stamp;
    first.kill();
    const work = { ...sampleWork, name: "typed in an older page" };
    const old = { id, stamp, version: CURRENT_VERSION, work, past: [sampleWork], future: [] };
    world.local.set(`bodicewright/unsaved/${id}`, JSON.stringify(old));
    const next = await open();
    expect([namesOf(next), next.work().name]).toEqual([["typed in an older page"], "typed in an older page"]);
    undo(next.store);
    expect(next.work()).toEqual(sampleWork);
    expect(world.local.size).toBe(0);
  });

  it("is put on top of what has been saved since, where the two do not collide", async () => {
    await typedAndGone(["left"]);
    const { world } = shared;
    const local = new Map(world.local);
    world.local.clear();
    const other = await open();
    run(other.store, { kind: "setPatternName", name: "theirs" });
    await passes(world, 200);
    other.close();
    for (const [key, text] of local) world.local.set(key, text);
    const next = await open();
    expect(namesOf(next)).toEqual(["left"]);
    expect(next.work()).toMatchObject({ name: "left", pattern: { name: "theirs" } });
    undo(next.store);
    expect(next.work()).toMatchObject({ name: sampleWork.name, pattern: { name: "theirs" } });
    expect(world.local.size).toBe(0);
  });

  it("comes out of the bin where another page put it there meanwhile, and that is said", async () => {
    await typedAndGone(["left"]);
    const { world } = shared;
    const local = new Map(world.local);
    world.local.clear();
    const other = await open();
    await until(world, other.session.bin(other.state().openId));
    other.close();
    for (const [key, text] of local) world.local.set(key, text);
    const next = await open();
    expect(namesOf(next)).toContain("left");
    expect(next.state().binned).toEqual([]);
    expect(textsOf(next)).toEqual(["“left” lay in the bin. As you went on with it, it was taken out again."]);
    expect(world.local.size).toBe(0);
  });

  it("that was saved after all stays in the bin where it was put there since", async () => {
    const { world } = shared;
    const page = await open();
    renameOn(page, "saved");
    // From the key on, as a page leaves it that is gone before it hears that it was saved.
    for (let ms = 0; ms < 100 && world.local.size === 0; ms += 1) await passes(world, 1);
    const local = new Map(world.local);
    expect(local.size).toBe(1);
    await passes(world, 200);
    page.close();
    const other = await open();
    expect(other.work().name).toBe("saved");
    await until(world, other.session.bin(other.state().openId));
    other.close();
    for (const [key, text] of local) world.local.set(key, text);
    const next = await open();
    expect(next.state().binned.map(({ name }) => name)).toEqual(["saved"]);
    expect([textsOf(next), world.local.size]).toEqual([[], 0]);
  });

  it("is kept beside what collides with it, and that is said", async () => {
    await typedAndGone(["left"]);
    const { world } = shared;
    const local = new Map(world.local);
    world.local.clear();
    const other = await open();
    renameOn(other, "gone on");
    await passes(world, 200);
    other.close();
    for (const [key, text] of local) world.local.set(key, text);
    const next = await open();
    expect(namesOf(next).toSorted()).toEqual(["gone on", "left (copy)"]);
    expect(textsOf(next)).toEqual([
      "“gone on” was changed in another tab too (name). What was changed here is kept beside it, as “left (copy)”.",
    ]);
    expect(world.local.size).toBe(0);
  });

  it("goes from one page that keeps nothing to the next, and is saved by the first that can", async () => {
    await typedAndGone(["left"]);
    const { world } = shared;
    for (const name of ["once", "twice"]) {
      const without = await openPage(world, named("demo"), { code: "storage/unanswered" });
      expect(namesOf(without)).toContain(name === "once" ? "left" : "left, once");
      await without.session.open(idOn(without, name === "once" ? "left" : "left, once"));
      renameOn(without, name === "once" ? "left, once" : "left, twice");
      await passes(world, 200);
      without.kill();
    }
    const next = await open();
    expect(namesOf(next)).toEqual(["left, twice"]);
    expect(textsOf(next)).toEqual([]);
    expect(world.local.size).toBe(0);
  });
});
