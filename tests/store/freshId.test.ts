import { afterEach, describe, expect, it, vi } from "vitest";
import { freshId } from "../../src/store/freshId";

afterEach(() => {
  vi.unstubAllGlobals();
});

describe("a fresh id", () => {
  it("is 128 random bits, each time others", () => {
    const ids = Array.from({ length: 200 }, freshId);
    for (const id of ids) expect(id).toMatch(/^[0-9a-f]{32}$/);
    expect(new Set(ids).size).toBe(200);
  });

  it("asks for nothing but what addresses that are not secure have", () => {
    vi.stubGlobal("crypto", {
      getRandomValues: (bytes: Uint8Array) => bytes.map((_, at) => (at === 0 ? 5 : 255 - at)),
    });
    expect(freshId()).toBe("05fefdfcfbfaf9f8f7f6f5f4f3f2f1f0");
  });
});
