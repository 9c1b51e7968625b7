import { describe, expect, it } from "vitest";
import { NEW_STAMP } from "../../src/store/library";
import { memoryLibrary } from "../../src/store/memoryLibrary";
import { sampleWork } from "../support/sampleWork";

describe("memoryLibrary", () => {
  it("answers for what it does not have", async () => {
    const library = memoryLibrary();
    expect(await library.load("a")).toEqual({ ok: false, failure: { code: "storage/missing", id: "a" } });
    expect(await library.lastOpen()).toEqual({ ok: true, value: null });
    await library.save({ id: "a", work: sampleWork, past: [], future: [], stamp: NEW_STAMP });
    await library.setLastOpen("a");
    expect(await library.lastOpen()).toEqual({ ok: true, value: "a" });
    library.close();
    expect(await library.list()).toEqual({ ok: true, value: [] });
  });
});
