/** Version 3 to 4: allowances, the paper for true-scale pieces and buttons may be kept; a work without them stays as it was. */
import { describe, expect, it } from "vitest";
import { readWorkFile } from "../../src/document/workFile";

/** A file as version 3 wrote it. */
const old = {
  bodicewright: "work",
  version: 3,
  work: {
    name: "Old",
    invented: true,
    unit: "in",
    paper: "Letter",
    tapes: [{ taken: "2026-03-01", readings: { bustGirth: [900, 903], waistGirth: [730] } }],
    age: 51,
    pattern: {
      name: "Old pattern",
      chart: { sizes: [{ label: "12", bust: 880, waist: 700, hip: 940 }], draftedDifference: 50, cups: [] },
      ease: { bust: 60, waist: 30, hip: 50 },
      length: "waist",
      closure: { place: "side", belowWaist: 120 },
      style: "midriff",
      strap: "thin",
    },
    easeWanted: { waist: 20 },
    picks: { frame: "12" },
    alterations: [{ kind: "fit", id: "a", fit: "swayBack", amount: 12, half: "left" }],
    unread: { "measure.hipGirth": "about 40" },
  },
};

describe("a file of version 3", () => {
  it("opens with nothing added and nothing changed but the name of a pick (version 5)", () => {
    const now = { ...old.work, picks: { baseSize: "12" } };
    expect(readWorkFile(JSON.stringify(old))).toEqual({ ok: true, value: now });
  });

  it("has the closure that it had, without buttons", () => {
    const read = readWorkFile(JSON.stringify(old));
    expect(read.ok && read.value.pattern.closure).toStrictEqual({ place: "side", belowWaist: 120 });
  });

  it("is damaged where it is none of today, as before", () => {
    const { tapes: _tapes, ...work } = old.work;
    expect(readWorkFile(JSON.stringify({ ...old, work })).ok).toBe(false);
  });
});
