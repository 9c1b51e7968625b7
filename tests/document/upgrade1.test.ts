/** Version 1 to 2: a pattern says what style it is. */
import { describe, expect, it } from "vitest";
import { readWorkFile } from "../../src/document/workFile";

/** A file as version 1 wrote it. */
const old = {
  bodicewright: "work",
  version: 1,
  work: {
    name: "Old",
    invented: true,
    unit: "cm",
    paper: "A4",
    measures: { bustGirth: 900 },
    pattern: {
      name: "Old pattern",
      chart: { sizes: [{ label: "12", bust: 880, waist: 700, hip: 940 }], draftedDifference: 50, cups: [] },
      ease: { bust: 60, waist: 30, hip: 50 },
      length: "waist",
      closure: { place: "side", belowWaist: 120 },
    },
    easeWanted: {},
    picks: {},
    alterations: [
      {
        kind: "dartEnd",
        id: "a",
        dart: { piece: "front", dart: "waistDart" },
        shorten: 10,
        across: 0,
        hold: "mouth",
        giveBack: {},
      },
    ],
    unread: {},
  },
};

describe("a file of version 1", () => {
  it("opens as the only style there was, with nothing else changed", () => {
    const read = readWorkFile(JSON.stringify(old));
    const { measures: _measures, ...others } = old.work;
    expect(read).toEqual({
      ok: true,
      value: {
        ...others,
        tapes: [{ readings: { bustGirth: [900] } }],
        pattern: { ...old.work.pattern, style: "sideDart", strap: "wide" },
      },
    });
  });

  it("is damaged where it has no pattern, as before", () => {
    const { pattern: _pattern, ...work } = old.work;
    expect(readWorkFile(JSON.stringify({ ...old, work })).ok).toBe(false);
  });
});
