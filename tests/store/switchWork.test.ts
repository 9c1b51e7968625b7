import { describe, expect, it } from "vitest";
import { beginGesture, preview } from "../../src/store/workStore";
import { sampleWork } from "../support/sampleWork";
import { FULL, named, pageOfEachTest } from "./sessionPage";

const page = pageOfEachTest();
const { work, state, rename, names, texts, idOf, accept } = page;

describe("changing works", () => {
  it("saves the open one first", async () => {
    rename("left");
    await page.session.create(named("next"));
    expect(work()).toEqual(named("next"));
    expect(names().toSorted()).toEqual(["left", "next"]);
    await page.session.open(idOf("left"));
    expect(work().name).toBe("left");
    expect(page.store.getState().past).toHaveLength(1);
  });

  it("leaves a new one open to the next page, though this one ends before it is saved", async () => {
    const { save } = page.library;
    page.library.save = () => new Promise(() => {});
    void page.session.create(named("next"));
    await page.rest();
    expect(work().name).toBe("next");
    page.session.pageIsClosing();
    page.page.kill();
    page.library.save = save;
    await page.nextPage();
    expect(work().name).toBe("next");
    expect(names().toSorted()).toEqual([sampleWork.name, "next"].toSorted());
  });

  it("saves a new one though nothing is heard of the note which work is open", async () => {
    page.library.setPageValue = () => new Promise(() => {});
    void page.session.create(named("next"));
    await page.rest();
    expect(page.library.saves.map(({ saved }) => saved.work.name)).toContain("next");
  });

  it.each(["drag", "keys"] as const)("commits a gesture of the %s that is going on", async (kind) => {
    const hand = beginGesture(page.store, kind);
    preview(page.store, hand, [{ kind: "setName", name: "half made" }]);
    await page.session.create(named("next"));
    expect(names().toSorted()).toEqual(["half made", "next"]);
    expect(page.store.getState().gesture).toBeNull();
  });

  it("loses nothing that is typed while the other work is loading", async () => {
    await page.session.create(named("next"));
    const load = page.library.load;
    page.library.load = (id) => {
      rename("typed meanwhile");
      return load(id);
    };
    await page.session.open(idOf(sampleWork.name));
    expect(work().name).toBe(sampleWork.name);
    expect(names()).toContain("typed meanwhile");
  });

  it("asks before it leaves what was typed while the other work was loading and could not be saved", async () => {
    await page.session.create(named("next"));
    const load = page.library.load;
    page.library.load = (id) => {
      page.library.load = load;
      page.library.refusal = FULL;
      rename("typed meanwhile");
      return load(id);
    };
    await page.session.open(idOf(sampleWork.name));
    expect(work().name).toBe("typed meanwhile");
    expect(texts()).toEqual([expect.stringMatching(/could not be saved, so it stays open/)]);
    await accept();
    expect(work().name).toBe(sampleWork.name);
  });

  it("opens the open work without going back to what is kept of it", async () => {
    rename("changed");
    page.library.damaged.add(state().openId);
    await page.session.open(state().openId);
    expect(work().name).toBe("changed");
    expect(texts()).toEqual([]);
  });

  it("asks before it leaves changes that could not be saved", async () => {
    page.library.refusal = FULL;
    rename("unsaved");
    await page.session.create(named("next"));
    expect(work().name).toBe("unsaved");
    expect(texts()).toEqual([
      "The last changes to the open work could not be saved, so it stays open. Download it first, or go on without them.",
    ]);
    page.library.refusal = null;
    await accept();
    expect(work().name).toBe("next");
    expect(state().messages).toEqual([]);
  });

  it("leaves even what was gone on without to the next page, which may be able to save it", async () => {
    page.library.refusal = FULL;
    rename("unsaved");
    await page.session.create(named("next"));
    await accept();
    expect(work().name).toBe("next");
    page.library.refusal = null;
    await page.nextPage();
    expect(names()).toContain("unsaved");
    expect(page.world.local.size).toBe(0);
  });

  it("does not take a new work for saved where it could not be", async () => {
    page.library.refusal = FULL;
    await page.session.create(named("new"));
    expect(work().name).toBe("new");
    expect(state().storage.state).toBe("failed");
    page.library.refusal = null;
    await page.session.flush();
    expect(names()).toContain("new");
    expect(state().storage.state).toBe("saved");
  });

  it("says where a work cannot be opened, and stays", async () => {
    await page.session.create(named("next"));
    page.library.damaged.add(idOf(sampleWork.name));
    await page.session.open(idOf(sampleWork.name));
    expect(work().name).toBe("next");
    expect(texts()).toEqual([
      "A work kept here is damaged and could not be read whole. It was left as it is, untouched.",
    ]);
  });

  it("lists a work without a name so that it can still be found", async () => {
    rename(" ");
    await page.session.flush();
    expect(names()).toEqual(["(no name)"]);
    await page.session.bin(state().openId);
    expect(texts()).toEqual(["“(no name)” was put in the bin. It stays there for 30 days."]);
  });

  it("copies the open work as it stands, and any other as it is kept, without their histories", async () => {
    rename("one");
    await page.session.copy(state().openId);
    expect(work()).toEqual({ ...sampleWork, name: "one (copy)" });
    expect(page.store.getState().past).toEqual([]);
    await page.session.copy(idOf("one"));
    expect(names().filter((name) => name === "one (copy)")).toHaveLength(2);
  });

  it("counts what is put on the page, so that the page begins with it afresh", async () => {
    const { shown } = state();
    await page.session.create(named("next"));
    await page.session.open(idOf(sampleWork.name));
    expect(state().shown).toBe(shown + 2);
  });
});
