/** Walking and cutting a ring of edges, on an outline of five corners, by hand. */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import type { Edge, Piece, PointName } from "../../../src/core/pattern/piece";
import {
  curveOf,
  edgeFrom,
  edgeTo,
  furthestOf,
  insertPoint,
  mouthMiddle,
  outlineOf,
  pointsBetween,
} from "../../../src/core/pattern/ring";
import { CoreBug } from "../../../src/core/result";

const CORNERS = {
  centreNeck: piecePoint(0, 0),
  sideNeck: piecePoint(30, 0),
  underarm: piecePoint(60, 40),
  sideWaist: piecePoint(60, 100),
  centreWaist: piecePoint(0, 100),
} as const;
const NAMES = ["centreNeck", "sideNeck", "underarm", "sideWaist", "centreWaist"] as const;
const CURVE = { c1: piecePoint(30, 30), c2: piecePoint(40, 40) };

const house: Piece = {
  name: "front",
  points: Object.fromEntries(NAMES.map((name) => [name, { at: CORNERS[name], level: "waist" as const }])),
  edges: NAMES.map((from, at): Edge => ({
    from,
    to: NAMES[(at + 1) % 5] ?? "centreNeck",
    seam: at === 3 ? "waist" : at === 4 ? "centre" : "armhole",
    curve: at === 1 ? CURVE : null,
    mouthOf: at === 3 ? "waistDart" : null,
  })),
  darts: [],
  levelLines: [],
  centreOnFold: true,
};
const bare: Piece = { ...house, points: {}, edges: [] };

describe("edges of a ring", () => {
  it("are found by the corner that they start from, or end at", () => {
    expect(NAMES.map((name) => edgeFrom(house, name))).toEqual([0, 1, 2, 3, 4]);
    expect(NAMES.map((name) => edgeTo(house, name))).toEqual([4, 0, 1, 2, 3]);
    for (const find of [edgeFrom, edgeTo]) {
      expect(() => find(house, "sideHem")).toThrow(CoreBug);
      expect(() => find(bare, "sideNeck")).toThrow("front has no edge");
    }
    expect(() => edgeFrom(house, "sideHem")).toThrow("front has no edge from sideHem");
    expect(() => edgeTo(house, "sideHem")).toThrow("front has no edge to sideHem");
  });

  it("lie between the places of their corners, one after the other", () => {
    expect(outlineOf(house)).toEqual([
      { a: CORNERS.centreNeck, b: CORNERS.sideNeck, curve: null },
      { a: CORNERS.sideNeck, b: CORNERS.underarm, curve: CURVE },
      { a: CORNERS.underarm, b: CORNERS.sideWaist, curve: null },
      { a: CORNERS.sideWaist, b: CORNERS.centreWaist, curve: null },
      { a: CORNERS.centreWaist, b: CORNERS.centreNeck, curve: null },
    ]);
    expect(house.edges.map((edge) => curveOf(house, edge))).toEqual(outlineOf(house));
  });
});

describe("a corner put into an edge", () => {
  it("parts a straight edge, whose seam and mouth both halves keep; all else stays", () => {
    const cut = insertPoint(house, 3, 0.25, "cut1", "hip");
    expect(cut.points).toEqual({ ...house.points, cut1: { at: piecePoint(45, 100), level: "hip" } });
    expect(cut.edges).toEqual([
      ...house.edges.slice(0, 3),
      { from: "sideWaist", to: "cut1", seam: "waist", curve: null, mouthOf: "waistDart" },
      { from: "cut1", to: "centreWaist", seam: "waist", curve: null, mouthOf: "waistDart" },
      ...house.edges.slice(4),
    ]);
    expect(house.edges).toHaveLength(5);
  });

  it("parts a curve at its middle as de Casteljau does", () => {
    // (30, 0), (30, 30), (40, 40), (60, 40): halves (30, 15), (35, 35), (50, 40); (32.5, 25), (42.5, 37.5); (37.5, 31.25).
    const cut = insertPoint(house, 1, 0.5, "cut1", "bust");
    expect(cut.points.cut1).toEqual({ at: piecePoint(37.5, 31.25), level: "bust" });
    expect(cut.edges.slice(1, 3).map(({ from, to, curve }) => [from, to, curve])).toEqual([
      ["sideNeck", "cut1", { c1: piecePoint(30, 15), c2: piecePoint(32.5, 25) }],
      ["cut1", "underarm", { c1: piecePoint(42.5, 37.5), c2: piecePoint(50, 40) }],
    ]);
  });

  it("parts the last edge of the ring too, and none that is not there", () => {
    const cut = insertPoint(house, 4, 0.5, "cut1", "bust");
    expect(cut.edges.slice(4).map(({ from, to }) => [from, to])).toEqual([
      ["centreWaist", "cut1"],
      ["cut1", "centreNeck"],
    ]);
    expect(() => insertPoint(house, 5, 0.5, "cut1", "bust")).toThrow(CoreBug);
  });
});

describe("the corners from one to another", () => {
  const between = (from: PointName, to: PointName): readonly PointName[] => [...pointsBetween(house, from, to)];

  it("go the way of the edges, over the end of the list too", () => {
    expect(between("sideNeck", "sideWaist")).toEqual(["sideNeck", "underarm", "sideWaist"]);
    expect(between("sideWaist", "sideNeck")).toEqual(["sideWaist", "centreWaist", "centreNeck", "sideNeck"]);
    expect(between("centreNeck", "sideNeck")).toEqual(["centreNeck", "sideNeck"]);
  });

  it("are all of them, once round, back to the same", () => {
    expect(between("underarm", "underarm")).toEqual(["underarm", "sideWaist", "centreWaist", "centreNeck", "sideNeck"]);
  });

  it("do not end at what is no corner", () => {
    expect(() => between("sideNeck", "sideHem")).toThrow("front: sideHem is not reached from sideNeck");
    expect(() => between("sideHem", "sideNeck")).toThrow(CoreBug);
  });
});

describe("how far a piece reaches", () => {
  it("is its furthest point", () => {
    // (60, 100) and (0, 100): 60² + 100² = 13600.
    expect(furthestOf(house)).toBeCloseTo(Math.sqrt(13_600), 12);
    expect(furthestOf(bare)).toBe(0);
  });

  it.each(["c1", "c2"] as const)("or its furthest handle, %s", (which) => {
    const edges = house.edges.with(1, curvedFar(which));
    expect(furthestOf({ ...house, edges })).toBe(500);
  });

  it("is without end where anything lies nowhere, whatever comes after", () => {
    for (const at of [piecePoint(Number.NaN, 1), piecePoint(1, Infinity), piecePoint(-Infinity, 0)]) {
      expect(furthestOf({ ...house, points: { centreNeck: { at, level: "neck" } }, edges: [] })).toBe(Infinity);
      expect(furthestOf({ ...house, points: { ...house.points, sideWaist: { at, level: "waist" } } })).toBe(Infinity);
    }
  });

  it("has a mouth's middle half-way between its ends", () => {
    expect(mouthMiddle(house, "sideNeck", "sideWaist")).toEqual(piecePoint(45, 50));
  });
});

/** A curve with one handle 500 mm out, left of the centre and above. */
function curvedFar(which: "c1" | "c2"): Edge {
  return {
    from: "sideNeck",
    to: "underarm",
    seam: "armhole",
    curve: { ...CURVE, [which]: piecePoint(-300, -400) },
    mouthOf: null,
  };
}
