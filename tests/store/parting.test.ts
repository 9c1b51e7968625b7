import { beforeEach, describe, expect, it } from "vitest";
import type { KeptWork } from "../../src/store/library";
import { partingIn } from "../../src/store/parting";
import { sampleWork } from "../support/sampleWork";

const kept = (id: string): KeptWork => ({
  id,
  work: sampleWork,
  past: [{ ...sampleWork, name: "before" }],
  future: [],
  stamp: "s",
});

beforeEach(() => {
  localStorage.clear();
});

describe("what was left behind", () => {
  it("is there for the next page, whole, and only once", () => {
    partingIn(localStorage).leave(kept("a"));
    partingIn(localStorage).leave(kept("b"));
    const taken = partingIn(localStorage).take();
    expect(taken.toSorted((a, b) => a.id.localeCompare(b.id))).toEqual([kept("a"), kept("b")]);
    expect(partingIn(localStorage).take()).toEqual([]);
  });

  it("is forgotten where it was saved after all", () => {
    const parting = partingIn(localStorage);
    parting.leave(kept("a"));
    parting.forget("a");
    expect(parting.take()).toEqual([]);
  });

  it("leaves what is not of its own, and what it cannot read, where it is", () => {
    localStorage.setItem("other", "x");
    // A work like ours, kept by something else.
    partingIn(localStorage).leave(kept("a"));
    localStorage.setItem("another/bodicewright/unsaved/a", localStorage.getItem("bodicewright/unsaved/a") ?? "");
    localStorage.setItem("bodicewright/unsaved/broken", "{");
    localStorage.setItem("bodicewright/unsaved/foreign", "7");
    const parting = partingIn(localStorage);
    parting.leave(kept("a"));
    expect(parting.take()).toEqual([kept("a")]);
    expect(localStorage.length).toBe(4);
  });

  it("loses its history where there is no room for it, not the work", () => {
    const tight = new Proxy(localStorage, {
      get: (box, key) =>
        key === "setItem"
          ? (name: string, text: string) => {
              if (text.includes("before")) throw new DOMException("no room", "QuotaExceededError");
              box.setItem(name, text);
            }
          : Reflect.get(box, key),
    });
    partingIn(tight).leave(kept("a"));
    expect(partingIn(localStorage).take()).toEqual([{ ...kept("a"), past: [] }]);
  });

  it("is nothing where the browser has no place for it, and nothing is thrown", () => {
    const forbidden = new Proxy(localStorage, {
      get: () => () => {
        throw new DOMException("not allowed", "SecurityError");
      },
    });
    for (const box of [null, forbidden]) {
      const parting = partingIn(box);
      parting.leave(kept("a"));
      parting.forget("a");
      expect(parting.take()).toEqual([]);
    }
  });
});
