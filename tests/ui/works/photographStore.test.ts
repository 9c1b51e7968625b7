/** Photographs out of a file: kept in this browser, and counted where they cannot be. */
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { PhotographInFile } from "../../../src/document/photographsFile";
import { openPhotographs } from "../../../src/store/photographs";
import { photographStore } from "../../../src/ui/works/photographStore";
import { stubDatabase } from "../../support/database";

const inFile = (trial: string, added: number, data = "AQID"): PhotographInFile => ({
  trial,
  added,
  type: "image/jpeg",
  data,
});

beforeEach(stubDatabase);
afterEach(() => void vi.unstubAllGlobals());

describe("photographs out of a file", () => {
  it("are kept, each once, and those that are no picture's bytes counted", async () => {
    // One letter of base 64 is no byte.
    expect(await photographStore.keep([inFile("t1", 1), inFile("t1", 2, "A"), inFile("t1", 3)])).toBe(1);
    expect(await photographStore.keep([inFile("t1", 1)])).toBe(0);
    const kept = openPhotographs();
    const found = await kept.of("w", "t1");
    expect(found.ok && found.value.photographs.map(({ added }) => added)).toEqual([1, 3]);
    kept.close();
  });

  it("are all counted where the store cannot be had, which is asked but once", async () => {
    const open = vi.fn<() => never>(() => {
      throw new Error("blocked");
    });
    vi.stubGlobal("indexedDB", { open });
    expect(await photographStore.keep([inFile("t1", 1), inFile("t1", 2), inFile("t1", 3)])).toBe(3);
    expect(open).toHaveBeenCalledTimes(1);
  });
});
