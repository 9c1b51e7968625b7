import { beforeEach, describe, expect, it } from "vitest";
import { createBackup } from "../../src/store/backup";
import type { SavedWork } from "../../src/store/library";
import { sampleWork } from "../support/sampleWork";

const saved = (id: string): SavedWork => ({
  id,
  work: sampleWork,
  past: [{ ...sampleWork, name: "before" }],
  future: [],
  stamp: "s",
});

beforeEach(() => {
  localStorage.clear();
});

describe("backups", () => {
  it("are there for the next page, whole, and only once", () => {
    createBackup(localStorage).write(saved("a"));
    createBackup(localStorage).write(saved("b"));
    const taken = createBackup(localStorage).takeAll();
    expect(taken.toSorted((a, b) => a.id.localeCompare(b.id))).toEqual([saved("a"), saved("b")]);
    expect(createBackup(localStorage).takeAll()).toEqual([]);
  });

  it("are discarded where the work was saved after all", () => {
    const backup = createBackup(localStorage);
    backup.write(saved("a"));
    backup.discard("a");
    expect(backup.takeAll()).toEqual([]);
  });

  it("leave what is none of them, and what cannot be read, where it is", () => {
    localStorage.setItem("other", "x");
    // A work like ours, kept by something else.
    createBackup(localStorage).write(saved("a"));
    localStorage.setItem("another/bodicewright/unsaved/a", localStorage.getItem("bodicewright/unsaved/a") ?? "");
    localStorage.setItem("bodicewright/unsaved/broken", "{");
    localStorage.setItem("bodicewright/unsaved/foreign", "7");
    const backup = createBackup(localStorage);
    backup.write(saved("a"));
    expect(backup.takeAll()).toEqual([saved("a")]);
    expect(localStorage.length).toBe(4);
  });

  it("are brought up to date when an older page left them, their history too", () => {
    const framed = (name: string) => ({ ...sampleWork, name, picks: { frame: "12" } });
    const now = (name: string) => ({ ...sampleWork, name, picks: { baseSize: "12" } });
    const left = { id: "a", stamp: "s", version: 4, work: framed("a"), past: [framed("1")], future: [framed("2")] };
    localStorage.setItem("bodicewright/unsaved/a", JSON.stringify(left));
    expect(createBackup(localStorage).takeAll()).toEqual([
      { id: "a", stamp: "s", work: now("a"), past: [now("1")], future: [now("2")] },
    ]);
  });

  it("lose the history where there is no room for it, not the work", () => {
    const tight = new Proxy(localStorage, {
      get: (storage, key) =>
        key === "setItem"
          ? (name: string, text: string) => {
              if (text.includes("before")) throw new DOMException("no room", "QuotaExceededError");
              storage.setItem(name, text);
            }
          : Reflect.get(storage, key),
    });
    createBackup(tight).write(saved("a"));
    expect(createBackup(localStorage).takeAll()).toEqual([{ ...saved("a"), past: [] }]);
  });

  it("are none where the browser has no place for them, and nothing is thrown", () => {
    const forbidden = new Proxy(localStorage, {
      get: () => () => {
        throw new DOMException("not allowed", "SecurityError");
      },
    });
    for (const storage of [null, forbidden]) {
      const backup = createBackup(storage);
      backup.write(saved("a"));
      backup.discard("a");
      expect(backup.takeAll()).toEqual([]);
    }
  });
});
