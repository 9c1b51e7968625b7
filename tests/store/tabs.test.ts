/** Pages that share one database: the same page later, and two tabs at once. */
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Work } from "../../src/core/decisions/work";
import { openLibrary } from "../../src/store/browserLibrary";
import type { Library } from "../../src/store/library";
import { createWorkSession, type WorkSession } from "../../src/store/workSession";
import { createWorkStore, run, undo, type WorkStore } from "../../src/store/workStore";
import { stubDatabase } from "../support/database";
import { sampleWork } from "../support/sampleWork";

interface Page {
  readonly store: WorkStore;
  readonly session: WorkSession;
  readonly library: Library;
}

const pages: Page[] = [];

async function openPage(): Promise<Page> {
  const opened = await openLibrary("shared");
  if (!opened.ok) throw new Error(opened.failure.code);
  const store = createWorkStore(sampleWork);
  const session = createWorkSession(store, opened.value, sampleWork);
  await session.start();
  const page = { store, session, library: opened.value };
  pages.push(page);
  return page;
}

beforeEach(() => {
  localStorage.clear();
  stubDatabase();
});

afterEach(async () => {
  await Promise.all(pages.map(({ session }) => session.flush()));
  for (const { library } of pages.splice(0)) library.close();
  vi.unstubAllGlobals();
});

const work = ({ store }: Page): Work => store.getState().work;
const rename = ({ store }: Page, name: string): void => run(store, { kind: "setName", name });
const state = ({ session }: Page) => session.state.getState();
const names = (page: Page): readonly string[] =>
  state(page)
    .entries.map(({ name }) => name)
    .toSorted();
const texts = (page: Page): readonly string[] => state(page).messages.map(({ text }) => text);
const change = async (page: Page, name: string): Promise<void> => {
  rename(page, name);
  await page.session.flush();
};
const conflictMessage = (theirs: string): string =>
  `“${theirs}” was changed in another tab too. What was changed here is kept beside it, as “${theirs} (copy)”.`;

describe("one page alone", () => {
  it("goes on saving the same work, whether it is new, opened or brought back", async () => {
    const page = await openPage();
    const first = state(page).openId;
    await change(page, "one");
    await change(page, "one, again");
    expect(state(page).openId).toBe(first);
    await page.session.create({ ...sampleWork, name: "two" });
    await change(page, "two, again");
    await page.session.open(first);
    await change(page, "one, at last");
    await page.session.remove(first);
    state(page).messages.at(-1)?.action?.run();
    await page.session.flush();
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
    expect(texts(mine)).toEqual([conflictMessage("same")]);
    expect(texts(theirs)).toEqual([]);
    await mine.session.flush();
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
    await mine.session.create(sampleWork);
    expect(state(mine).shown).toBe(shown + 1);
  });

  it("open again with the one that was open last", async () => {
    const mine = await openPage();
    const theirs = await openPage();
    await change(theirs, "theirs");
    await change(mine, "mine");
    await mine.session.flush();
    expect(work(await openPage()).name).toBe("mine (copy)");
  });
});

describe("what a page could not save before it closed", () => {
  /** What a page leaves behind that closes in the middle of saving. */
  const closeAndSave = async (page: Page, name: string): Promise<() => void> => {
    rename(page, name);
    page.session.pageIsClosing();
    const key = localStorage.key(0) ?? "";
    const left = localStorage.getItem(key) ?? "";
    await page.session.flush();
    return () => localStorage.setItem(key, left);
  };

  it("is no second work where it was saved after all", async () => {
    const page = await openPage();
    const putBack = await closeAndSave(page, "changed");
    putBack();
    const next = await openPage();
    expect(names(next)).toEqual(["changed"]);
    expect(texts(next)).toEqual([]);
  });

  it("is kept beside what another tab made of the work since, and that is said", async () => {
    const page = await openPage();
    const putBack = await closeAndSave(page, "left");
    await change(page, "gone on");
    putBack();
    const next = await openPage();
    expect(names(next)).toEqual(["gone on", "left (copy)"]);
    expect(texts(next)).toEqual([conflictMessage("left")]);
  });
});
