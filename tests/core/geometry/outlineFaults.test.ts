import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cubicEdge, edgeMap, edgeReverse, lineEdge, type EdgeCurve } from "../../../src/core/geometry/edgeCurve";
import { selfCrossings, validateOutline } from "../../../src/core/geometry/outline";
import { piecePoint } from "../../../src/core/geometry/point";
import { CIRCLE_CONTROL, cubicOf, RUNS } from "../../support/curves";
import { expectPointClose, expectSamePoints } from "../../support/matchers";

type Edges = readonly EdgeCurve<"piece">[];

const at = piecePoint;
const polygon = (...corners: readonly (readonly [number, number])[]): Edges =>
  corners.map(([x, y], i) => {
    const [nextX, nextY] = corners[(i + 1) % corners.length] ?? [x, y];
    return lineEdge(at(x, y), at(nextX, nextY));
  });
const square = polygon([0, 0], [100, 0], [100, 100], [0, 100]);
const squareOpenBy = (gap: number): Edges => [...square.slice(0, 3), lineEdge(at(0, 100), at(0, gap))];
const codes = (edges: Edges): readonly string[] => validateOutline(edges).map(({ code }) => code);

/** Corners on an ellipse at rising angles: a convex outline, with edges that bulge outwards or are straight. */
const anyConvex: fc.Arbitrary<Edges> = fc
  .tuple(
    fc.uniqueArray(fc.integer({ min: 0, max: 35 }), { minLength: 3, maxLength: 12 }),
    fc.integer({ min: 60, max: 300 }),
    fc.boolean(),
  )
  .filter(([steps]) => {
    const sorted = steps.toSorted((p, q) => p - q);
    return sorted.every((step, i) => ((sorted[(i + 1) % sorted.length] ?? step) - step + 36) % 36 <= 17);
  })
  .map(([steps, width, isRound]) => {
    const place = (angle: number) => at(width * Math.cos(angle), 200 * Math.sin(angle));
    const angles = steps.toSorted((p, q) => p - q).map((step) => (step * Math.PI) / 18);
    return angles.map((angle, i) => {
      const next = angles[i + 1] ?? (angles[0] ?? 0) + 2 * Math.PI;
      const [a, b] = [place(angle), place(i + 1 < angles.length ? next : (angles[0] ?? 0))];
      if (!isRound || next - angle > 2) return lineEdge(a, b);
      // Controls along the tangents, as long as an arc of this angle asks for.
      const reach = (4 / 3) * Math.tan((next - angle) / 4);
      const along = (turn: number, sign: number) => {
        const p = place(turn);
        return at(p.x - sign * reach * width * Math.sin(turn), p.y + sign * reach * 200 * Math.cos(turn));
      };
      return cubicEdge({ a, c1: along(angle, 1), c2: along(next, -1), b });
    });
  });

