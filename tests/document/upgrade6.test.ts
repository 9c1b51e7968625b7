/** Version 6 to 7: what the pattern says of lengths and answers to advice may be there; a work without them stays as it was. */
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

describe("what is seen of a dart", () => {
  const seen = {
    piece: "front",
    dart: "waistDart",
    half: "left",
    pastBustPoint: 6,
    tooFarToSide: 13,
    pointed: "pointed",
  };
  const redraw = {
    kind: "dartEnd",
    id: "dartEnd-front-waistDart",
    dart: { piece: "front", dart: "waistDart" },
    shorten: 26,
    across: 0,
    hold: "mouth",
    giveBack: {},
  };
  const fit = { kind: "fit", id: "a", fit: "swayBack", amount: 12 };

  it("may have the redraws it was sewn with and the answer taken, and needs neither", () => {
    for (const more of [{}, { sewn: [] }, { sewn: [redraw], taken: { answer: "sideSeam", redraws: [redraw] } }]) {
      const file = fileOf(7, { seen: [{ ...seen, ...more }] });
      expect(readWorkFile(file)).toStrictEqual({ ok: true, value: { ...work, seen: [{ ...seen, ...more }] } });
    }
  });

  it("has no answer that there is not, and none of alterations that redraw no dart", () => {
    for (const more of [
      { taken: { answer: "other", redraws: [] } },
      { taken: { answer: "sideSeam" } },
      { sewn: [fit] },
    ])
      expect(readWorkFile(fileOf(7, { seen: [{ ...seen, ...more }] })).ok).toBe(false);
  });
});

describe("a file of version 6", () => {
  it("opens with nothing added and nothing changed", () => {
    expect(readWorkFile(fileOf(6, {}))).toStrictEqual({ ok: true, value: work });
  });

  it("keeps what a fit for one half did there: its amount was all round, and is now that half's own", () => {
    const fit = (name: string, amount: number, half?: string) => ({
      kind: "fit",
      id: name,
      fit: name,
      amount,
      ...(half === undefined ? {} : { half }),
    });
    const before = [fit("sideSeamWaist", 6, "left"), fit("sideSeamHip", 8), fit("shoulderWidth", 5, "right")];
    const after = [fit("sideSeamWaist", 3, "left"), fit("sideSeamHip", 8), fit("shoulderWidth", 5, "right")];
    expect(readWorkFile(fileOf(6, { alterations: before }))).toMatchObject({ ok: true, value: { alterations: after } });
  });

  it("may hold what she said is right of the tape, by measure, and nothing else there", () => {
    const trusted = { bustGirth: 901, waistGirth: 730 };
    expect(readWorkFile(fileOf(7, { trusted }))).toStrictEqual({ ok: true, value: { ...work, trusted } });
    for (const wrong of [{ bust: 900 }, { bustGirth: "900" }, { bustGirth: 1e9 }, [900]])
      expect(readWorkFile(fileOf(7, { trusted: wrong })).ok).toBe(false);
  });

  it("opens with what today's may hold", () => {
    const lengths = { backWaistLength: { all: 405, bySize: { "12": 410 } }, height: { all: 1680 } };
    const pattern = { ...work.pattern, lengths };
    expect(readWorkFile(fileOf(6, { pattern }))).toStrictEqual({ ok: true, value: { ...work, pattern } });
  });

  it("is damaged where it is none of today, as before", () => {
    expect(readWorkFile(fileOf(6, { name: 7 }))).toEqual({
      ok: false,
      failure: { code: "file/damaged", places: ["name"] },
    });
  });
});
