import { describe, expect, it } from "vitest";
import { NEW_STAMP } from "../../src/store/library";
import { emptyShelf, memoryLibrary } from "../../src/store/memoryLibrary";
import { sampleWork } from "../support/sampleWork";

const request = (from: string, stamp: string, time = 1) => ({
  saved: { id: "a", work: sampleWork, past: [], future: [], stamp: from },
  stamp,
  time,
  isHistorySaved: false,
});

describe("memoryLibrary", () => {
  it("answers for what it does not have", async () => {
    const library = memoryLibrary();
    const missing = { ok: false, failure: { code: "storage/missing", id: "a" } };
    expect(await library.load("a")).toEqual(missing);
    expect(await library.peek("a")).toEqual(missing);
    expect(await library.entry("a")).toEqual({ ok: true, value: null });
    expect(await library.pageValue("last-open")).toEqual({ ok: true, value: null });
    expect(await library.list()).toEqual({ ok: true, value: [] });
  });

  it("keeps works and what the page remembers, for every library on its shelf", async () => {
    const shelf = emptyShelf();
    const library = memoryLibrary(shelf);
    await library.save(request(NEW_STAMP, "1", 5));
    await library.setPageValue("last-open", "a");
    library.close();
    const other = memoryLibrary(shelf);
    expect(await other.list()).toEqual({
      ok: true,
      value: [{ id: "a", name: sampleWork.name, wearer: null, stamp: "1", saved: 5, binned: null }],
    });
    expect(await other.pageValue("last-open")).toEqual({ ok: true, value: "a" });
    await other.setPageValue("last-open", null);
    expect(await library.pageValue("last-open")).toEqual({ ok: true, value: null });
  });

  it("tells what became of a save as the browser's does", async () => {
    const library = memoryLibrary();
    const kindOf = async (from: string, stamp: string) => {
      const done = await library.save(request(from, stamp));
      return done.ok ? done.value.kind : done.failure.code;
    };
    expect(await kindOf(NEW_STAMP, "1")).toBe("saved");
    expect(await kindOf("1", "2")).toBe("saved");
    expect(await kindOf("1", "3")).toBe("stale");
    await library.bin("a", 7);
    expect(await library.entry("a")).toMatchObject({ value: { binned: 7, stamp: "2" } });
    expect(await kindOf("2", "4")).toBe("broughtBack");
    expect(await library.entry("a")).toMatchObject({ value: { binned: null } });
    await library.remove("a");
    expect(await kindOf("4", "5")).toBe("savedAfresh");
  });
});
