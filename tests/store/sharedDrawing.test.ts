/** A long history of a work with a large file: written without the file again and again, and read back as one object. */
import { describe, expect, it } from "vitest";
import type { OwnPattern } from "../../src/core/decisions/ownPattern";
import type { Work } from "../../src/core/decisions/work";
import { CURRENT_VERSION } from "../../src/document/upgrades";
import { createBackup } from "../../src/store/backup";
import { readSavedWork } from "../../src/store/readSavedWork";
import { sampleWork } from "../support/sampleWork";

/** About 2.4 million characters. */
const LINES = 2000;
const line = `M0 0${"L12.345 67.891".repeat(85)}`;

const drawing: OwnPattern["drawing"] = {
  format: "svg",
  unit: { mm: 1, saidBy: "size" },
  lines: [
    {
      look: { layer: "12", group: "", colour: "#000000", dash: "", width: 0.5 },
      paths: Array.from({ length: LINES }, (_, at) => line.replace("0 0", `${at} 0`)),
    },
  ],
  points: [],
  writings: [],
  hiddenLayers: [],
};
const step = (file: string, of = drawing): Work => ({
  ...sampleWork,
  pattern: { ...sampleWork.pattern, own: { file, drawing: of, pieces: [] } },
});
const work = step("now.svg");
const past = Array.from({ length: 60 }, (_, at) => step(`before-${at}.svg`));
const other = step("another.svg", { ...drawing, format: "dxf" });

const drawingsOf = (steps: readonly Work[]) => new Set(steps.map(({ pattern }) => pattern.own?.drawing));

describe("steps that share a drawing", () => {
  it("share it after reading too, out of separate copies; another file stays another", () => {
    const copy = <T>(of: T): T => JSON.parse(JSON.stringify(of)) as T;
    const stored = { version: CURRENT_VERSION, stamp: "s", work: copy(work) };
    const history = { version: CURRENT_VERSION, past: [...past.slice(0, 3).map(copy), copy(other)], future: [] };
    const read = readSavedWork("id", stored, history);
    if (!read.ok) throw new Error("not read");
    expect(read.value.work).toEqual(work);
    expect(read.value.past).toEqual([...past.slice(0, 3), other]);
    const all = [read.value.work, ...read.value.past];
    expect(drawingsOf(all.slice(0, 4)).size).toBe(1);
    expect(drawingsOf(all).size).toBe(2);
  });

  it("are still held to the schema, the drawing among them", () => {
    const damaged = { ...drawing, lines: [{ ...drawing.lines[0], paths: ["M0 0Q1 1 2 2"] }] };
    const stored = { version: CURRENT_VERSION, stamp: "s", work };
    const bad = { ...work, pattern: { ...work.pattern, own: { ...work.pattern.own, drawing: damaged } } };
    const worse = { ...work, unit: "yards" };
    const read = readSavedWork("id", stored, { version: CURRENT_VERSION, past: [bad, worse, work], future: [] });
    expect(read.ok && read.value.past).toEqual([work]);
  });

  it("are left behind with their history where the drawing alone fills half the room, and are found again", () => {
    const kept = new Map<string, string>();
    // As browsers have it: five million characters in all.
    const room = (): number => [...kept.values()].reduce((sum, text) => sum + text.length, 0);
    const storage: Storage = {
      get length() {
        return kept.size;
      },
      key: (at) => [...kept.keys()][at] ?? null,
      getItem: (key) => kept.get(key) ?? null,
      setItem: (key, text) => {
        if (room() - (kept.get(key)?.length ?? 0) + text.length > 5_000_000) throw new Error("full");
        kept.set(key, text);
      },
      removeItem: (key) => void kept.delete(key),
      clear: () => kept.clear(),
    };
    const saved = { id: "id", stamp: "s", work, past, future: [other] };
    const withoutOther = { ...saved, future: [] };
    const backup = createBackup(storage, "tab");
    expect(backup.write({ saved: withoutOther, base: past[0] ?? null, begun: 1 }, true)).toBe(true);
    const [left] = createBackup(storage, "next").all();
    expect(left?.saved.work).toEqual(work);
    expect(left?.saved.past).toEqual(past);
    expect(left?.base).toEqual(past[0]);
    expect(left?.hasHistory).toBe(true);
    expect(drawingsOf([work, ...(left?.saved.past ?? [])].slice(1)).size).toBe(1);
  });
});
