/** Which alterations change the same seam, on pieces made by hand. */
import type { Alteration } from "../../../src/core/decisions/alteration";
import type { AlterationTrace } from "../../../src/core/alterations/outcome/trace";
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import type { Piece } from "../../../src/core/pattern/piece";
import { changedSeams, alterationConflicts } from "../../../src/core/plan/alterationConflicts";
import type { PlannedAlteration } from "../../../src/core/plan/plan";
import { inTradeOrder, outOfTradeOrder } from "../../../src/core/plan/outOfTradeOrder";
import { ok } from "../../../src/core/result";

/** A square of 100 mm: neck on top, side at the right, waist below, centre at the left. Corners may be moved. */
function square(
  moved: Partial<Record<"sideNeck" | "sideWaist" | "centreWaist", readonly [number, number]>> = {},
): Piece {
  const at = (x: number, y: number) => ({ at: piecePoint(x, y), level: "waist" as const });
  const corner = (name: keyof typeof moved, x: number, y: number) => at(...(moved[name] ?? ([x, y] as const)));
  return {
    name: "front",
    points: {
      centreNeck: at(0, 0),
      sideNeck: corner("sideNeck", 100, 0),
      sideWaist: corner("sideWaist", 100, 100),
      centreWaist: corner("centreWaist", 0, 100),
    },
    edges: [
      { from: "centreNeck", to: "sideNeck", seam: "neck", curve: null, mouthOf: null },
      { from: "sideNeck", to: "sideWaist", seam: "side", curve: null, mouthOf: null },
      { from: "sideWaist", to: "centreWaist", seam: "waist", curve: null, mouthOf: null },
      { from: "centreWaist", to: "centreNeck", seam: "centre", curve: null, mouthOf: null },
    ],
    darts: [],
    levelLines: [],
    centreOnFold: true,
  };
}

const trace = (before: Piece, after: Piece): AlterationTrace => ({
  piece: "front",
  surgery: [],
  values: {},
  before: { front: before },
  after: { front: after },
  moved: [],
  seam: null,
  seamBefore: 0,
  seamUngiven: 0,
  seamAfter: 0,
  given: [],
  notes: [],
});

const fit = (id: string, half?: "left" | "right"): Alteration => ({
  kind: "fit",
  id,
  fit: "lengthBelowBust",
  amount: 10,
  ...(half === undefined ? {} : { half }),
});

const planned = (alteration: Alteration, of: AlterationTrace): PlannedAlteration => ({
  id: alteration.id,
  source: "wearer",
  phase: "length",
  piece: "front",
  what: { kind: "alteration", alteration },
  outcome: ok(of),
});

/** 10 mm lower at the side: the side seam is longer, the waist slants. */
const lowerAtSide = trace(square(), square({ sideWaist: [100, 110] }));
/** 10 mm wider at the neck: neck and side seam. */
const widerNeck = trace(square(), square({ sideNeck: [110, 0] }));
/** 10 mm longer all the way: side and centre; the waist goes along as it is. */
const longer = trace(square(), square({ sideWaist: [100, 110], centreWaist: [0, 110] }));

describe("changedSeams", () => {
  it("names the seams whose edges change, not those that only go along", () => {
    expect(changedSeams(lowerAtSide).map(({ seam }) => seam)).toEqual(["side", "waist"]);
    expect(changedSeams(longer).map(({ seam }) => seam)).toEqual(["side", "centre"]);
  });

  it("counts a seam as changed that has got another corner", () => {
    const after = square();
    const edges = after.edges.flatMap((edge) =>
      edge.seam === "waist"
        ? [
            { ...edge, to: "cut1" as const },
            { ...edge, from: "cut1" as const },
          ]
        : [edge],
    );
    const cut: Piece = {
      ...after,
      edges,
      points: { ...after.points, cut1: { at: piecePoint(50, 100), level: "waist" } },
    };
    expect(changedSeams(trace(square(), cut)).map(({ seam }) => seam)).toEqual(["waist"]);
  });

  it("counts a seam as changed that is bent between the same corners, not one that is turned as it is", () => {
    const bent = (by: number): Piece => ({
      ...square(),
      edges: square().edges.map((edge) =>
        edge.seam === "side"
          ? { ...edge, curve: { c1: piecePoint(100 + by, 30), c2: piecePoint(100 + by, 70) } }
          : edge,
      ),
    });
    expect(changedSeams(trace(bent(10), bent(12))).map(({ seam }) => seam)).toEqual(["side"]);
    // The whole piece turned by a quarter.
    const turn = ({ x, y }: { readonly x: number; readonly y: number }) => piecePoint(-y, x);
    const curved = bent(10);
    const turned: Piece = {
      ...curved,
      points: Object.fromEntries(
        Object.entries(curved.points).map(([name, point]) => [name, { ...point, at: turn(point.at) }]),
      ),
      edges: curved.edges.map((edge) => ({
        ...edge,
        curve: edge.curve === null ? null : { c1: turn(edge.curve.c1), c2: turn(edge.curve.c2) },
      })),
    };
    expect(changedSeams(trace(curved, turned))).toEqual([]);
  });

  it("leaves out pieces that were not there before", () => {
    expect(changedSeams({ before: {}, after: { front: square() } })).toEqual([]);
  });
});

