import { Point as FlattenPoint, Polygon } from "@flatten-js/core";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cubicEdge, edgeReverse, lineEdge, type EdgeCurve } from "../../../src/core/geometry/edgeCurve";
import {
  isInOutline,
  outlineBounds,
  outlineCrossingsAtY,
  outlineSpansAtY,
  outlineWidthAtY,
  signedArea,
} from "../../../src/core/geometry/outline";
import { piecePoint } from "../../../src/core/geometry/point";
import { CoreBug } from "../../../src/core/result";
import {
  anyCubic,
  CIRCLE_CONTROL,
  cubicOf,
  referenceDistance,
  referencePoints,
  RUNS,
  spread,
} from "../../support/curves";
import { expectPointClose } from "../../support/matchers";

type Edges = readonly EdgeCurve<"piece">[];

const at = piecePoint;
const polygon = (...corners: readonly (readonly [number, number])[]): Edges =>
  corners.map(([x, y], i) => {
    const [nextX, nextY] = corners[(i + 1) % corners.length] ?? [x, y];
    return lineEdge(at(x, y), at(nextX, nextY));
  });
const square = polygon([0, 0], [100, 0], [100, 100], [0, 100]);
const reversed = (edges: Edges): Edges => edges.toReversed().map((edge) => edgeReverse(edge));

function circle(x: number, y: number, r: number): Edges {
  const k = r * CIRCLE_CONTROL;
  return [
    cubicOf([x + r, y], [x + r, y + k], [x + k, y + r], [x, y + r]),
    cubicOf([x, y + r], [x - k, y + r], [x - r, y + k], [x - r, y]),
    cubicOf([x - r, y], [x - r, y - k], [x - k, y - r], [x, y - r]),
    cubicOf([x, y - r], [x + k, y - r], [x + r, y - k], [x + r, y]),
  ].map((c) => cubicEdge(c));
}

/** A front bodice in outline: curved neck and armhole, a dart mouth, a shaped side. */
const bodice: Edges = [
  lineEdge(at(0, 400), at(0, 70)),
  cubicEdge(cubicOf([0, 70], [40, 70], [65, 45], [65, 0])),
  lineEdge(at(65, 0), at(180, 45)),
  cubicEdge(cubicOf([180, 45], [160, 110], [160, 190], [235, 200])),
  cubicEdge(cubicOf([235, 200], [230, 260], [220, 330], [215, 390])),
  cubicEdge(cubicOf([215, 390], [180, 402], [150, 400], [130, 400])),
  lineEdge(at(130, 400), at(100, 400)),
  lineEdge(at(100, 400), at(0, 400)),
];

const libraryPolygon = (edges: Edges): Polygon =>
  new Polygon(
    edges.flatMap(({ a, b, curve }) =>
      (curve === null ? [a] : referencePoints({ a, b, ...curve }, 200).slice(0, -1)).map(
        ({ x, y }) => new FlattenPoint(x, y),
      ),
    ),
  );

describe("signedArea", () => {
  it.each([
    ["a square", square, 10_000],
    [
      "a square far from the origin",
      polygon([1e6, 1e6], [1e6 + 100, 1e6], [1e6 + 100, 1e6 + 100], [1e6, 1e6 + 100]),
      10_000,
    ],
    ["a triangle", polygon([0, 0], [30, 0], [0, 40]), 600],
    ["an L", polygon([0, 0], [20, 0], [20, 10], [10, 10], [10, 30], [0, 30]), 400],
    ["nothing", [], 0],
  ])("of %s, and negative the other way round", (_name, edges, area) => {
    expect(signedArea(edges)).toBeCloseTo(area, 6);
    expect(signedArea(reversed(edges))).toBeCloseTo(-area, 6);
  });

  it("of the arch over a line is three tenths of the sum of its controls' heights times the base", () => {
    // y(t) = 240t(1 - t), x' = 600t(1 - t): the integral of 144 000 t²(1 - t)² is 144 000 / 30.
    const arch = [cubicEdge(cubicOf([0, 0], [0, 80], [100, 80], [100, 0])), lineEdge(at(100, 0), at(0, 0))];
    expect(Math.abs(signedArea(arch))).toBeCloseTo(144_000 / 30, 9);
  });

  it("of the semicircle-like S is 0, since its halves cancel", () => {
    const s = [cubicEdge(cubicOf([0, 0], [30, 90], [70, -90], [100, 0])), lineEdge(at(100, 0), at(0, 0))];
    expect(signedArea(s)).toBeCloseTo(0, 9);
  });

  it("of four quarter circles is that of the circle to 0.03 %", () => {
    const area = Math.PI * 100 ** 2;
    expect(signedArea(circle(500, -300, 100)) / area).toBeGreaterThan(1);
    expect(signedArea(circle(500, -300, 100)) / area).toBeLessThan(1.0003);
  });

  it("agrees with the shoelace sum of a dense polygon", () => {
    fc.assert(
      fc.property(anyCubic, (c) => {
        const points = referencePoints(c, 2000);
        const shoelace = points.reduce((sum, p, i) => {
          const q = points[(i + 1) % points.length] ?? p;
          return sum + (p.x * q.y - p.y * q.x) / 2;
        }, 0);
        expect(Math.abs(signedArea([cubicEdge(c), lineEdge(c.b, c.a)]) - shoelace)).toBeLessThan(0.5);
      }),
      { ...RUNS, numRuns: 100 },
    );
  });

  it("of a bodice agrees with @flatten-js/core", () => {
    expect(Math.abs(Math.abs(signedArea(bodice)) / libraryPolygon(bodice).area() - 1)).toBeLessThan(1e-5);
  });
});

