import { describe, expect, it } from "vitest";
import { dropOlder, nameFor } from "../../../src/ui/offline/keptFiles";

const SCOPE = "https://example.org/bodice/";

/** Stores as a browser has them, in the order in which they were opened first. */
function fakeStores() {
  const stores = new Map<string, Set<string>>();
  const open = async (name: string) => {
    const kept = stores.get(name) ?? new Set<string>();
    stores.set(name, kept);
    return {
      match: async (url: string) => (kept.has(url) ? new Response() : undefined),
      put: async (url: string) => void kept.add(url),
    };
  };
  return {
    names: () => [...stores.keys()],
    open,
    keys: async () => [...stores.keys()],
    delete: async (name: string) => stores.delete(name),
  };
}

const version = (of: string, scope = SCOPE): string => nameFor(scope, [{ url: "index.html", revision: of }]);

describe("the stores of the page's files", () => {
  it("have one name for the same files, and another where any is other, or where the page lies elsewhere", () => {
    const files = [
      { url: "index.html", revision: "a" },
      { url: "assets/first-1.js", revision: null },
    ];
    const name = nameFor(SCOPE, files);
    expect(
      nameFor(
        SCOPE,
        files.map((file) => ({ ...file })),
      ),
    ).toBe(name);
    expect(nameFor(SCOPE, [{ url: "index.html", revision: "b" }, ...files.slice(1)])).not.toBe(name);
    expect(nameFor(SCOPE, [...files.slice(0, 1), { url: "assets/first-2.js", revision: null }])).not.toBe(name);
    expect(nameFor("https://example.org/other/", files)).not.toBe(name);
  });

  it("stay for the version before, and go for older ones", async () => {
    const stores = fakeStores();
    for (const of of ["1", "2", "3"]) {
      await stores.open(version(of));
      await dropOlder(stores, SCOPE, version(of));
    }
    expect(stores.names()).toEqual([version("2"), version("3")]);
  });

  it("go for a version that never was at work, and stay for the one that was", async () => {
    const stores = fakeStores();
    await stores.open(version("1"));
    await dropOlder(stores, SCOPE, version("1"));
    // One came in, and a newer one before it was taken.
    await stores.open(version("2"));
    await stores.open(version("3"));
    await dropOlder(stores, SCOPE, version("3"));
    expect(stores.names()).toEqual([version("1"), version("3")]);
  });

  it("are let be where a newer version is on its way in, and where they are another's", async () => {
    const stores = fakeStores();
    const other = version("1", "https://example.org/other/");
    await stores.open(other);
    await stores.open("somebody else's");
    await stores.open(version("1"));
    await stores.open(version("2"));
    await dropOlder(stores, SCOPE, version("1"));
    expect(stores.names()).toEqual([other, "somebody else's", version("1"), version("2")]);
  });
});
