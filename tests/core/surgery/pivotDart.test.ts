/** Pivoting a dart keeps what was sewn: seams, the angle, every part's own shape, and the area but for the wedge. */
import { Polygon } from "@flatten-js/core";
import { describe, expect, it } from "vitest";
import { draftFrontBlock } from "../../../src/core/draft/frontBlock";
import { draftMeasuresFor } from "../../../src/core/draft/draftMeasures";
import { edgePointAt } from "../../../src/core/geometry/edgeCurve";
import { angleAt, distance } from "../../../src/core/geometry/point";
import { seamLength } from "../../../src/core/girth/seamLength";
import { pointOf, type Piece } from "../../../src/core/pattern/piece";
import { withSideDart } from "../../../src/core/style/sideDartStyle";
import { outlineOf } from "../../../src/core/surgery/ring";

const chart = { sizes: [], draftedDifference: 50, cups: [] };
const ease = { bust: 80, waist: 40, hip: 50 };

/** Area by an independent library, of a fine polygon; mm². */
function area(piece: Piece, apexOf: "shoulderDart" | "sideDart"): number {
  const points: [number, number][] = outlineOf(piece).flatMap((edge, index): [number, number][] => {
    // The wedge is cut out of the cloth: go in to its point.
    if (piece.edges[index]?.mouthOf === apexOf) {
      const bust = pointOf(piece, "bustPoint");
      return [
        [edge.a.x, edge.a.y],
        [bust.x, bust.y],
      ];
    }
    return Array.from({ length: 200 }, (_, i): [number, number] => {
      const p = edgePointAt(edge, i / 200);
      return [p.x, p.y];
    });
  });
  return new Polygon(points).area();
}

describe.each([760, 880, 1040, 1260])("the shoulder dart pivoted to the side seam at bust %d", (bust) => {
  const block = draftFrontBlock(draftMeasuresFor({ label: "x", bust, waist: bust - 180, hip: bust + 60 }, chart, ease));
  const pivoted = withSideDart(block);

  it("keeps the length of every seam", () => {
    for (const seam of ["neck", "shoulder", "armhole", "side", "waist", "centre"] as const) {
      expect(seamLength(pivoted, seam)).toBeCloseTo(seamLength(block, seam), 6);
    }
  });

  it("opens by the very angle that was closed, with equal legs", () => {
    const at = pointOf(block, "bustPoint");
    const closed = angleAt(at, pointOf(block, "shoulderDartInner"), pointOf(block, "shoulderDartOuter"));
    const opened = angleAt(at, pointOf(pivoted, "sideDartInner"), pointOf(pivoted, "sideDartOuter"));
    expect(opened).toBeCloseTo(closed, 9);
    expect(distance(at, pointOf(pivoted, "sideDartInner"))).toBeCloseTo(distance(at, pointOf(pivoted, "sideDartOuter")), 6);
  });

  it("keeps the area of the cloth", () => {
    // 200 chords an edge: the polygon misses a few mm² of about 100 000.
    expect(Math.abs(area(pivoted, "sideDart") - area(block, "shoulderDart"))).toBeLessThan(15);
  });

  it("makes the shoulder one straight line again", () => {
    expect(distance(pointOf(pivoted, "sideNeck"), pointOf(pivoted, "shoulderTip"))).toBeCloseTo(seamLength(block, "shoulder"), 6);
  });
});