describe("slipConflicts", () => {
  it("names the seam that two slips both change, the first made first", () => {
    expect(alterationConflicts([planned(fit("a"), lowerAtSide), planned(fit("b"), widerNeck)])).toEqual([
      { a: "a", b: "b", piece: "front", seam: "side" },
    ]);
  });

  it("finds none between slips that change other seams", () => {
    const lowerWaist = trace(square(), square({ centreWaist: [0, 110] }));
    expect(alterationConflicts([planned(fit("a"), lowerWaist), planned(fit("b"), widerNeck)])).toEqual([]);
  });

  it("compares neither left with right, nor slips of the same dart, nor one that was left out, nor the blend", () => {
    const dart = { piece: "front", dart: "waistDart" } as const;
    const mouth: Alteration = { kind: "dartMouth", id: "m", dart, inner: 1, outer: 1, giveBack: {} };
    const end: Alteration = { kind: "dartEnd", id: "e", dart, shorten: 1, across: 0, hold: "mouth", giveBack: {} };
    expect(alterationConflicts([planned(fit("a", "left"), longer), planned(fit("b", "right"), longer)])).toEqual([]);
    expect(alterationConflicts([planned(mouth, lowerAtSide), planned(end, lowerAtSide)])).toEqual([]);
    expect(
      alterationConflicts([
        { ...planned(fit("a"), longer), outcome: { ok: false, failure: { code: "alteration/not-on-this-style" } } },
        planned(fit("b"), longer),
      ]),
    ).toEqual([]);
    expect(alterationConflicts([{ ...planned(fit("a"), longer), source: "bust" }, planned(fit("b"), longer)])).toEqual(
      [],
    );
    // The lines of both halves, one after the other: what is on both stands there twice, and is one.
    expect(alterationConflicts([planned(fit("a"), longer), planned(fit("a"), longer)])).toEqual([]);
    // An alteration of one half is laid on the same pieces as one of both.
    expect(alterationConflicts([planned(fit("a", "left"), longer), planned(fit("b"), longer)])).toHaveLength(2);
  });
});

describe("alterations of two pieces", () => {
  const on = (piece: "front" | "back"): Alteration => ({
    kind: "dartMouth",
    id: piece,
    dart: { piece, dart: "waistDart" },
    inner: 1,
    outer: 1,
    giveBack: {},
  });
  /** The same change on a back. */
  const back = (of: AlterationTrace): AlterationTrace => {
    const turned = (piece: Piece | undefined): Piece => ({ ...(piece ?? square()), name: "back" });
    return { ...of, piece: "back", before: { back: turned(of.before.front) }, after: { back: turned(of.after.front) } };
  };

  it("conflict where one reaches over to the other's seam, though their darts are called alike", () => {
    // What the back's dart sets free may be given back by the front's seams.
    expect(alterationConflicts([planned(on("front"), lowerAtSide), planned(on("back"), lowerAtSide)])).toEqual([
      { a: "front", b: "back", piece: "front", seam: "side" },
      { a: "front", b: "back", piece: "front", seam: "waist" },
    ]);
  });

  it("do not where each changes a seam of its own piece, though the seams are called alike", () => {
    expect(alterationConflicts([planned(fit("a"), longer), planned(fit("b"), back(longer))])).toEqual([]);
  });
});

describe("the trade's order", () => {
  const dart = { piece: "front", dart: "waistDart" } as const;
  const end: Alteration = { kind: "dartEnd", id: "e", dart, shorten: 1, across: 0, hold: "mouth", giveBack: {} };
  const side: Alteration = { kind: "fit", id: "s", fit: "sideSeamWaist", amount: 5 };
  const length = fit("l");

  it("is kept by length, darts, widths, in that order", () => {
    expect([...outOfTradeOrder([length, end, side])]).toEqual([]);
    expect([...outOfTradeOrder([])]).toEqual([]);
  });

  it("is broken by whatever is made before an earlier phase, which is named", () => {
    expect([...outOfTradeOrder([side, end, length])]).toEqual([
      ["s", "length"],
      ["e", "length"],
    ]);
    expect([...outOfTradeOrder([length, side, end])]).toEqual([["s", "darts"]]);
  });

  it("is put right without touching the order within a phase", () => {
    const second = fit("l2", "left");
    expect(inTradeOrder([side, length, end, second]).map(({ id }) => id)).toEqual(["l", "l2", "e", "s"]);
  });
});
