/** Version 5 to 6: the wearer may be named, and what she sees of sewn darts kept; a work without either stays as it was. */
import { describe, expect, it } from "vitest";
import { readWorkFile } from "../../src/document/workFile";

const work = {
  name: "Old",
  invented: true,
  unit: "cm",
  paper: "A4",
  tapes: [{ taken: "2026-03-01", readings: { bustGirth: [900, 902], waistGirth: [730] } }],
  age: 44,
  pattern: {
    name: "Old pattern",
    chart: { sizes: [{ label: "12", bust: 880, waist: 700, hip: 940 }], draftedDifference: 50, cups: [] },
    ease: { bust: 60, waist: 30, hip: 50 },
    length: "waist",
    closure: { place: "centreBack", belowWaist: 0, buttons: 7 },
    style: "sideDart",
    strap: "wide",
  },
  easeWanted: { waist: 20 },
  picks: { baseSize: "12" },
  alterations: [{ kind: "fit", id: "a", fit: "swayBack", amount: 12 }],
  allowances: { hem: 25 },
  sheetFormat: "A3",
  printerMargin: 6,
  unread: { "measure.hipGirth": "about 100" },
};

const fileOf = (version: number, more: object): string =>
  JSON.stringify({ bodicewright: "work", version, work: { ...work, ...more } });

const seen = { piece: "front", dart: "waistDart", half: "left", pastBustPoint: 20, tooFarToSide: -5, pointed: "flat" };

describe("a file of version 5", () => {
  it("opens with nothing added and nothing changed: nobody named, nothing said of darts", () => {
    expect(readWorkFile(fileOf(5, {}))).toStrictEqual({ ok: true, value: work });
  });

  it("is damaged where it is none of today, as before", () => {
    expect(readWorkFile(fileOf(5, { name: 7 }))).toEqual({
      ok: false,
      failure: { code: "file/damaged", places: ["name"] },
    });
  });
});

describe("a file of version 6", () => {
  it("keeps the wearer's name, and one dart as she sees it on either half", () => {
    const now = { wearer: "An invented wearer", seen: [seen, { ...seen, half: "right", pointed: "right" }] };
    expect(readWorkFile(fileOf(6, now))).toEqual({ ok: true, value: { ...work, ...now } });
  });

  it.each([
    ["wearer", { wearer: "x".repeat(201) }],
    ["wearer", { wearer: null }],
    ["seen", { seen: [seen, { ...seen, pastBustPoint: 1 }] }],
    ["seen", { seen: Array.from({ length: 61 }, () => seen) }],
    ["seen.0.half", { seen: [{ ...seen, half: "both" }] }],
    ["seen.0.pointed", { seen: [{ ...seen, pointed: "no" }] }],
    ["seen.0.pastBustPoint", { seen: [{ ...seen, pastBustPoint: 10_001 }] }],
    ["seen.0.tooFarToSide", { seen: [{ ...seen, tooFarToSide: "5" }] }],
    ["seen.0", { seen: [{ ...seen, more: 1 }] }],
    ["seen.0.dart", { seen: [{ ...seen, dart: "pleat" }] }],
  ])("is damaged at %s with %j", (place, more) => {
    expect(readWorkFile(fileOf(6, more))).toEqual({ ok: false, failure: { code: "file/damaged", places: [place] } });
  });
});
