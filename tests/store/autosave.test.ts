import { describe, expect, it, vi } from "vitest";
import { ok } from "../../src/core/result";
import { beginGesture, commitGesture, preview, run, undo } from "../../src/store/workStore";
import { sampleWork } from "../support/sampleWork";
import { FULL, useSessionPage } from "./sessionPage";

const page = useSessionPage();
const { work, state, rename, names, texts, rest } = page;

describe("saving", () => {
  it("saves once after a run of changes, with the history", async () => {
    for (const name of ["a", "ab", "abc"]) {
      rename(name);
      await vi.advanceTimersByTimeAsync(100);
    }
    expect(page.library.saves).toEqual([]);
    await rest();
    expect(page.library.saves.map((saved) => [saved.work.name, saved.past.length])).toEqual([["abc", 3]]);
    expect(names()).toEqual(["abc"]);
    await rest();
    expect(page.library.saves).toHaveLength(1);
  });

  it("waits until the changes rest, however long they go on", async () => {
    for (const name of ["a", "ab", "abc", "abcd"]) {
      rename(name);
      await vi.advanceTimersByTimeAsync(300);
    }
    expect(page.library.saves).toEqual([]);
    await rest();
    expect(page.library.saves.map((saved) => saved.work.name)).toEqual(["abcd"]);
  });

  it("saves at once when asked to, and not again", async () => {
    rename("now");
    await page.session.flush();
    expect(page.library.saves.map((saved) => saved.work.name)).toEqual(["now"]);
    await rest();
    expect(page.library.saves).toHaveLength(1);
  });

  it("saves an undo like any other change, and an entry that could not be read", async () => {
    rename("changed");
    await page.session.flush();
    undo(page.store);
    run(page.store, { kind: "setUnread", field: "bust", text: "9o" });
    await rest();
    expect(page.library.saves.at(-1)).toMatchObject({
      work: { name: sampleWork.name, unread: { bust: "9o" } },
      past: [],
      future: [{ name: "changed" }],
    });
  });

  it("leaves a drag alone until it is committed", async () => {
    beginGesture(page.store);
    preview(page.store, { kind: "setName", name: "dragging" });
    await rest();
    expect(page.library.saves).toEqual([]);
    commitGesture(page.store);
    await rest();
    expect(page.library.saves.map((saved) => saved.work.name)).toEqual(["dragging"]);
  });

  it("saves what changed while it was saving", async () => {
    rename("one");
    const saving = page.session.flush();
    rename("two");
    await saving;
    await rest();
    expect(page.library.saves.at(-1)?.work.name).toBe("two");
  });

  it("says when it fails, goes on, and saves everything once it can", async () => {
    page.library.refusal = FULL;
    rename("one");
    await rest();
    expect(state().storage).toMatchObject({ state: "failed", words: expect.stringMatching(/no room left.*Download/) });
    rename("two");
    expect(work().name).toBe("two");
    page.library.refusal = null;
    await rest();
    expect(state().storage).toMatchObject({ state: "saved" });
    const saved = await page.library.load(state().openId);
    expect(saved).toMatchObject({
      ok: true,
      value: { work: { name: "two" }, past: [{ name: sampleWork.name }, { name: "one" }] },
    });
  });

  it("goes on under a new name's id where another tab has changed the work", async () => {
    const id = state().openId;
    page.library.save = async (saved) => ok({ id: saved.id === id ? "beside" : saved.id, stamp: "s" });
    rename("mine");
    await page.session.flush();
    expect(state().openId).toBe("beside");
    expect(work().name).toBe("mine (copy)");
    expect(texts()).toEqual([
      "“mine” was changed in another tab too. What was changed here is kept beside it, as “mine (copy)”.",
    ]);
  });
});