describe("validateOutline", () => {
  it("finds nothing wrong with a square", () => {
    expect(validateOutline(square)).toEqual([]);
  });

  it("finds nothing wrong with convex outlines", () => {
    fc.assert(
      fc.property(anyConvex, (edges) => {
        expect(validateOutline(edges)).toEqual([]);
      }),
      RUNS,
    );
  });

  it("finds nothing wrong with a drop of one edge, or a lens of two", () => {
    expect(validateOutline([cubicEdge(cubicOf([50, 0], [150, 100], [-50, 100], [50, 0]))])).toEqual([]);
    const lens = [cubicEdge(cubicOf([0, 0], [30, 40], [70, 40], [100, 0])), lineEdge(at(100, 0), at(0, 0))];
    expect(validateOutline(lens)).toEqual([]);
  });

  it("finds nothing wrong with a narrow dart", () => {
    expect(validateOutline(polygon([0, 0], [100, 0], [100, 200], [51, 200], [50, 100], [49, 200], [0, 200]))).toEqual(
      [],
    );
  });

  it("finds a planted gap, and says where and how wide", () => {
    fc.assert(
      fc.property(anyConvex, fc.nat(), fc.integer({ min: 1, max: 30 }), (edges, pick, tenths) => {
        const open = pick % edges.length;
        // The end is drawn back along the edge's own chord, so that nothing crosses.
        const edge = edges[open];
        if (edge === undefined || edge.curve !== null) return;
        const length = Math.hypot(edge.b.x - edge.a.x, edge.b.y - edge.a.y);
        const share = 1 - tenths / 10 / length;
        const end = at(edge.a.x + share * (edge.b.x - edge.a.x), edge.a.y + share * (edge.b.y - edge.a.y));
        const faults = validateOutline(edges.map((other, i) => (i === open ? lineEdge(edge.a, end) : other)));
        expect(faults).toEqual([
          { code: "outline/gap", edge: open, next: (open + 1) % edges.length, gap: expect.closeTo(tenths / 10, 9) },
        ]);
      }),
      RUNS,
    );
  });

  it("allows a gap within reach of one point, and no more", () => {
    expect(codes(squareOpenBy(9e-5))).toEqual([]);
    expect(codes(squareOpenBy(2e-4))).toEqual(["outline/gap"]);
  });

  it("finds a short edge, and says how short", () => {
    const nicked = polygon([0, 0], [100, 0], [100, 98.5], [100, 100], [0, 100]);
    expect(validateOutline(nicked)).toEqual([{ code: "outline/short-edge", edge: 2, length: 1.5, shortest: 2 }]);
    expect(codes(polygon([0, 0], [100, 0], [100, 98], [100, 100], [0, 100]))).toEqual([]);
  });

  it.each([Number.NaN, Infinity, -Infinity])("finds %d in any coordinate, and nothing else", (bad) => {
    const curved = [...square.slice(0, 3), cubicEdge(cubicOf([0, 100], [10, 60], [10, 30], [0, 0]))];
    const spoilt: readonly EdgeCurve<"piece">[] = [
      cubicEdge(cubicOf([bad, 100], [10, 60], [10, 30], [0, 0])),
      cubicEdge(cubicOf([0, 100], [10, bad], [10, 30], [0, 0])),
      cubicEdge(cubicOf([0, 100], [10, 60], [bad, 30], [0, 0])),
      cubicEdge(cubicOf([0, 100], [10, 60], [10, 30], [0, bad])),
    ];
    expect(validateOutline(curved)).toEqual([]);
    for (const edge of spoilt) {
      expect(validateOutline([...curved.slice(0, 3), edge])).toEqual([{ code: "outline/not-finite", edge: 3 }]);
    }
  });

  it("finds that there is nothing", () => {
    expect(validateOutline([])).toEqual([{ code: "outline/no-edges" }]);
  });

  it("finds a planted crossing: two corners of a convex outline swapped", () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 12 }), fc.nat(), (count, pick) => {
        const corners = Array.from({ length: count }, (_, i): readonly [number, number] => {
          const angle = (2 * Math.PI * i) / count;
          return [200 * Math.cos(angle), 200 * Math.sin(angle)];
        });
        const [i, j] = [pick % count, (pick + 1) % count];
        const swapped = corners.map((corner, k) =>
          k === i ? (corners[j] ?? corner) : k === j ? (corners[i] ?? corner) : corner,
        );
        expect(codes(polygon(...swapped))).toContain("outline/self-crossing");
      }),
      RUNS,
    );
  });
});

