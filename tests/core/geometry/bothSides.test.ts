/** Both sides of what counts as touching, away from the middles and quarters that halving comes upon by itself. */
import { describe, expect, it } from "vitest";
import { cubicZeros } from "../../../src/core/geometry/bernstein";
import { cubicSegmentIntersections } from "../../../src/core/geometry/bezierIntersect";
import { cubicIntersections } from "../../../src/core/geometry/bezierPair";
import { cubicPart } from "../../../src/core/geometry/bezierSplit";
import { cubicEdge, edgeCrossingsAtX, edgeCrossingsAtY, lineEdge } from "../../../src/core/geometry/edgeCurve";
import { selfCrossings } from "../../../src/core/geometry/outline";
import { piecePoint, type PiecePoint } from "../../../src/core/geometry/point";
import { segmentIntersections } from "../../../src/core/geometry/segment";
import { cubicOf, type TestCubic } from "../../support/curves";

const turned = (c: TestCubic, degrees: number): TestCubic => {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const at = ({ x, y }: PiecePoint): [number, number] => [x * cos - y * sin, x * sin + y * cos];
  return cubicOf(at(c.a), at(c.c1), at(c.c2), at(c.b));
};
const raised = (c: TestCubic, dy: number): TestCubic =>
  cubicOf([c.a.x, c.a.y + dy], [c.c1.x, c.c1.y + dy], [c.c2.x, c.c2.y + dy], [c.b.x, c.b.y + dy]);

const arch = cubicOf([0, 0], [0, 80], [100, 80], [100, 0]);
const TURNS = [0, 30, 90, 137, 200, 270];

describe("two curves that all but touch", () => {
  // Both come to (50, 60) level, one from below and one, of half the size, from above; at 5∕7 and 3∕8 of what is left of them.
  const lower = cubicPart(arch, 0, 0.7);
  const upper = cubicPart(cubicOf([25, 90], [25, 50], [75, 50], [75, 90]), 0.2, 1);

  it.each(TURNS)("count within a ten-thousandth of a millimetre and not beyond, turned by %d degrees", (degrees) => {
    const meet = (gap: number) => cubicIntersections(turned(lower, degrees), turned(raised(upper, gap), degrees));
    for (const gap of [0, 5e-5, 9.5e-5]) {
      const found = meet(gap);
      expect(found).toHaveLength(1);
      expect(found[0]?.t1).toBeCloseTo(5 / 7, 2);
      expect(found[0]?.t2).toBeCloseTo(3 / 8, 2);
    }
    for (const gap of [1.05e-4, 1e-3, 0.3]) expect(meet(gap)).toEqual([]);
  });

  it.each(TURNS)("cross twice where they overlap, turned by %d degrees", (degrees) => {
    // y = 60 − 240 (t − 1∕2)² below; above 60 + 120 (t − 1∕2)² less the overlap.
    const found = cubicIntersections(turned(lower, degrees), turned(raised(upper, -1), degrees));
    expect(found).toHaveLength(2);
    for (const { t1, t2 } of found) {
      const [t, u] = [0.7 * t1, 0.2 + 0.8 * t2];
      expect(60 - 240 * (t - 0.5) ** 2).toBeCloseTo(59 + 120 * (u - 0.5) ** 2, 9);
    }
  });
});

