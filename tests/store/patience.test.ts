import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { ok } from "../../src/core/result";
import type { Library } from "../../src/store/library";
import { memoryLibrary } from "../../src/store/memoryLibrary";
import { withPatience } from "../../src/store/patience";
import { sampleWork } from "../support/sampleWork";

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
});
afterEach(() => {
  vi.useRealTimers();
});

const SILENT = { ok: false, failure: { code: "storage/silent" } };
const saved = { id: "a", work: sampleWork, past: [], future: [], stamp: "" };
const request = { saved, stamp: "1", time: 1, isHistorySaved: false };

/** Everything a library can be asked. */
const questions = (library: Library): readonly Promise<unknown>[] => [
  library.list(),
  library.entry("a"),
  library.load("a"),
  library.peek("a"),
  library.raw("a"),
  library.save(request),
  library.bin("a", 1),
  library.remove("a"),
  library.pageValue("last-open"),
  library.setPageValue("last-open", "a"),
  library.changePageValue("last-open", () => "a"),
];

/** A library of which every answer comes so late. */
function late(delay: () => number): Library {
  const inner = memoryLibrary();
  const wait = (): Promise<void> =>
    new Promise((resolve) => {
      if (Number.isFinite(delay())) setTimeout(resolve, delay());
    });
  return {
    list: () => wait().then(inner.list),
    entry: (id) => wait().then(() => inner.entry(id)),
    load: (id) => wait().then(() => inner.load(id)),
    peek: (id) => wait().then(() => inner.peek(id)),
    raw: (id) => wait().then(() => inner.raw(id)),
    save: (asked) => wait().then(() => inner.save(asked)),
    bin: (id, time) => wait().then(() => inner.bin(id, time)),
    remove: (id) => wait().then(() => inner.remove(id)),
    pageValue: (name) => wait().then(() => inner.pageValue(name)),
    setPageValue: (name, value) => wait().then(() => inner.setPageValue(name, value)),
    changePageValue: (name, change) => wait().then(() => inner.changePageValue(name, change)),
    close: inner.close,
  };
}

describe("a library with patience", () => {
  it("hands on what is answered in time", async () => {
    const library = withPatience(
      late(() => 900),
      1000,
    );
    const answer = library.save(request);
    await vi.advanceTimersByTimeAsync(900);
    expect(await answer).toEqual(ok({ kind: "saved" }));
    expect(vi.getTimerCount()).toBe(0);
  });

  it("answers whatever it is asked, where the one beneath it never does", async () => {
    const library = withPatience(
      late(() => Infinity),
      1000,
    );
    const answers = questions(library);
    await vi.advanceTimersByTimeAsync(1000);
    expect(await Promise.all(answers)).toEqual(answers.map(() => SILENT));
  });

  it("waits less once nothing was answered, and as long as before once something was", async () => {
    let delay = Infinity;
    const library = withPatience(
      late(() => delay),
      4000,
    );
    const first = library.list();
    await vi.advanceTimersByTimeAsync(3999);
    const second = library.list();
    await vi.advanceTimersByTimeAsync(1);
    expect(await first).toEqual(SILENT);
    // Asked before it was known to be silent.
    await vi.advanceTimersByTimeAsync(3999);
    expect(await second).toEqual(SILENT);
    const third = library.list();
    await vi.advanceTimersByTimeAsync(500);
    expect(await third).toEqual(SILENT);
    delay = 100;
    const fourth = library.list();
    await vi.advanceTimersByTimeAsync(100);
    expect(await fourth).toEqual(ok([]));
    delay = 3000;
    const fifth = library.list();
    await vi.advanceTimersByTimeAsync(3000);
    expect(await fifth).toEqual(ok([]));
  });

  it("does not hinder what comes late: a save that was given up is done all the same", async () => {
    let delay = 2000;
    const library = withPatience(
      late(() => delay),
      1000,
    );
    const answer = library.save(request);
    await vi.advanceTimersByTimeAsync(1000);
    expect(await answer).toEqual(SILENT);
    await vi.advanceTimersByTimeAsync(1000);
    delay = 10;
    const found = library.load("a");
    await vi.advanceTimersByTimeAsync(10);
    expect(await found).toEqual(ok({ ...saved, stamp: "1" }));
  });
});