describe("selfCrossings", () => {
  it("of a bow tie are its middle, with edges and parameters", () => {
    const [crossing, ...more] = selfCrossings(polygon([0, 0], [100, 100], [100, 0], [0, 100]));
    expect(more).toEqual([]);
    expect(crossing).toMatchObject({ edge1: 0, edge2: 2, t1: 0.5, t2: 0.5 });
    expectPointClose(crossing?.point, { x: 50, y: 50 }, 1e-9);
  });

  it("of an edge with a loop are its own", () => {
    const looped = [
      cubicEdge(cubicOf([0, 0], [150, 100], [-50, 100], [100, 0])),
      lineEdge(at(100, 0), at(50, -100)),
      lineEdge(at(50, -100), at(0, 0)),
    ];
    const [crossing, ...more] = selfCrossings(looped);
    expect(more).toEqual([]);
    expect(crossing).toMatchObject({ edge1: 0, edge2: 0 });
    expectPointClose(crossing?.point, { x: 50, y: 300 / 7 }, 1e-9);
  });

  it("are found where a curve bulges through another edge", () => {
    const bulging = [...square.slice(0, 3), cubicEdge(cubicOf([0, 100], [140, 60], [140, 40], [0, 0]))];
    const found = selfCrossings(bulging);
    // x(t) = 420t(1 - t) = 100 on the right-hand edge; y(t) = 100(1-t)³ + 180t(1-t)² + 120t²(1-t).
    const root = Math.sqrt(1 - 400 / 420);
    const [first = 0, second = 0] = [(1 - root) / 2, (1 + root) / 2].map(
      (t) => 100 * (1 - t) ** 3 + 180 * t * (1 - t) ** 2 + 120 * t * t * (1 - t),
    );
    expectSamePoints(
      found.map(({ point }) => point),
      [
        { x: 100, y: first },
        { x: 100, y: second },
      ],
      1e-6,
    );
    found.forEach(({ edge1, edge2 }) => expect([edge1, edge2]).toEqual([1, 3]));
  });

  it("are found between neighbours, apart from their corner", () => {
    const hooked = [
      lineEdge(at(0, 0), at(100, 0)),
      cubicEdge(cubicOf([100, 0], [100, 60], [50, -90], [20, 60])), // leaves the corner and comes back through the edge
      lineEdge(at(20, 60), at(0, 0)),
    ];
    const found = selfCrossings(hooked);
    expect(found.length).toBe(2);
    found.forEach(({ edge1, edge2, point }) => {
      expect([edge1, edge2]).toEqual([0, 1]);
      expect(point.y).toBeCloseTo(0, 6);
      expect(point.x).toBeLessThan(99);
    });
  });

  it("are found where only the far end of a neighbour has come back across, either way round", () => {
    const swung = [
      lineEdge(at(0, 0), at(100, 0)),
      cubicEdge(cubicOf([100, 0], [100, 40], [80, 40], [50, -30])),
      lineEdge(at(50, -30), at(0, 0)),
    ];
    const back = swung.toReversed().map((edge) => edgeReverse(edge));
    for (const edges of [swung, back]) {
      const [crossing, ...more] = selfCrossings(edges);
      expect(more).toEqual([]);
      expect(crossing?.point.y).toBeCloseTo(0, 6);
      expect(crossing?.point.x).toBeLessThan(80);
    }
  });

  it("are found where an edge comes back through its own start", () => {
    const loop = cubicOf([100, 0], [200, 150], [0, 150], [100, 0]);
    const edges = [
      lineEdge(at(0, 0), at(100, 0)),
      cubicEdge(loop),
      lineEdge(at(100, 0), at(50, -80)),
      lineEdge(at(50, -80), at(0, 0)),
    ];
    const places = selfCrossings(edges).map(({ point }) => point);
    expectSamePoints(places, [{ x: 100, y: 0 }], 1e-6);
  });

  it("count a corner that touches another edge, once", () => {
    const pinched = polygon([0, 0], [100, 0], [100, 100], [50, 0], [0, 100]);
    const found = selfCrossings(pinched);
    expectSamePoints(
      found.map(({ point }) => point),
      [{ x: 50, y: 0 }],
      1e-9,
    );
  });

  it("count a dart closed to a slit by the ends of the stretch", () => {
    const slit = polygon([0, 0], [100, 0], [100, 100], [50, 100], [50, 40], [50, 100], [0, 100]);
    const places = selfCrossings(slit).map(({ point }) => point);
    expect(places.some(({ x, y }) => Math.hypot(x - 50, y - 100) < 1e-6)).toBe(true);
  });

  it("are none for a circle of four arcs, however it is turned", () => {
    const k = 50 * CIRCLE_CONTROL;
    const round = [
      cubicOf([50, 0], [50, k], [k, 50], [0, 50]),
      cubicOf([0, 50], [-k, 50], [-50, k], [-50, 0]),
      cubicOf([-50, 0], [-50, -k], [-k, -50], [0, -50]),
      cubicOf([0, -50], [k, -50], [50, -k], [50, 0]),
    ].map((c) => cubicEdge(c));
    for (const angle of [0, 0.3, 1, 2.5]) {
      const turned = round.map((edge) =>
        edgeMap(edge, ({ x, y }) =>
          at(x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)),
        ),
      );
      expect(selfCrossings(turned)).toEqual([]);
    }
  });
});
