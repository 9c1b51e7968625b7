/**
 * Version 7 to 8: trial garments, alterations of darts and cup versions for one half may be there; a work without them stays as it
 * was, from whatever version it comes.
 */
import { describe, expect, it } from "vitest";
import { readWorkFile } from "../../src/document/workFile";

const pattern = {
  name: "Old pattern",
  chart: { sizes: [{ label: "12", bust: 880, waist: 700, hip: 940 }], draftedDifference: 50, cups: [] },
  ease: { bust: 60, waist: 30, hip: 50 },
  length: "waist",
  closure: { place: "centreBack", belowWaist: 0 },
  style: "sideDart",
  strap: "wide",
};
const decided = {
  tapes: [{ readings: { bustGirth: [900], waistGirth: [730] } }],
  pattern,
  easeWanted: { waist: 20 },
  picks: { baseSize: "12" },
  alterations: [{ kind: "fit", id: "a", fit: "swayBack", amount: 12 }],
};
const work = { name: "Old", invented: true, unit: "cm", paper: "A4", ...decided, unread: {} };

/** The same work as each version had it. */
const AS_OF: Readonly<Record<number, object>> = (() => {
  const { tapes: _tapes, picks: _picks, ...others } = work;
  const measures = { bustGirth: 900, waistGirth: 730 };
  const { style: _style, strap: _strap, ...plain } = pattern;
  const frame = { picks: { frame: "12" } };
  return {
    1: { ...others, ...frame, measures, pattern: plain },
    2: { ...others, ...frame, measures },
    3: { ...others, ...frame, tapes: work.tapes },
    4: { ...others, ...frame, tapes: work.tapes },
    5: work,
    6: work,
    7: work,
    8: work,
    9: work,
  };
})();

const fileOf = (version: number, saved: object): string =>
  JSON.stringify({ bodicewright: "work", version, work: saved });
const read8 = (more: object) => readWorkFile(fileOf(8, { ...work, ...more }));

describe("a file of any version", () => {
  it.each(Object.entries(AS_OF))("%s opens as the work of today, without trials", (version, saved) => {
    expect(readWorkFile(fileOf(Number(version), saved))).toStrictEqual({ ok: true, value: work });
  });
});

const trial = {
  id: "t1",
  day: "2026-11-25",
  sewn: decided,
  cloth: "calico",
  pinnedBy: "a friend",
  bra: "the everyday one",
  shoes: "flat",
  measured: { bustGirth: 960, shoulder: 121 },
  observations: [
    { id: "s1", place: "backAboveWaist", sign: "foldAcross", way: "pinched", amount: 8, half: "left" },
    { id: "s2", place: "bust", sign: "bustPoint", mark: { out: -6, down: 10 } },
    { id: "s3", place: "dartEnd", sign: "dragLines", towards: "underarm", dart: { piece: "front", dart: "sideDart" } },
    { id: "s4", changed: "let the side out" },
  ],
  checks: { hemLevel: true, canSit: false },
  taken: [{ causes: ["swayBack"], half: "left", because: ["s1"], alterations: ["a"] }],
  verdict: "keep",
  because: "nothing left to see",
  base: true,
};

describe("version 8", () => {
  it("holds trials, each with what was sewn, seen and decided", () => {
    expect(read8({ trials: [trial] })).toStrictEqual({ ok: true, value: { ...work, trials: [trial] } });
    expect(read8({ trials: [{ id: "t", sewn: decided, observations: [] }] }).ok).toBe(true);
  });

  it.each([
    ["two trials of one id", { trials: [trial, trial] }],
    ["a place there is not", { trials: [{ ...trial, observations: [{ id: "s", place: "knee" }] }] }],
    ["a sign there is not", { trials: [{ ...trial, observations: [{ id: "s", sign: "ugly" }] }] }],
    ["a pinch below nothing", { trials: [{ ...trial, observations: [{ id: "s", amount: -1 }] }] }],
    ["a slit wider than any toile", { trials: [{ ...trial, observations: [{ id: "s", amount: 501 }] }] }],
    ["two lines of one id", { trials: [{ ...trial, observations: [{ id: "s" }, { id: "s" }] }] }],
    ["nothing that was sewn", { trials: [{ id: "t", observations: [] }] }],
    ["a trial within a trial", { trials: [{ ...trial, sewn: { ...decided, trials: [] } }] }],
    ["a day there is not", { trials: [{ ...trial, day: "2026-02-30" }] }],
    ["a verdict there is not", { trials: [{ ...trial, verdict: "perhaps" }] }],
    ["a base that says it is none", { trials: [{ ...trial, base: false }] }],
  ])("refuses %s", (_what, more) => {
    expect(read8(more).ok).toBe(false);
  });

  it("holds alterations of darts and cup versions for one half", () => {
    const alterations = [
      { kind: "dartLegs", id: "l", half: "left", dart: { piece: "front", dart: "sideDart" }, bow: 3 },
      { kind: "dartSplit", id: "r", half: "right", dart: { piece: "front", dart: "waistDart" }, into: 2 },
    ];
    const more = { alterations, picks: { baseSize: "12", halfCups: { left: "D" } } };
    expect(read8(more)).toStrictEqual({ ok: true, value: { ...work, ...more } });
    expect(read8({ picks: { halfCups: { both: "D" } } }).ok).toBe(false);
  });

  it("may say which base it was begun from, and what of her standing alterations is left out of it", () => {
    const more = { begunFrom: { name: "Blue dress", day: "2026-11-25" }, standingLeft: ["swayBack"] };
    expect(read8(more)).toStrictEqual({ ok: true, value: { ...work, ...more } });
    for (const wrong of [{ begunFrom: "Blue dress" }, { begunFrom: { name: "x", day: "soon" } }, { standingLeft: [7] }])
      expect(read8(wrong).ok).toBe(false);
  });
});
