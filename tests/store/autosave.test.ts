import { describe, expect, it } from "vitest";
import { beginGesture, cancelGesture, commitGesture, preview, run, undo } from "../../src/store/workStore";
import { sampleWork } from "../support/sampleWork";
import { passes } from "../support/world";
import { FULL, pageOfEachTest } from "./sessionPage";

const page = pageOfEachTest();
const { work, state, rename, names, rest } = page;

const wait = (ms: number): Promise<void> => passes(page.world, ms);
const savedNames = (): readonly string[] => page.library.saves.map(({ saved }) => saved.work.name);

describe("saving", () => {
  it("begins within a tenth of a second of the first key, however long the typing goes on", async () => {
    rename("a");
    await wait(20);
    rename("ab");
    await wait(40);
    expect(savedNames()).toEqual(["ab"]);
    rename("abc");
    await wait(100);
    expect(savedNames()).toEqual(["ab", "abc"]);
    expect(page.library.saves.map(({ saved }) => saved.past.length)).toEqual([2, 3]);
    expect(names()).toEqual(["abc"]);
    await rest();
    expect(page.library.saves).toHaveLength(2);
  });

  it("leaves a backup before the database is asked, and takes it away once that has answered", async () => {
    let answer = (): void => {};
    const { save } = page.library;
    const seen: number[] = [];
    page.library.save = async (request) => {
      seen.push(page.world.local.size);
      await new Promise<void>((resolve) => {
        answer = resolve;
      });
      return save(request);
    };
    rename("changed");
    await wait(100);
    expect(seen).toEqual([1]);
    expect([...page.world.local.values()][0]).toContain("changed");
    expect(state().storage).toEqual({ state: "saving", words: "Saving…" });
    answer();
    await wait(0);
    expect(page.world.local.size).toBe(0);
    expect(state().storage).toEqual({ state: "saved", words: "Saved here" });
  });

  it("saves at once when asked to, and not again", async () => {
    rename("now");
    await page.session.flush();
    expect(savedNames()).toEqual(["now"]);
    await rest();
    expect(page.library.saves).toHaveLength(1);
  });

  it("gives every save a stamp of its own, made from the one before", async () => {
    rename("one");
    await page.session.flush();
    rename("two");
    await page.session.flush();
    const [first, second] = page.library.saves;
    expect(second?.saved.stamp).toBe(first?.stamp);
    expect(second?.stamp).not.toBe(first?.stamp);
  });

  it("writes the history only where it has changed since", async () => {
    rename("one");
    await rest();
    run(page.store, { kind: "setUnread", field: "measure.height", text: "1o" });
    await rest();
    const hand = beginGesture(page.store, "keys");
    for (const height of [1600, 1601]) {
      preview(page.store, hand, [{ kind: "setMeasure", measure: "height", value: height }]);
      await rest();
    }
    // The first step is new; what could not be read is none; of a visit to a field only its first key makes one.
    expect(page.library.saves.map(({ isHistorySaved }) => isHistorySaved)).toEqual([false, true, false, true]);
    undo(page.store);
    await rest();
    expect(page.library.saves.at(-1)?.isHistorySaved).toBe(false);
  });

  it("saves an undo like any other change, and an entry that could not be read", async () => {
    rename("changed");
    await page.session.flush();
    undo(page.store);
    run(page.store, { kind: "setUnread", field: "bust", text: "9o" });
    await rest();
    expect(page.library.saves.at(-1)?.saved).toMatchObject({
      work: { name: sampleWork.name, unread: { bust: "9o" } },
      past: [],
      future: [{ name: "changed" }],
    });
  });

  it("leaves a drag alone until it is committed", async () => {
    const hand = beginGesture(page.store, "drag");
    preview(page.store, hand, [{ kind: "setName", name: "dragging" }]);
    await rest();
    expect(page.library.saves).toEqual([]);
    commitGesture(page.store, hand);
    await rest();
    expect(savedNames()).toEqual(["dragging"]);
  });

  it("saves what is typed as it is typed, and what it was once it is taken back", async () => {
    const hand = beginGesture(page.store, "keys");
    preview(page.store, hand, [{ kind: "setName", name: "typ" }]);
    await wait(100);
    expect(page.library.saves.at(-1)?.saved).toMatchObject({
      work: { name: "typ" },
      past: [{ name: sampleWork.name }],
    });
    cancelGesture(page.store, hand);
    await wait(100);
    expect(page.library.saves.at(-1)?.saved).toMatchObject({ work: { name: sampleWork.name }, past: [] });
  });

  it("saves what changed while it was saving", async () => {
    rename("one");
    const saving = page.session.flush();
    rename("two");
    await saving;
    expect(savedNames()).toEqual(["two"]);
    const { save } = page.library;
    page.library.save = async (request) => {
      page.library.save = save;
      rename("four");
      return save(request);
    };
    rename("three");
    await page.session.flush();
    expect(savedNames()).toEqual(["two", "three", "four"]);
    expect(state().storage.state).toBe("saved");
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

  it("tries again by itself, less and less often, and at least every half minute", async () => {
    page.library.refusal = FULL;
    rename("one");
    const asked: number[] = [];
    let before = 0;
    for (let ms = 0; ms < 150_000; ms += 100) {
      await wait(100);
      if (page.library.saves.length > before) asked.push(ms);
      before = page.library.saves.length;
    }
    const waits = asked.slice(1).map((at, index) => Math.round((at - (asked[index] ?? 0)) / 1000));
    expect(waits).toEqual([2, 4, 8, 16, 30, 30, 30]);
    expect(state().storage.state).toBe("failed");
    page.library.refusal = null;
    await wait(30_000);
    expect(state().storage).toEqual({ state: "saved", words: "Saved here" });
    expect(await page.library.peek(state().openId)).toMatchObject({ value: { name: "one" } });
    expect(page.world.local.size).toBe(0);
    // And soon again the next time.
    page.library.refusal = FULL;
    rename("two");
    await wait(200);
    page.library.refusal = null;
    await wait(2100);
    expect(state().storage.state).toBe("saved");
  });
});