describe("outlineBounds", () => {
  it("hold every edge's bulge", () => {
    const { min, max } = outlineBounds(circle(10, 20, 50));
    expectPointClose(min, { x: -40, y: -30 }, 1e-9);
    expectPointClose(max, { x: 60, y: 70 }, 1e-9);
  });

  it("are refused for nothing", () => {
    expect(() => outlineBounds([])).toThrow(CoreBug);
  });
});

describe("isInOutline", () => {
  it.each([
    [50, 50, true],
    [0, 50, true], // on an edge
    [100, 100, true], // on a corner
    [100 + 9e-5, 50, true], // within reach of an edge
    [100.001, 50, false],
    [-50, 100, false], // level with a corner
    [-50, 0, false],
    [150, 50, false],
    [50, -1, false],
  ])("a square: (%d, %d) %s", (x, y, inside) => {
    expect(isInOutline(square, at(x, y))).toBe(inside);
    expect(isInOutline(reversed(square), at(x, y))).toBe(inside);
  });

  it("a diamond, level with its corners", () => {
    const diamond = polygon([50, 0], [100, 50], [50, 100], [0, 50]);
    for (const [x, y, inside] of [
      [50, 50, true],
      [-1, 50, false],
      [101, 50, false],
      [20, 0, false],
      [20, 100, false],
    ] as const) {
      expect(isInOutline(diamond, at(x, y))).toBe(inside);
    }
  });

  it("a circle, level with its turns", () => {
    const round = circle(0, 0, 50);
    for (const [x, y, inside] of [
      [0, 0, true],
      [-60, 50, false],
      [-60, 0, false],
      [-60, -50, false],
      [35, 35, true],
      [36, 36, false],
    ] as const) {
      expect(isInOutline(round, at(x, y))).toBe(inside);
    }
  });

  it("agrees with @flatten-js/core on a bodice, away from its edges", () => {
    const next = spread(21);
    const library = libraryPolygon(bodice);
    let inside = 0;
    for (let i = 0; i < 400; i++) {
      const p = at(260 * next() - 10, 420 * next() - 10);
      const nearEdge = bodice.some(({ a, b, curve }) => {
        const c1 = curve?.c1 ?? at((2 * a.x + b.x) / 3, (2 * a.y + b.y) / 3);
        const c2 = curve?.c2 ?? at((a.x + 2 * b.x) / 3, (a.y + 2 * b.y) / 3);
        return referenceDistance({ a, c1, c2, b }, p, 50) < 0.1;
      });
      if (nearEdge) continue;
      const expected = library.contains(new FlattenPoint(p.x, p.y));
      expect(isInOutline(bodice, p)).toBe(expected);
      if (expected) inside++;
    }
    expect(inside).toBeGreaterThan(100);
  });
});

describe("level cuts", () => {
  const u = polygon([0, 0], [30, 0], [30, 60], [70, 60], [70, 0], [100, 0], [100, 100], [0, 100]);

  it.each([
    [
      30,
      [0, 30, 70, 100],
      [
        { from: 0, to: 30 },
        { from: 70, to: 100 },
      ],
      60,
    ],
    [80, [0, 100], [{ from: 0, to: 100 }], 100],
    [60, [0, 30, 70, 100], [{ from: 0, to: 100 }], 100], // along the level edge
    [
      0,
      [0, 30, 70, 100],
      [
        { from: 0, to: 30 },
        { from: 70, to: 100 },
      ],
      60,
    ],
    [-1, [], [], 0],
  ])("of a U at %d", (y, crossings, spans, width) => {
    expect(outlineCrossingsAtY(u, y)).toEqual(crossings);
    expect(outlineSpansAtY(u, y)).toEqual(spans);
    expect(outlineWidthAtY(u, y)).toBe(width);
  });

  it("through two corners count each once", () => {
    const diamond = polygon([50, 0], [100, 50], [50, 100], [0, 50]);
    expect(outlineCrossingsAtY(diamond, 50)).toEqual([0, 100]);
    expect(outlineCrossingsAtY(diamond, 0)).toEqual([50]);
    expect(outlineWidthAtY(diamond, 0)).toBe(0);
  });

  it("of a circle are its chords", () => {
    for (const y of [0, 10, 30, -45]) {
      const chord = 2 * Math.sqrt(50 ** 2 - y ** 2);
      expect(outlineWidthAtY(circle(7, 0, 50), y) / chord).toBeGreaterThan(0.9995);
      expect(outlineWidthAtY(circle(7, 0, 50), y) / chord).toBeLessThan(1.002);
    }
  });

  it("of nothing are none", () => {
    expect(outlineSpansAtY([], 5)).toEqual([]);
  });
});