describe("two curves side by side", () => {
  const line = cubicOf([0, 0], [30, 0], [60, 0], [100, 0]);
  const beside = cubicOf([0, 0], [40, 0], [70, 0], [100, 0]);

  it.each(TURNS)(
    "run together within a ten-thousandth of a millimetre and not beyond, turned by %d degrees",
    (degrees) => {
      const ends = (gap: number) =>
        cubicIntersections(turned(line, degrees), turned(raised(beside, gap), degrees)).map(({ t1, t2 }) => [t1, t2]);
      for (const gap of [0, 9.5e-5, -9.5e-5])
        expect(ends(gap)).toEqual([
          [0, 0],
          [1, 1],
        ]);
      for (const gap of [1.05e-4, -1.05e-4]) expect(ends(gap)).toEqual([]);
    },
  );

  it.each(TURNS)("a curve and a segment do alike, turned by %d degrees", (degrees) => {
    const segment = (gap: number) => {
      const { a, b } = turned(raised(line, gap), degrees);
      return cubicSegmentIntersections(turned(line, degrees), a, b).map(({ t1, t2 }) => [t1, t2]);
    };
    for (const gap of [0, 9.5e-5, -9.5e-5])
      expect(segment(gap)).toEqual([
        [0, 0],
        [1, 1],
      ]);
    for (const gap of [1.05e-4, -1.05e-4]) expect(segment(gap)).toEqual([]);
  });

  it("a line just under the top of an arch crosses it twice, just over it touches once, and higher not at all", () => {
    // y = 60 − 240 (t − 1∕2)²: 0.00005 below the top it is 0.137 mm wide.
    const meet = (y: number) =>
      cubicSegmentIntersections(arch, piecePoint(0, y), piecePoint(100, y)).map(({ t1 }) => t1);
    const half = Math.sqrt(5e-5 / 240);
    expect(meet(60 - 5e-5)).toEqual([expect.closeTo(0.5 - half, 7), expect.closeTo(0.5 + half, 7)]);
    expect(meet(60 + 5e-5)).toEqual([expect.closeTo(0.5, 6)]);
    expect(meet(60 + 1.1e-4)).toEqual([]);
  });

  it("two segments do alike, whichever end comes first", () => {
    const at = (y: number) => [piecePoint(20, y), piecePoint(150, y)] as const;
    const shared = (y: number, isBack = false) => {
      const [c, d] = at(y);
      return segmentIntersections(piecePoint(0, 0), piecePoint(100, 0), isBack ? d : c, isBack ? c : d);
    };
    const told = (found: ReturnType<typeof shared>) => found.map(({ t1, t2 }) => [t1, t2]);
    const [first, second] = [
      [0.2, 0],
      [1, expect.closeTo(80 / 130, 9)],
    ];
    for (const y of [0, 9.5e-5, -9.5e-5]) {
      expect(told(shared(y))).toEqual([first, second]);
      expect(told(shared(y, true))).toEqual([
        [0.2, 1],
        [1, expect.closeTo(50 / 130, 9)],
      ]);
    }
    for (const y of [1.05e-4, -1.05e-4]) expect(shared(y)).toEqual([]);
  });
});

describe("an end that all but reaches", () => {
  it("counts though the cubic would come down to nothing beyond it", () => {
    // (5 (t − 1)² + 0.00005) (2 − t): 0.00005 at 1, where it still falls, and 0 at 2. In powers of t:
    const powers = [10 + 1e-4, -25 - 5e-5, 20, -5] as const;
    const [p0, p1, p2, p3] = powers;
    const ordinates = [p0, p0 + p1 / 3, p0 + (2 * p1) / 3 + p2 / 3, p0 + p1 + p2 + p3] as const;
    expect(ordinates[3]).toBeCloseTo(5e-5, 12);
    expect(cubicZeros(...ordinates, 1e-4)).toEqual([1]);
    expect(cubicZeros(...ordinates, 4e-5)).toEqual([]);
  });

  it("of a straight edge counts on either side of the level, and one that crosses once", () => {
    const edge = (from: number, to: number) => edgeCrossingsAtY(lineEdge(piecePoint(0, from), piecePoint(10, to)), 5);
    expect(edge(5, 9)).toEqual([0]);
    expect(edge(5, 1)).toEqual([0]);
    expect(edge(9, 5)).toEqual([1]);
    expect(edge(1, 5)).toEqual([1]);
    expect(edge(3, 11)).toEqual([0.25]);
    expect(edge(11, 3)).toEqual([0.75]);
    expect(edge(5, 5)).toEqual([0, 1]);
    for (const near of [5.00009, 4.99991]) {
      expect(edge(near, near)).toEqual([0, 1]);
      expect(edge(near, 5)).toEqual([0, 1]);
    }
    expect(edge(5.00009, 9)).toEqual([0]);
    expect(edge(4.99991, 1)).toEqual([0]);
    expect(edge(9, 5.00009)).toEqual([1]);
    expect(edge(1, 4.99991)).toEqual([1]);
    for (const far of [5.00011, 4.99989]) {
      expect(edge(far, far)).toEqual([]);
      expect(edge(far, far < 5 ? 1 : 9)).toEqual([]);
      expect(edge(far < 5 ? 1 : 9, far)).toEqual([]);
    }
    expect(edgeCrossingsAtX(lineEdge(piecePoint(0, 3), piecePoint(8, 3)), 2)).toEqual([0.25]);
    expect(edgeCrossingsAtX(cubicEdge(arch), 50)).toEqual([expect.closeTo(0.5, 9)]);
  });
});

