/** Version 2 to 3: measures become readings, by the day; what one counts as stays what it was. */
import { describe, expect, it } from "vitest";
import { measuresOf } from "../../src/core/measures/tape";
import { readWorkFile } from "../../src/document/workFile";

/** A file as version 2 wrote it. */
const old = {
  bodicewright: "work",
  version: 2,
  work: {
    name: "Old",
    invented: true,
    unit: "in",
    paper: "Letter",
    measures: { bustGirth: 900, upperChestGirth: 850.9, waistGirth: 730 },
    pattern: {
      name: "Old pattern",
      chart: { sizes: [{ label: "12", bust: 880, waist: 700, hip: 940 }], draftedDifference: 50, cups: [] },
      ease: { bust: 60, waist: 30, hip: 50 },
      length: "waist",
      closure: { place: "side", belowWaist: 120 },
      style: "midriff",
      strap: "thin",
    },
    easeWanted: {},
    picks: {},
    alterations: [],
    unread: { "measure.hipGirth": "about 40" },
  },
};

describe("a file of version 2", () => {
  it("opens with one reading of each measure, of no day, and nothing else changed", () => {
    const { measures: _measures, ...others } = old.work;
    const read = readWorkFile(JSON.stringify(old));
    expect(read).toEqual({
      ok: true,
      value: { ...others, tapes: [{ readings: { bustGirth: [900], upperChestGirth: [850.9], waistGirth: [730] } }] },
    });
    expect(read.ok && measuresOf(read.value.tapes)).toEqual(old.work.measures);
  });

  it("is damaged where it has no measures, as before", () => {
    const { measures: _measures, ...work } = old.work;
    expect(readWorkFile(JSON.stringify({ ...old, work })).ok).toBe(false);
  });
});
