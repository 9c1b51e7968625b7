/** Pages that share one database: the same page later, and two tabs at once. */
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Work } from "../../src/core/decisions/work";
import { createKeeper, type Keeper } from "../../src/store/keeper";
import { openLibrary, type Library } from "../../src/store/library";
import { createWorkStore, run, undo, type WorkStore } from "../../src/store/workStore";
import { stubDatabase } from "../support/database";
import { sampleWork } from "../support/sampleWork";

interface Page {
  readonly store: WorkStore;
  readonly keeper: Keeper;
  readonly library: Library;
}

const pages: Page[] = [];

async function openPage(): Promise<Page> {
  const opened = await openLibrary("shared");
  if (!opened.ok) throw new Error(opened.failure.code);
  const store = createWorkStore(sampleWork);
  const keeper = createKeeper(store, opened.value, sampleWork);
  await keeper.start();
  const page = { store, keeper, library: opened.value };
  pages.push(page);
  return page;
}

beforeEach(() => {
  localStorage.clear();
  stubDatabase();
});

afterEach(async () => {
  await Promise.all(pages.map(({ keeper }) => keeper.flush()));
  for (const { library } of pages.splice(0)) library.close();
  vi.unstubAllGlobals();
});

const work = ({ store }: Page): Work => store.getState().work;
const rename = ({ store }: Page, name: string): void => run(store, { kind: "setName", name });
const state = ({ keeper }: Page) => keeper.state.getState();
const names = (page: Page): readonly string[] =>
  state(page)
    .entries.map(({ name }) => name)
    .toSorted();
const texts = (page: Page): readonly string[] => state(page).messages.map(({ text }) => text);
const change = async (page: Page, name: string): Promise<void> => {
  rename(page, name);
  await page.keeper.flush();
};
const besides = (theirs: string): string =>
  `“${theirs}” was changed in another tab too. What was changed here is kept beside it, as “${theirs} (copy)”.`;

describe("one page alone", () => {
  it("goes on saving the same work, whether it is new, opened or brought back", async () => {
    const page = await openPage();
    const first = state(page).openId;
    await change(page, "one");
    await change(page, "one, again");
    expect(state(page).openId).toBe(first);
    await page.keeper.create({ ...sampleWork, name: "two" });
    await change(page, "two, again");
    await page.keeper.open(first);
    await change(page, "one, at last");
    await page.keeper.remove(first);
    state(page).messages.at(-1)?.action?.run();
    await page.keeper.flush();
    await change(page, "one, brought back");
    expect(state(page).openId).toBe(first);
    expect(names(page)).toEqual(["one, brought back", "two, again"]);
    expect(texts(page)).toEqual([]);
  });

  it("finds the work as it was left, with its history, when it is opened again", async () => {
    const page = await openPage();
    await change(page, "changed");
    const later = await openPage();
    expect(work(later).name).toBe("changed");
    undo(later.store);
    expect(work(later)).toEqual(sampleWork);
  });
});

describe("two tabs on one work", () => {
  it("keep both changes, under names that tell them apart, and each goes its own way", async () => {
    const mine = await openPage();
    const theirs = await openPage();
    const id = state(mine).openId;
    expect(state(theirs).openId).toBe(id);
    await change(theirs, "same");
    await change(mine, "same");
    expect(state(mine).openId).not.toBe(id);
    expect(work(mine).name).toBe("same (copy)");
    expect(texts(mine)).toEqual([besides("same")]);
    expect(texts(theirs)).toEqual([]);
    await mine.keeper.flush();
    expect(names(mine)).toEqual(["same", "same (copy)"]);
    await change(theirs, "theirs, later");
    await change(mine, "mine, later");
    expect(names(mine)).toEqual(["mine, later", "theirs, later"]);
    expect(texts(mine)).toHaveLength(1);
  });

  it("leave what is on the page where it is: the same work, not another put in its place", async () => {
    const mine = await openPage();
    const theirs = await openPage();
    await change(theirs, "theirs");
    const { shown } = state(mine);
    await change(mine, "mine");
    expect(state(mine).shown).toBe(shown);
    await mine.keeper.create(sampleWork);
    expect(state(mine).shown).toBe(shown + 1);
  });

  it("open again with the one that was open last", async () => {
    const mine = await openPage();
    const theirs = await openPage();
    await change(theirs, "theirs");
    await change(mine, "mine");
    await mine.keeper.flush();
    expect(work(await openPage()).name).toBe("mine (copy)");
  });
});

describe("what a page could not save before it went", () => {
  /** What a page leaves behind that goes in the middle of saving. */
  const leaveAsGone = async (page: Page, name: string): Promise<() => void> => {
    rename(page, name);
    page.keeper.part();
    const key = localStorage.key(0) ?? "";
    const left = localStorage.getItem(key) ?? "";
    await page.keeper.flush();
    return () => localStorage.setItem(key, left);
  };

  it("is no second work where it was saved after all", async () => {
    const page = await openPage();
    const putBack = await leaveAsGone(page, "changed");
    putBack();
    const next = await openPage();
    expect(names(next)).toEqual(["changed"]);
    expect(texts(next)).toEqual([]);
  });

  it("is kept beside what another tab made of the work since, and that is said", async () => {
    const page = await openPage();
    const putBack = await leaveAsGone(page, "left");
    await change(page, "gone on");
    putBack();
    const next = await openPage();
    expect(names(next)).toEqual(["gone on", "left (copy)"]);
    expect(texts(next)).toEqual([besides("left")]);
  });
});
