import { beforeEach, describe, expect, it } from "vitest";
import { writeWorkFile } from "../../src/document/workFile";
import { readAnyFile } from "../../src/document/worksFile";
import type { StorageFailure } from "../../src/store/library";
import { undo } from "../../src/store/workStore";
import { sampleWork } from "../support/sampleWork";
import { named, pageOfEachTest } from "./sessionPage";

const page = pageOfEachTest();
const { work, state, rename, names, texts, idOf, rest, accept, nextPage } = page;

describe("start", () => {
  it("opens and keeps the first work on a first visit", () => {
    expect(work()).toBe(sampleWork);
    expect(state()).toMatchObject({
      entries: [{ id: state().openId, name: sampleWork.name }],
      binned: [],
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
    expect(page.store.getState()).toMatchObject({ past, future, gesture: null });
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
    expect(texts()).toEqual([
      "A work kept here is damaged and could not be read whole. It was left as it is, untouched.",
    ]);
    rename("changed");
    await rest();
    expect(page.library.saves.map(({ saved }) => saved.id)).not.toContain(broken);
    expect(state().entries.map(({ id }) => id)).toContain(broken);
  });

  it("opens the first work anew where all that is kept is damaged", async () => {
    page.library.damaged.add(state().openId);
    await nextPage();
    expect(work()).toEqual(sampleWork);
    expect(state().entries).toHaveLength(2);
    expect(page.library.damaged.has(state().openId)).toBe(false);
  });

  it("opens any other work where the last one is gone, or lies in the bin", async () => {
    await page.session.create(named("mine"));
    await page.library.bin(state().openId, page.world.now);
    await nextPage();
    expect(work()).toEqual(sampleWork);
    await page.session.create(named("mine too"));
    await page.library.remove(state().openId);
    await nextPage();
    expect(work()).toEqual(sampleWork);
    expect(texts()).toEqual([]);
  });
});

describe("files", () => {
  const open = (text: string): Promise<void> => page.session.bringIn(readAnyFile(text), "x.json");

  it("opens a file as a work of its own", async () => {
    await open(writeWorkFile(named("from a file")));
    expect(work()).toEqual(named("from a file"));
    expect(names()).toContain(sampleWork.name);
  });

  it("changes nothing on a file that cannot be read, and names it", async () => {
    rename("unsaved yet");
    await open("[]");
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
  ])("hands out %j as %j", async (name, file) => {
    rename(name);
    await page.session.download();
    expect(page.page.given).toEqual([{ name: file, text: writeWorkFile(work()) }]);
  });
});

describe("looking at a kept work", () => {
  it("shows the open one as it is on the page, another as it is kept, and nothing of one that is not there", async () => {
    await page.session.create(named("next"));
    rename("next, changed");
    expect(await page.session.peek(state().openId)).toMatchObject({ name: "next, changed" });
    expect(await page.session.peek(idOf(sampleWork.name))).toEqual(sampleWork);
    expect(await page.session.peek("nowhere")).toBeNull();
  });
});

describe("a browser that keeps nothing", () => {
  const why: StorageFailure = { code: "storage/unavailable", detail: "blocked" };

  beforeEach(() => page.pageWithoutStorage(why));

  it("says so from the start and after every change, and the work stays usable", async () => {
    const words =
      "This browser does not let the page keep anything once it is closed. You can work on; download the work to keep it.";
    expect(state().storage).toEqual({ state: "failed", words });
    rename("changed");
    await rest();
    expect(work().name).toBe("changed");
    expect(state().storage).toEqual({ state: "failed", words });
    await page.session.download();
    expect(page.page.given.map(({ text }) => text)).toEqual([writeWorkFile(work())]);
  });

  it("keeps works as long as the page is open: none is lost by beginning another", async () => {
    rename("first, changed");
    await page.session.create(named("next"));
    expect(names().toSorted()).toEqual(["first, changed", "next"]);
    await page.session.open(idOf("first, changed"));
    expect(work().name).toBe("first, changed");
    await page.session.bin(idOf("next"));
    await accept();
    expect(work().name).toBe("next");
  });

  it("leaves what was changed to the next page, which keeps it where it can", async () => {
    rename("typed without a place for it");
    await rest();
    await page.nextPage();
    expect(names()).toContain("typed without a place for it");
    expect(page.world.local.size).toBe(0);
  });
});
