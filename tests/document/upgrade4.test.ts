/** Version 4 to 5: the size that neck, shoulder and armhole follow is called the base size, no longer the frame. */
import { describe, expect, it } from "vitest";
import { readWorkFile } from "../../src/document/workFile";

const work = {
  name: "Old",
  invented: true,
  unit: "cm",
  paper: "A4",
  tapes: [{ readings: { bustGirth: [900], waistGirth: [730] } }],
  pattern: {
    name: "Old pattern",
    chart: { sizes: [{ label: "12", bust: 880, waist: 700, hip: 940 }], draftedDifference: 50, cups: [] },
    ease: { bust: 60, waist: 30, hip: 50 },
    length: "waist",
    closure: { place: "side", belowWaist: 120 },
    style: "sideDart",
    strap: "wide",
  },
  easeWanted: {},
  picks: {},
  alterations: [{ kind: "fit", id: "a", fit: "swayBack", amount: 12 }],
  allowances: { hem: 25 },
  unread: {},
};

/** A file as version 4 wrote it. */
const old = (picks: object): string => JSON.stringify({ bodicewright: "work", version: 4, work: { ...work, picks } });

describe("a file of version 4", () => {
  it("keeps the size that the wearer picked, under its new name", () => {
    expect(readWorkFile(old({ frame: "12", cup: "C", waist: 1.5 }))).toEqual({
      ok: true,
      value: { ...work, picks: { baseSize: "12", cup: "C", waist: 1.5 } },
    });
  });

  it("without such a pick opens with nothing added and nothing changed", () => {
    expect(readWorkFile(old({ hip: 2 }))).toEqual({ ok: true, value: { ...work, picks: { hip: 2 } } });
  });

  it.each([[[]], [null], [{ frame: 12 }], [{ frame: "12", other: 1 }]])("is damaged with picks %j", (picks) => {
    const read = readWorkFile(JSON.stringify({ bodicewright: "work", version: 4, work: { ...work, picks } }));
    expect(read).toMatchObject({ ok: false, failure: { code: "file/damaged" } });
  });

  it("is of no other version: version 5 knows no frame", () => {
    const text = JSON.stringify({ bodicewright: "work", version: 5, work: { ...work, picks: { frame: "12" } } });
    expect(readWorkFile(text).ok).toBe(false);
  });
});