describe("an outline", () => {
  const drop = (way: 1 | -1) => cubicEdge(cubicOf([0, 0], [60 * way, -80], [60 * way, 80], [0, 0]));

  it("of one closed edge is sound; of two from one place it meets itself there", () => {
    expect(selfCrossings([drop(1)])).toEqual([]);
    expect(selfCrossings([drop(1), drop(-1)])).toEqual([{ edge1: 0, edge2: 0, t1: 0, t2: 1, point: piecePoint(0, 0) }]);
  });

  it("is looked at where a handle of one neighbour reaches over to the other's side", () => {
    // Out of the corner at (0, 0) down along y = −x. Of the other, x + y is (−60, 140, −30, 0): besides its end, 0 where
    // −60 + 420 r − 90 r² = 0, with r = t∕(1 − t).
    const reaching = cubicOf([-50, -10], [200, -60], [-30, 0], [0, 0]);
    const straight = lineEdge(piecePoint(0, 0), piecePoint(60, -60));
    const ends = [
      lineEdge(piecePoint(60, -60), piecePoint(0, -200)),
      lineEdge(piecePoint(0, -200), piecePoint(-50, -10)),
    ];
    const roots = [-1, 1].map((sign) => (420 + sign * Math.sqrt(420 ** 2 - 4 * 90 * 60)) / 180);
    const places = roots.map((r) => expect.closeTo(r / (1 + r), 6) as unknown);
    const found = selfCrossings([cubicEdge(reaching), straight, ...ends]).filter(({ edge2 }) => edge2 === 1);
    expect(found.map(({ edge1, t1 }) => [edge1, t1])).toEqual(places.map((t1) => [0, t1]));
    // The same where the ring begins with the edge that goes on.
    const begun = selfCrossings([straight, ...ends, cubicEdge(reaching)]).filter(
      ({ edge1, edge2 }) => edge1 === 0 && edge2 === 3,
    );
    expect(begun.map(({ t2 }) => t2).toSorted((a, b) => a - b)).toEqual(places);
    // The same the other way round: the handle is that of the edge that goes on.
    const back = [
      lineEdge(piecePoint(60, -60), piecePoint(0, 0)),
      cubicEdge(cubicOf([0, 0], [-30, 0], [200, -60], [-50, -10])),
      lineEdge(piecePoint(-50, -10), piecePoint(0, -200)),
      lineEdge(piecePoint(0, -200), piecePoint(60, -60)),
    ];
    const turnedRound = selfCrossings(back).filter(({ edge1, edge2 }) => edge1 === 0 && edge2 === 1);
    expect(turnedRound.map(({ t2 }) => t2).toSorted((a, b) => a - b)).toEqual(
      roots.map((r) => expect.closeTo(1 - r / (1 + r), 6) as unknown).toReversed(),
    );
  });
});
