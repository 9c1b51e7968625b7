/** The dart cap against the law of sines, for seams square to the leg. */
import { describe, expect, it } from "vitest";
import { dartCap } from "../../../src/core/dart/dartCap";
import { distance, piecePoint, polar } from "../../../src/core/geometry/point";
import type { Piece } from "../../../src/core/pattern/piece";
import { radians } from "../../../src/core/units";

/** A waist dart with legs of a length and a mouth, in a seam that meets both legs squarely. */
function squareDart(leg: number, mouth: number): Piece {
  const half = Math.asin(mouth / 2 / leg);
  const apex = piecePoint(100, 0);
  const inner = polar(apex, radians(Math.PI / 2 + half), leg);
  const outer = polar(apex, radians(Math.PI / 2 - half), leg);
  const at = (p: typeof apex) => ({ at: p, level: "bust" as const });
  return {
    name: "front",
    points: {
      waistDartApex: at(apex),
      waistDartInner: at(inner),
      waistDartOuter: at(outer),
      // Square to each leg, away from the dart.
      centreWaist: at(polar(inner, radians(Math.PI + half), 60)),
      sideWaist: at(polar(outer, radians(-half), 60)),
    },
    edges: [
      { from: "centreWaist", to: "sideWaist", seam: "centre", curve: null, mouthOf: null },
      { from: "sideWaist", to: "waistDartOuter", seam: "waist", curve: null, mouthOf: null },
      { from: "waistDartOuter", to: "waistDartInner", seam: "waist", curve: null, mouthOf: "waistDart" },
      { from: "waistDartInner", to: "centreWaist", seam: "waist", curve: null, mouthOf: null },
    ],
    darts: [
      {
        name: "waistDart",
        seam: "waist",
        inner: "waistDartInner",
        outer: "waistDartOuter",
        apex: "waistDartApex",
        aimsAt: null,
      },
    ],
    levelLines: [],
    centreOnFold: false,
  };
}

describe("dartCap", () => {
  // Fold line L / cos(θ/2), from reflecting the edge in the fold: 20 and 4, 25 and 7, 16 and 3.
  it.each([
    [200, 40, 201.01],
    [250, 70, 252.49],
    [160, 30, 160.71],
  ])("of a dart of %d mm legs and %d mm mouth reaches %d mm from the apex", (leg, mouth, fold) => {
    const piece = squareDart(leg, mouth);
    const cap = dartCap(piece, "waistDart");
    expect(cap).toHaveLength(3);
    const tip = cap[1];
    if (tip === undefined) throw new Error("no tip");
    expect(distance(piecePoint(100, 0), tip)).toBeCloseTo(fold, 1);
    expect(tip.x).toBeCloseTo(100, 6);
  });
});
