/** Truing legs and seam: equal legs at the mean, no corner over the shut dart, and the seam's length kept. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { drawnStop, endDart, usualStop } from "../../../src/core/dart/dartEnd";
import { trueLegs } from "../../../src/core/dart/trueLegs";
import { seamCornerAtDart, trueSeamAtDart, trueSeamKeepingLength } from "../../../src/core/dart/trueSeam";
import { draftFrontBlock } from "../../../src/core/draft/frontBlock";
import { draftMeasuresFor } from "../../../src/core/draft/draftMeasures";
import { angleAt, distance, piecePoint, rotateAbout } from "../../../src/core/geometry/point";
import { pointOf, type Edge, type Piece, type PointName } from "../../../src/core/pattern/piece";
import { withSideDart } from "../../../src/core/style/sideDartStyle";
import { degreesFrom, radiansFromDegrees } from "../../../src/core/units";
import { anyAmount } from "../../support/amounts";
import { seamByBezierJs } from "../../support/independent";

const row = { label: "12", bust: 880, waist: 700, hip: 940 };
const front = withSideDart(
  draftFrontBlock(
    draftMeasuresFor(row, { sizes: [], draftedDifference: 50, cups: [] }, { bust: 80, waist: 40, hip: 50 }),
  ),
);

const withApex = (piece: Piece, name: PointName, x: number, y: number): Piece => ({
  ...piece,
  points: { ...piece.points, [name]: { at: piecePoint(x, y), level: "bust" } },
});

/** The corner of the waist seam over the shut dart, found by turning the outer side about the end by the dart's angle. */
function cornerWhenFolded(piece: Piece): number {
  const [apex, inner, outer] = (["waistDartApex", "waistDartInner", "waistDartOuter"] as const).map((name) =>
    pointOf(piece, name),
  );
  if (apex === undefined || inner === undefined || outer === undefined) throw new Error("dart");
  const beside = (edge: Edge | undefined, which: "c1" | "c2") => edge?.curve?.[which] ?? apex;
  const before = beside(
    piece.edges.find(({ to }) => to === "waistDartOuter"),
    "c2",
  );
  const after = beside(
    piece.edges.find(({ from }) => from === "waistDartInner"),
    "c1",
  );
  const turn = degreesFrom(angleAt(apex, inner, outer));
  // Clockwise on screen brings the outer leg, on the right, down and round onto the inner one.
  const folded = rotateAbout(before, apex, radiansFromDegrees(turn));
  const corner = rotateAbout(outer, apex, radiansFromDegrees(turn));
  return (
    180 - degreesFrom(angleAt(corner, folded, piecePoint(corner.x + after.x - inner.x, corner.y + after.y - inner.y)))
  );
}

describe("trueLegs", () => {
  it("brings both legs to the mean of the two, at the same angle", () => {
    fc.assert(
      fc.property(anyAmount(60, 130), anyAmount(240, 330), (x, y) => {
        const moved = withApex(front, "waistDartApex", x, y);
        const [apex, inner, outer] = [
          piecePoint(x, y),
          pointOf(front, "waistDartInner"),
          pointOf(front, "waistDartOuter"),
        ];
        const mean = (distance(apex, inner) + distance(apex, outer)) / 2;
        const { piece, inner: byInner, outer: byOuter } = trueLegs(moved, "waistDart");
        expect(distance(apex, pointOf(piece, "waistDartInner"))).toBeCloseTo(mean, 6);
        expect(distance(apex, pointOf(piece, "waistDartOuter"))).toBeCloseTo(mean, 6);
        expect(byInner).toBeCloseTo(mean - distance(apex, inner), 6);
        expect(byOuter).toBeCloseTo(mean - distance(apex, outer), 6);
        expect(angleAt(apex, pointOf(piece, "waistDartInner"), pointOf(piece, "waistDartOuter"))).toBeCloseTo(
          angleAt(apex, inner, outer),
          9,
        );
      }),
    );
  });
});

describe("truing the seam at a dart", () => {
  const moved = trueLegs(withApex(front, "waistDartApex", 88, 300), "waistDart").piece;

  it("finds the corner that folding the paper shows", () => {
    expect(cornerWhenFolded(moved)).toBeGreaterThan(1);
    expect(Math.abs(degreesFrom(seamCornerAtDart(moved, "waistDart")))).toBeCloseTo(cornerWhenFolded(moved), 6);
  });

  it("leaves no corner, however the end was moved", () => {
    fc.assert(
      fc.property(anyAmount(70, 120), anyAmount(245, 320), (x, y) => {
        const legs = trueLegs(withApex(front, "waistDartApex", x, y), "waistDart").piece;
        expect(cornerWhenFolded(trueSeamAtDart(legs, "waistDart"))).toBeLessThan(1e-4);
      }),
    );
  });

  it("keeps the length of the seam where that is asked, and no corner", () => {
    const kept = trueSeamKeepingLength(moved, "waistDart", seamByBezierJs(front, "waist"));
    expect(seamByBezierJs(kept, "waist")).toBeCloseTo(seamByBezierJs(front, "waist"), 3);
    expect(cornerWhenFolded(kept)).toBeLessThan(0.01);
  });
});

describe("where a dart is ended", () => {
  // Common practice, no source: waist dart 15 to 25 mm short of the bust point, side dart 20 to 40, more for a fuller bust.
  it("within the usual stops, the side dart further off the fuller the bust", () => {
    expect([usualStop("waistDart"), usualStop("sideDart")]).toEqual([
      { least: 15, most: 25 },
      { least: 20, most: 40 },
    ]);
    const stops = [0, 25, 50, 75, 100, 250].map((difference) => drawnStop("sideDart", difference));
    expect(stops).toEqual(stops.toSorted((a, b) => a - b));
    expect(stops[2]).toBeLessThan(stops[4] ?? 0);
    expect(Math.min(...stops)).toBeGreaterThanOrEqual(20);
    expect(Math.max(...stops)).toBeLessThanOrEqual(40);
    expect([0, 50, 250].map((difference) => drawnStop("waistDart", difference))).toEqual([20, 20, 20]);
  });

  it.each(["sideDart", "waistDart"] as const)(
    "the %s has equal legs and stops abreast of the bust point by the amount",
    (name) => {
      const bust = pointOf(front, "bustPoint");
      for (const stop of [15, 20, 40]) {
        const ended = endDart(front, name, bust, stop);
        const [apex, inner, outer] = [
          pointOf(ended, `${name}Apex`),
          pointOf(ended, `${name}Inner`),
          pointOf(ended, `${name}Outer`),
        ];
        expect(distance(apex, inner)).toBeCloseTo(distance(apex, outer), 9);
        // Along the axis, by the scalar product.
        const middle = { x: (inner.x + outer.x) / 2, y: (inner.y + outer.y) / 2 };
        const length = Math.hypot(apex.x - middle.x, apex.y - middle.y);
        const left = ((bust.x - apex.x) * (apex.x - middle.x) + (bust.y - apex.y) * (apex.y - middle.y)) / length;
        expect(left).toBeCloseTo(stop, 6);
      }
    },
  );

  it("never shorter than can be pressed: 25 mm (common practice, no source)", () => {
    const ended = endDart(front, "waistDart", pointOf(front, "bustPoint"), 5000);
    const middle = piecePoint(
      (pointOf(ended, "waistDartInner").x + pointOf(ended, "waistDartOuter").x) / 2,
      pointOf(ended, "waistDartInner").y,
    );
    expect(distance(pointOf(ended, "waistDartApex"), middle)).toBeCloseTo(25, 3);
  });
});
