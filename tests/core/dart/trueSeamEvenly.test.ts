/** Truing over a wide dart: smooth, as long as before, legs still equal. */
import * as fc from "fast-check";
import { expect, it } from "vitest";
import { trueSeamEvenly } from "../../../src/core/dart/trueSeamEvenly";
import { seamCornerAtDart } from "../../../src/core/dart/trueSeam";
import { draftMeasuresFor } from "../../../src/core/draft/draftMeasures";
import { draftFrontBlock } from "../../../src/core/draft/frontBlock";
import { piecePoint } from "../../../src/core/geometry/point";
import { pointOf, type Piece, type PointName } from "../../../src/core/pattern/piece";
import { anyAmount } from "../../support/amounts";
import { seamByBezierJs } from "../../support/independent";

const chart = { sizes: [], draftedDifference: 50, cups: [] };
const block = draftFrontBlock(
  draftMeasuresFor({ label: "x", bust: 880, waist: 660, hip: 940 }, chart, { bust: 80, waist: 40, hip: 50 }),
);

/** The waist dart ended anywhere on its axis: the nearer to the waist, the more the seam must bend. */
function endedAt(height: number): Piece {
  const at = piecePoint(pointOf(block, "bustPoint").x, pointOf(block, "centreWaist").y - height);
  return { ...block, points: { ...block.points, waistDartApex: { at, level: "bust" } } };
}

const leg = (piece: Piece, end: PointName): number => {
  const [a, b] = [pointOf(piece, "waistDartApex"), pointOf(piece, end)];
  return Math.hypot(b.x - a.x, b.y - a.y);
};

it("runs smooth over the shut dart, keeps its length (by bezier-js) and equal legs", () => {
  fc.assert(
    fc.property(anyAmount(50, 200), (height) => {
      const trued = trueSeamEvenly(endedAt(height), "waistDart", seamByBezierJs(block, "waist"));
      expect(Math.abs(seamCornerAtDart(trued, "waistDart"))).toBeLessThan(1e-6);
      expect(seamByBezierJs(trued, "waist")).toBeCloseTo(seamByBezierJs(block, "waist"), 3);
      expect(leg(trued, "waistDartInner")).toBeCloseTo(leg(trued, "waistDartOuter"), 6);
    }),
    { numRuns: 50 },
  );
});

it("leaves the ends of the seam where they are, and their directions", () => {
  const trued = trueSeamEvenly(endedAt(60), "waistDart", seamByBezierJs(block, "waist"));
  for (const name of ["sideWaist", "centreWaist"] as const) expect(trued.points[name]).toEqual(block.points[name]);
  const ends = (piece: Piece) => [
    piece.edges.find(({ from }) => from === "sideWaist")?.curve?.c1,
    piece.edges.find(({ to }) => to === "centreWaist")?.curve?.c2,
  ];
  expect(ends(trued)).toEqual(ends(block));
  expect(trued.edges).not.toEqual(block.edges);
});
