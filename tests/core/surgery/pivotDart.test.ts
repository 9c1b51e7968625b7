/** Pivoting a dart keeps what was sewn: seams, the angle, every part's own shape, and the area but for the wedge. */
import { Polygon } from "@flatten-js/core";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { draftFrontBlock } from "../../../src/core/draft/frontBlock";
import { draftMeasuresFor } from "../../../src/core/draft/draftMeasures";
import { edgePointAt } from "../../../src/core/geometry/edgeCurve";
import { angleAt, distance, rotateAbout } from "../../../src/core/geometry/point";
import { seamLength } from "../../../src/core/girth/seamLength";
import { pointNames, pointOf, type Edge, type Piece } from "../../../src/core/pattern/piece";
import { withSideDart } from "../../../src/core/style/sideDartStyle";
import { pivotDart } from "../../../src/core/surgery/pivotDart";
import { outlineOf } from "../../../src/core/pattern/ring";
import { radians } from "../../../src/core/units";
import { seamByBezierJs } from "../../support/independent";

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
    expect(distance(at, pointOf(pivoted, "sideDartInner"))).toBeCloseTo(
      distance(at, pointOf(pivoted, "sideDartOuter")),
      6,
    );
  });

  it("keeps the area of the cloth", () => {
    // 200 chords an edge: the polygon misses a few mm² of about 100 000.
    expect(Math.abs(area(pivoted, "sideDart") - area(block, "shoulderDart"))).toBeLessThan(15);
  });

  it("makes the shoulder one straight line again", () => {
    expect(distance(pointOf(pivoted, "sideNeck"), pointOf(pivoted, "shoulderTip"))).toBeCloseTo(
      seamLength(block, "shoulder"),
      6,
    );
  });
});

describe("a dart pivoted to any place beyond it", () => {
  const block = draftFrontBlock(draftMeasuresFor({ label: "12", bust: 880, waist: 700, hip: 940 }, chart, ease));
  const bust = pointOf(block, "bustPoint");
  const starts = ["shoulderTip", "armholeTouch", "sideBust", "sideWaist"] as const;
  const near = (a: { x: number; y: number } | undefined, b: { x: number; y: number } | undefined): number =>
    a === undefined || b === undefined ? Infinity : Math.hypot(a.x - b.x, a.y - b.y);

  it("keeps seams and parts; turned back by the same angle it is the old outline", () => {
    fc.assert(
      fc.property(fc.constantFrom(...starts), fc.integer({ min: 5, max: 95 }), (edgeFrom, t) => {
        const { piece, turn } = pivotDart(block, {
          close: "shoulderDart",
          open: "sideDart",
          edgeFrom,
          t: t / 100,
          pivot: "bustPoint",
        });
        expect(Math.abs(turn)).toBeCloseTo((17.5 * Math.PI) / 180, 9);
        for (const seam of ["neck", "shoulder", "armhole", "side", "waist", "centre"] as const) {
          expect(seamByBezierJs(piece, seam)).toBeCloseTo(seamByBezierJs(block, seam), 4);
        }
        // Turned: all from the closed dart round to the cut. Each point either stayed or turns back to where it was.
        const back = (p: typeof bust) => rotateAbout(p, bust, radians(-turn));
        const kept = pointNames(block).filter((name) => !name.startsWith("shoulderDart"));
        const turned = kept.filter((name) => near(pointOf(piece, name), pointOf(block, name)) > 1e-9);
        expect(turned).toContain("shoulderTip");
        for (const name of turned) expect(near(back(pointOf(piece, name)), pointOf(block, name))).toBeLessThan(1e-9);
        // The two ends of the cut come together at one point of the old edge, and its halves are the old curve again.
        const inner = back(pointOf(piece, "sideDartInner"));
        expect(near(inner, pointOf(piece, "sideDartOuter"))).toBeLessThan(1e-9);
        const old = block.edges.find(({ from }) => from === edgeFrom);
        const first = piece.edges.find(({ from }) => from === edgeFrom);
        const second = piece.edges.find(({ from }) => from === "sideDartOuter");
        if (old === undefined || first === undefined || second === undefined) throw new Error("edges");
        const share = t / 100;
        const lerp = (a: { x: number; y: number }, b: { x: number; y: number }) => ({
          x: a.x + (b.x - a.x) * share,
          y: a.y + (b.y - a.y) * share,
        });
        const [p0, p3] = [pointOf(block, old.from), pointOf(block, old.to)];
        // de Casteljau, written out: controls of the two halves of a cubic cut at `share`.
        const halves = (edge: Edge) => {
          if (edge.curve === null) return { cut: lerp(p0, p3), c1: bust, d2: bust };
          const [a, b, c] = [lerp(p0, edge.curve.c1), lerp(edge.curve.c1, edge.curve.c2), lerp(edge.curve.c2, p3)];
          const [d, e] = [lerp(a, b), lerp(b, c)];
          return { cut: lerp(d, e), c1: a, d2: c };
        };
        const expected = halves(old);
        expect(near(inner, expected.cut)).toBeLessThan(1e-6);
        // A straight edge has no controls, before or after.
        expect([first.curve === null, second.curve === null]).toEqual([old.curve === null, old.curve === null]);
        expect(near(first.curve === null ? bust : back(first.curve.c1), expected.c1)).toBeLessThan(1e-6);
        expect(near(second.curve?.c2 ?? bust, expected.d2)).toBeLessThan(1e-6);
      }),
      { numRuns: 120 },
    );
  });
});
