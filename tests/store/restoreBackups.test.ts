import { describe, expect, it, vi } from "vitest";
import { beginGesture, preview, undo } from "../../src/store/workStore";
import { sampleWork } from "../support/sampleWork";
import { FULL, useSessionPage } from "./sessionPage";

const page = useSessionPage();
const { work, state, rename, names, rest, nextPage } = page;

describe("a page that closes before its last change is saved", () => {
  /** The database answers no more once the page is closing; the next page begins with one that does. */
  const closePage = async (): Promise<void> => {
    const { save } = page.library;
    page.library.save = () => new Promise(() => {});
    page.session.pageIsClosing();
    await rest();
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
  });

  it("leaves a drag as far as it went, whatever the hand still does", async () => {
    beginGesture(page.store);
    preview(page.store, { kind: "setName", name: "dragged" });
    await closePage();
    preview(page.store, { kind: "setName", name: "dragged on" });
    expect(work().name).toBe("dragged");
    expect(page.store.getState().past).toHaveLength(1);
    await nextPage();
    expect(work().name).toBe("dragged");
    undo(page.store);
    expect(work()).toEqual(sampleWork);
  });

  it("leaves nothing where all is saved, or is saved after all", async () => {
    page.session.pageIsClosing();
    expect(localStorage.length).toBe(0);
    rename("changed");
    page.session.pageIsClosing();
    expect(localStorage.length).toBe(1);
    await page.session.flush();
    expect(localStorage.length).toBe(0);
    expect(page.library.saves).toHaveLength(1);
  });

  it("saves at once where the page has time for it, or stays after all", async () => {
    rename("changed");
    page.session.pageIsClosing();
    // Not yet long enough for a run of typing to be over.
    await vi.advanceTimersByTimeAsync(1);
    expect(page.library.saves.map((saved) => saved.work.name)).toEqual(["changed"]);
    expect(localStorage.length).toBe(0);
  });

  it("makes no second work of one that was saved just the same", async () => {
    rename("changed");
    page.session.pageIsClosing();
    const key = localStorage.key(0) ?? "";
    const left = localStorage.getItem(key) ?? "";
    await page.session.flush();
    // Saved, but gone before that could be noted.
    localStorage.setItem(key, left);
    expect(localStorage.length).toBe(1);
    await nextPage();
    expect(names()).toEqual(["changed"]);
    expect(localStorage.length).toBe(0);
  });

  it("is left once more where it cannot be saved yet", async () => {
    rename("changed");
    await closePage();
    page.library.refusal = FULL;
    await nextPage();
    expect(work()).toEqual(sampleWork);
    expect(state().storage.state).toBe("failed");
    page.library.refusal = null;
    await nextPage();
    expect(work().name).toBe("changed");
  });
});
