import { describe, expect, it } from "vitest";
import { fail } from "../../src/core/result";
import { undo } from "../../src/store/workStore";
import { sampleWork } from "../support/sampleWork";
import { FULL, named, useSessionPage } from "./sessionPage";

const page = useSessionPage();
const { work, state, rename, names, texts, idOf, rest, accept } = page;

describe("deleting", () => {
  it("takes another work away and brings it back whole", async () => {
    rename("one");
    rename("two");
    undo(page.store);
    await page.session.create(named("next"));
    await page.session.remove(idOf("one"));
    expect(names()).toEqual(["next"]);
    expect(texts()).toEqual(["“one” was deleted."]);
    await accept();
    expect(work().name).toBe("one");
    expect([page.store.getState().past.length, page.store.getState().future.length]).toEqual([1, 1]);
    expect(names().toSorted()).toEqual(["next", "one"]);
    expect(state().messages).toEqual([]);
  });

  it("opens another work in place of the open one, and does not save what is gone", async () => {
    await page.session.create(named("next"));
    rename("gone, changed just now");
    const gone = state().openId;
    page.library.saves.length = 0;
    await page.session.remove(gone);
    await rest();
    expect(work().name).toBe(sampleWork.name);
    expect(page.library.saves.map(({ id }) => id)).not.toContain(gone);
    await accept();
    expect(work().name).toBe("gone, changed just now");
  });

  it("leaves no backup of what is gone where the page closes before another work is open", async () => {
    rename("gone, changed just now");
    const { list } = page.library;
    page.library.list = () => {
      page.library.list = list;
      page.session.pageIsClosing();
      return list();
    };
    await page.session.remove(state().openId);
    expect(localStorage.length).toBe(0);
  });

  it("begins a blank work where the last one goes", async () => {
    await page.session.remove(state().openId);
    expect(work()).toMatchObject({ name: "My bodice", unit: sampleWork.unit, tapes: [{ readings: {} }] });
    expect(names()).toEqual(["My bodice"]);
  });

  it("keeps a damaged work, and what could not be deleted", async () => {
    await page.session.create(named("next"));
    const first = idOf(sampleWork.name);
    page.library.damaged.add(first);
    await page.session.remove(first);
    expect(names()).toContain(sampleWork.name);
    expect(texts()).toEqual([expect.stringMatching(/could not be read/)]);
    page.library.remove = async () => fail({ code: "storage/failed", detail: "broken" });
    await page.session.remove(idOf("next"));
    expect(work().name).toBe("next");
    expect(state().storage.state).toBe("failed");
  });

  it("makes room: what could not be saved before is saved then", async () => {
    await page.session.create(named("next"));
    page.library.refusal = FULL;
    rename("unsaved");
    await rest();
    const { remove } = page.library;
    page.library.remove = (id) => {
      page.library.refusal = null;
      return remove(id);
    };
    await page.session.remove(idOf(sampleWork.name));
    expect(names()).toEqual(["unsaved"]);
    expect(state().storage.state).toBe("saved");
  });

  it("leaves the other messages where they are when one is taken up", async () => {
    await page.session.openText("[]", "x.json");
    await page.session.create(named("next"));
    await page.session.remove(idOf(sampleWork.name));
    await accept();
    expect(texts()).toEqual([expect.stringMatching(/^x\.json/)]);
  });

  it("says so where a work cannot be brought back for want of room, and offers it still", async () => {
    await page.session.create(named("next"));
    await page.session.remove(idOf(sampleWork.name));
    page.library.refusal = FULL;
    await accept();
    expect(state().storage.state).toBe("failed");
    expect(texts()).toEqual([expect.stringMatching(/was deleted/)]);
    page.library.refusal = null;
    await accept();
    expect(work()).toEqual(sampleWork);
  });

  it("brings a work back once, however often that is pressed", async () => {
    await page.session.create(named("next"));
    await page.session.remove(idOf(sampleWork.name));
    const bringBack = state().messages[0]?.action?.run;
    bringBack?.();
    bringBack?.();
    await page.session.flush();
    expect(names().toSorted()).toEqual([sampleWork.name, "next"].toSorted());
    expect(page.library.saves.filter((saved) => saved.work.name === sampleWork.name)).toHaveLength(1);
  });
});
