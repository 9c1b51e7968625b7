import { beforeEach, describe, expect, it } from "vitest";
import { createBackup, type LeftBehind } from "../../src/store/backup";
import type { SavedWork } from "../../src/store/library";
import { sampleWork } from "../support/sampleWork";

const saved = (id: string): SavedWork => ({
  id,
  work: sampleWork,
  past: [{ ...sampleWork, name: "before" }],
  future: [],
  stamp: "s",
});
const base = { ...sampleWork, name: "as it was saved" };
const left = (id: string, begun = 3) => ({ saved: saved(id), base, begun });
const found = (all: readonly LeftBehind[]) => all.toSorted((a, b) => a.key.localeCompare(b.key));

beforeEach(() => {
  localStorage.clear();
});

describe("backups", () => {
  it("are there for the next page, whole, each by the page and the work, until they are thrown away", () => {
    const first = createBackup(localStorage, "one");
    first.write(left("a"), true);
    first.write(left("b", 4), false);
    createBackup(localStorage, "two").write({ ...left("a"), base: null }, true);
    const next = createBackup(localStorage, "next");
    const expected: readonly LeftBehind[] = [
      { key: "bodicewright/unsaved/one/a", tab: "one", saved: saved("a"), base, begun: 3, hasHistory: true },
      {
        key: "bodicewright/unsaved/one/b",
        tab: "one",
        saved: { ...saved("b"), past: [] },
        base,
        begun: 4,
        hasHistory: false,
      },
      { key: "bodicewright/unsaved/two/a", tab: "two", saved: saved("a"), base: null, begun: 3, hasHistory: true },
    ];
    expect(found(next.all())).toEqual(expected);
    expect(found(next.all())).toEqual(expected);
    for (const one of next.all()) next.throwAway(one);
    expect(next.all()).toEqual([]);
    expect(localStorage.length).toBe(0);
  });

  it("are discarded by the page that wrote them where the work was saved after all, another page’s are not", () => {
    const own = createBackup(localStorage, "own");
    own.write(left("a"), true);
    createBackup(localStorage, "other").write(left("a"), true);
    own.discard("a");
    expect(own.all().map(({ key }) => key)).toEqual(["bodicewright/unsaved/other/a"]);
  });

  it("leave what is none of them, and what cannot be read, where it is", () => {
    localStorage.setItem("other", "x");
    const backup = createBackup(localStorage, "own");
    // A work like ours, kept by something else.
    backup.write(left("a"), true);
    localStorage.setItem("another/bodicewright/unsaved/a", localStorage.getItem("bodicewright/unsaved/own/a") ?? "");
    localStorage.setItem("bodicewright/unsaved/own/broken", "{");
    localStorage.setItem("bodicewright/unsaved/foreign", "7");
    expect(backup.all().map(({ key }) => key)).toEqual(["bodicewright/unsaved/own/a"]);
    expect(localStorage.length).toBe(5);
  });

  it("are read where an older page left them, keyed by the work alone, and brought up to date, their history too", () => {
    const framed = (name: string) => ({ ...sampleWork, name, picks: { frame: "12" } });
    const now = (name: string) => ({ ...sampleWork, name, picks: { baseSize: "12" } });
    const old = { id: "a", stamp: "s", version: 4, work: framed("a"), past: [framed("1")], future: [framed("2")] };
    localStorage.setItem("bodicewright/unsaved/a", JSON.stringify(old));
    const backup = createBackup(localStorage, "own");
    expect(backup.all()).toEqual([
      {
        key: "bodicewright/unsaved/a",
        tab: null,
        saved: { id: "a", stamp: "s", work: now("a"), past: [now("1")], future: [now("2")] },
        base: null,
        begun: 0,
        hasHistory: true,
      },
    ]);
    for (const one of backup.all()) backup.throwAway(one);
    expect(localStorage.length).toBe(0);
  });

  it("are handed on in the name of the page that took them, made from what they were made from", () => {
    createBackup(localStorage, "gone").write(left("a"), true);
    const own = createBackup(localStorage, "own");
    for (const one of own.all()) own.handOn(one);
    const handedOn = { tab: "own", saved: saved("a"), base, hasHistory: true };
    expect(own.all()).toMatchObject([handedOn]);
    // A page that keeps nothing knows it by a stamp of its own: the next library does not.
    own.write(
      {
        saved: { ...saved("a"), work: { ...sampleWork, name: "gone on with" }, stamp: "mine" },
        base: sampleWork,
        begun: 1,
      },
      true,
    );
    expect(own.all()).toMatchObject([{ saved: { stamp: "s", work: { name: "gone on with" } }, base, tab: "own" }]);
  });

  it("lose the history where there is no room for it, not the work", () => {
    const tight = new Proxy(localStorage, {
      get: (storage, key) =>
        key === "setItem"
          ? (name: string, text: string) => {
              if (text.includes('"before"')) throw new DOMException("no room", "QuotaExceededError");
              storage.setItem(name, text);
            }
          : Reflect.get(storage, key),
    });
    createBackup(tight, "own").write(left("a"), true);
    expect(createBackup(localStorage, "next").all()).toMatchObject([
      { saved: { ...saved("a"), past: [] }, hasHistory: false },
    ]);
  });

  it("are none where the browser has no place for them, and nothing is thrown", () => {
    const forbidden = new Proxy(localStorage, {
      get: () => () => {
        throw new DOMException("not allowed", "SecurityError");
      },
    });
    for (const storage of [null, forbidden]) {
      const backup = createBackup(storage, "own");
      backup.write(left("a"), true);
      backup.discard("a");
      expect(backup.all()).toEqual([]);
    }
  });
});
