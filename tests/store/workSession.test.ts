import { beforeEach, describe, expect, it } from "vitest";
import { writeWorkFile } from "../../src/document/workFile";
import type { StorageFailure } from "../../src/store/library";
import { undo } from "../../src/store/workStore";
import { sampleWork } from "../support/sampleWork";
import { named, useSessionPage } from "./sessionPage";

const page = useSessionPage();
const { work, state, rename, names, texts, idOf, rest, accept, nextPage } = page;

describe("start", () => {
  it("opens and keeps the first work on a first visit", () => {
    expect(work()).toBe(sampleWork);
    expect(state()).toMatchObject({
      entries: [{ id: state().openId, name: sampleWork.name }],
      storage: { state: "saved" },
      messages: [],
    });
  });

  it("opens what was open last, with its history", async () => {
    await page.session.create(named("mine"));
    rename("mine, changed");
    rename("mine, again");
    undo(page.store);
    await page.session.create(named("other"));
    await page.session.open(idOf("mine, changed"));
    const { past, future } = page.store.getState();
    await nextPage();
    expect(work().name).toBe("mine, changed");
    expect(page.store.getState()).toMatchObject({ past, future, gestureStart: null });
    undo(page.store);
    expect(work()).toEqual(named("mine"));
  });

  it("passes over what is damaged, says so, and never saves over it", async () => {
    await page.session.create(named("mine"));
    const broken = state().openId;
    page.library.damaged.add(broken);
    page.library.saves.length = 0;
    await nextPage();
    expect(work().name).toBe(sampleWork.name);
    expect(texts()).toEqual(["A work kept here could not be read. It was left as it is, untouched."]);
    rename("changed");
    await rest();
    expect(page.library.saves.map(({ id }) => id)).not.toContain(broken);
    expect(state().entries.map(({ id }) => id)).toContain(broken);
  });

  it("opens the first work anew where all that is kept is damaged", async () => {
    page.library.damaged.add(state().openId);
    await nextPage();
    expect(work()).toEqual(sampleWork);
    expect(state().entries).toHaveLength(2);
    expect(page.library.damaged.has(state().openId)).toBe(false);
  });

  it("opens any other work where the last one is gone", async () => {
    await page.session.create(named("mine"));
    await page.library.remove(state().openId);
    await nextPage();
    expect(work()).toEqual(sampleWork);
    expect(texts()).toEqual([]);
  });
});

describe("files", () => {
  it("opens a file as a work of its own", async () => {
    await page.session.openText(writeWorkFile(named("from a file")), "x.json");
    expect(work()).toEqual(named("from a file"));
    expect(names()).toContain(sampleWork.name);
  });

  it("changes nothing on a file that cannot be read, and names it", async () => {
    rename("unsaved yet");
    await page.session.openText("[]", "x.json");
    expect(work().name).toBe("unsaved yet");
    expect(state().entries).toHaveLength(1);
    expect(texts()).toEqual(["x.json: This is a file of something else, not a saved work. Nothing was changed."]);
    page.session.dismiss(state().messages[0]?.id ?? "");
    expect(texts()).toEqual([]);
  });

  it.each([
    ["Summer Dress / Nº 2", "summer-dress-nº-2.bodice.json"],
    ["../..", "work.bodice.json"],
    ["Été", "été.bodice.json"],
  ])("hands out %j as %j", (name, file) => {
    rename(name);
    expect(page.session.file()).toEqual({ name: file, text: writeWorkFile(work()) });
  });
});

describe("a browser that keeps nothing", () => {
  const why: StorageFailure = { code: "storage/unavailable", detail: "blocked" };

  beforeEach(() => page.pageWithoutStorage(why));

  it("says so from the start and after every change, and the work stays usable", async () => {
    const words = expect.stringMatching(/does not let the page keep anything.*download/);
    expect(state().storage).toEqual({ state: "failed", words });
    rename("changed");
    await rest();
    expect(work().name).toBe("changed");
    expect(state().storage).toEqual({ state: "failed", words });
    expect(page.session.file().text).toBe(writeWorkFile(work()));
  });

  it("keeps works as long as the page is open: none is lost by beginning another", async () => {
    rename("first, changed");
    await page.session.create(named("next"));
    expect(names().toSorted()).toEqual(["first, changed", "next"]);
    await page.session.open(idOf("first, changed"));
    expect(work().name).toBe("first, changed");
    await page.session.remove(idOf("next"));
    await accept();
    expect(work().name).toBe("next");
  });
});
