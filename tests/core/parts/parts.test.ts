/** Parts of a dress by hand: allowances as is usual (common practice, no source), halves that are alike or not, cut sizes. */
import { describe, expect, it } from "vitest";
import { drawnHalves, drawnPieces, partsOfHalves } from "../../../src/core/parts/halfParts";
import { cutDepth, cutWidth, type Part, type PiecePart } from "../../../src/core/parts/part";
import { allowanceOf, hemAllowanceOf, USUAL_ALLOWANCES } from "../../../src/core/parts/seamAllowance";
import { named, straight } from "../../../src/core/pattern/namedEdges";
import type { Piece } from "../../../src/core/pattern/piece";
import { rectanglePart, sectorPart } from "../../support/clothParts";

const piece = (wide: number, centreOnFold: boolean): Piece => ({
  name: "front",
  points: {
    centreNeck: named(0, 0, "neck"),
    underarm: named(wide, 0, "bust"),
    centreWaist: named(0, 200, "waist"),
  },
  edges: [
    straight("centreNeck", "underarm", "neck"),
    straight("underarm", "centreWaist", "side"),
    straight("centreWaist", "centreNeck", "centre"),
  ],
  darts: [],
  levelLines: [],
  centreOnFold,
});

const partOf = (one: Piece, half: "left" | "right" | null): PiecePart => ({
  kind: "piece",
  key: half === null ? "front" : `front-${half}`,
  group: "bodice",
  cloth: "main",
  cut: { onFold: one.centreOnFold, count: 1 },
  half,
  grain: "along",
  piece: one,
});

describe("seam allowances", () => {
  it("are 15 usually, a hem's 30, or her own", () => {
    expect(USUAL_ALLOWANCES).toEqual({
      centre: 15,
      neck: 15,
      shoulder: 15,
      armhole: 15,
      side: 15,
      waist: 15,
      hem: 30,
      princess: 15,
      underBust: 15,
      strap: 15,
      panel: 15,
      edge: 15,
    });
    expect([allowanceOf({}, "side"), allowanceOf({}, "hem"), allowanceOf({ side: 0 }, "side")]).toEqual([15, 30, 0]);
  });

  it("of a round hem are 15 at the most, but for what she says of the skirt itself", () => {
    const hem = (kind: "circle" | "peplum" | "aLine", allowances = {}, own?: number) =>
      hemAllowanceOf({ kind, ...(own === undefined ? {} : { hem: own }) }, allowances);
    expect([hem("circle"), hem("peplum"), hem("aLine")]).toEqual([15, 15, 30]);
    expect([hem("circle", { hem: 10 }), hem("circle", { hem: 40 }), hem("aLine", { hem: 40 })]).toEqual([10, 15, 40]);
    expect([hem("circle", { hem: 10 }, 25), hem("aLine", {}, 0)]).toEqual([25, 0]);
  });
});

describe("halves", () => {
  it("that are alike are one part", () => {
    const [narrow, same] = [piece(100, false), piece(100, false)];
    expect(partsOfHalves(narrow, null, partOf)).toEqual([partOf(narrow, null)]);
    expect(partsOfHalves(narrow, same, partOf)).toEqual([partOf(narrow, null)]);
  });

  it("that differ are two, or one cut open where a fold joins them", () => {
    const [left, right] = [piece(100, false), piece(120, false)];
    expect(partsOfHalves(left, right, partOf)).toEqual([partOf(left, "left"), partOf(right, "right")]);
    const [narrow, wide] = [piece(100, true), piece(120, true)];
    const open = { ...partOf(narrow, null), cut: { onFold: false, count: 1 }, otherHalf: wide };
    expect(partsOfHalves(narrow, wide, partOf)).toEqual([open]);
    // On paper each is drawn by itself again, to its fold.
    expect(drawnHalves(open)).toEqual([
      { ...partOf(narrow, "left"), cut: { onFold: true, count: 1 } },
      { ...partOf(wide, "right"), cut: { onFold: true, count: 1 } },
    ]);
    expect(drawnHalves(partOf(left, "left"))).toEqual([partOf(left, "left")]);
    const all: readonly Part[] = [
      rectanglePart("belt", 10, 10),
      open,
      sectorPart("circle", 1, 2, 1),
      partOf(left, null),
    ];
    expect(drawnPieces(all).map(({ key }) => key)).toEqual(["front-left", "front-right", "front"]);
  });
});

describe("a rectangle", () => {
  it("is cut with an allowance at each side, above and below", () => {
    const part = rectanglePart("tier", 400, 300, 1, { allowances: { top: 15, bottom: 30, sides: 12 } });
    expect([cutWidth(part), cutDepth(part)]).toEqual([424, 345]);
  });
});
