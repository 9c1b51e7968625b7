/** Exactly at a bound: what is said to count within it counts there too. Beside 0 such distances are exact in doubles. */
import { describe, expect, it } from "vitest";
import { cubicTurns, cubicZeros } from "../../../src/core/geometry/bernstein";
import { cubicCurvatureAt, cubicTangentAt } from "../../../src/core/geometry/bezier";
import { cubicFlatten } from "../../../src/core/geometry/bezierFlatten";
import { cubicSegmentIntersections } from "../../../src/core/geometry/bezierIntersect";
import { cubicIntersections } from "../../../src/core/geometry/bezierPair";
import { areBoundsNear, boundsOfPoints, extentOf, isWithinBounds } from "../../../src/core/geometry/bounds";
import { edgeCrossingsAtY, lineEdge, type EdgeCurve } from "../../../src/core/geometry/edgeCurve";
import { comeNear, halve } from "../../../src/core/geometry/iterate";
import { addMeeting } from "../../../src/core/geometry/meetings";
import { isInOutline, outlineCrossingsAtY, validateOutline } from "../../../src/core/geometry/outline";
import { piecePoint } from "../../../src/core/geometry/point";
import { segmentIntersections } from "../../../src/core/geometry/segment";
import { SAME_POINT, SHORTEST_EDGE } from "../../../src/core/tolerance";
import { cubicOf, cuspCurve } from "../../support/curves";

const at = piecePoint;
type At = readonly [number, number];
const ring = (...corners: readonly At[]): readonly EdgeCurve<"piece">[] =>
  corners.map((corner, i) => lineEdge(at(...corner), at(...(corners[(i + 1) % corners.length] ?? corner))));

describe("exactly one point apart", () => {
  it("an end is on a segment, whichever of the two it belongs to", () => {
    for (const off of [SAME_POINT, -SAME_POINT]) {
      const end = at(50, off);
      expect(segmentIntersections(at(0, 0), at(100, 0), end, at(50, 30 * off))).toEqual([
        { t1: 0.5, t2: 0, point: end },
      ]);
      expect(segmentIntersections(at(0, 0), at(100, 0), at(50, 30 * off), end)).toEqual([
        { t1: 0.5, t2: 1, point: end },
      ]);
      expect(segmentIntersections(end, at(50, 30 * off), at(0, 0), at(100, 0))).toEqual([
        { t1: 0, t2: 0.5, point: end },
      ]);
      expect(segmentIntersections(at(50, 30 * off), end, at(0, 0), at(100, 0))).toEqual([
        { t1: 1, t2: 0.5, point: end },
      ]);
    }
  });

  it("two ends are one end", () => {
    expect(segmentIntersections(at(0, 0), at(100, 0), at(-SAME_POINT, 0), at(-9, 5))).toEqual([
      { t1: 0, t2: 0, point: at(-SAME_POINT, 0) },
    ]);
    expect(segmentIntersections(at(-100, 0), at(0, 0), at(9, 5), at(SAME_POINT, 0))).toEqual([
      { t1: 1, t2: 1, point: at(SAME_POINT, 0) },
    ]);
    // A little way along the segment it is still its end.
    expect(segmentIntersections(at(0, 0), at(100, 0), at(SAME_POINT, 0), at(9, 5))).toEqual([
      { t1: 0, t2: 0, point: at(SAME_POINT, 0) },
    ]);
    expect(segmentIntersections(at(-100, 0), at(0, 0), at(-SAME_POINT, 0), at(9, 5))).toEqual([
      { t1: 1, t2: 0, point: at(-SAME_POINT, 0) },
    ]);
  });

  it("an end is on a curve", () => {
    const level = cubicOf([0, 0], [30, 0], [60, 0], [90, 0]);
    const upright = cubicOf([45, SAME_POINT], [45, 30], [45, 60], [45, 90]);
    const params = (found: readonly { readonly t1: number; readonly t2: number }[]) =>
      found.map(({ t1, t2 }) => [t1, t2]);
    expect(params(cubicIntersections(level, upright))).toEqual([[0.5, 0]]);
    expect(params(cubicIntersections(upright, level))).toEqual([[0, 0.5]]);
    expect(params(cubicSegmentIntersections(level, at(45, SAME_POINT), at(45, 9)))).toEqual([[0.5, 0]]);
    expect(params(cubicSegmentIntersections(upright, at(13, 0), at(77, 0)))).toEqual([[0, 0.5]]);
    const fromStart = cubicOf([0, SAME_POINT], [0, 30], [0, 60], [0, 90]);
    expect(params(cubicIntersections(level, fromStart))).toEqual([[0, 0]]);
    expect(params(cubicIntersections(fromStart, level))).toEqual([[0, 0]]);
  });

  it("a straight edge is at a level with its end", () => {
    for (const off of [SAME_POINT, -SAME_POINT]) {
      const crossings = (from: number, to: number) => edgeCrossingsAtY(lineEdge(at(0, from), at(9, to)), 0);
      expect(crossings(off, 9 * off)).toEqual([0]);
      expect(crossings(9 * off, off)).toEqual([1]);
      expect(crossings(off, off)).toEqual([0, 1]);
      expect(crossings(off, 0)).toEqual([0, 1]);
      expect(crossings(0, off)).toEqual([0, 1]);
    }
  });

  it("a control lies on its end, and the one after it gives the direction", () => {
    expect(cubicTangentAt(cubicOf([0, 0], [0, SAME_POINT], [50, 0], [60, 60]), 0)).toBe(0);
    expect(cubicTangentAt(cubicOf([60, 60], [-50, 0], [0, SAME_POINT], [0, 0]), 1)).toBe(0);
    expect(cubicTangentAt(cubicOf([0, 0], [0, 2 * SAME_POINT], [50, 0], [60, 60]), 0)).toBe(Math.PI / 2);
  });

  it("places across an outline are one, and what lies beside it is in it", () => {
    const slit = (width: number) => ring([0, 0], [width, 0], [width, 9], [0, 9]);
    expect(outlineCrossingsAtY(slit(SAME_POINT), 5)).toEqual([0]);
    expect(outlineCrossingsAtY(slit(1.1 * SAME_POINT), 5)).toEqual([0, 1.1 * SAME_POINT]);
    const square = ring([0, 0], [9, 0], [9, 9], [0, 9]);
    expect(isInOutline(square, at(-SAME_POINT, 4))).toBe(true);
    expect(isInOutline(square, at(4, -SAME_POINT))).toBe(true);
    expect(isInOutline(square, at(-1.1 * SAME_POINT, 4))).toBe(false);
  });

  it("an outline is closed; and an edge of the shortest length is none too short", () => {
    const gap: readonly EdgeCurve<"piece">[] = [
      lineEdge(at(0, 0), at(9, 0)),
      lineEdge(at(9, 0), at(9, 9)),
      lineEdge(at(9, 9), at(0, SAME_POINT)),
    ];
    expect(validateOutline(gap)).toEqual([]);
    const short = (length: number) => ring([0, 0], [length, 0], [9, 9], [0, 9]);
    expect(validateOutline(short(SHORTEST_EDGE))).toEqual([]);
    expect(validateOutline(short(1.5))).toEqual([
      { code: "outline/short-edge", edge: 0, length: 1.5, shortest: SHORTEST_EDGE },
    ]);
  });

  it("boxes are near each other, and a point is in one, on every side", () => {
    const box = (x: number, y: number) => ({ min: at(x, y), max: at(x, y) });
    for (const [x, y] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
      [1, 1],
    ] as const) {
      expect(areBoundsNear(box(0, 0), box(x, y), 1)).toBe(true);
      expect(areBoundsNear(box(0, 0), box(1.5 * x, 1.5 * y), 1)).toBe(false);
      expect(isWithinBounds(at(x, y), box(0, 0), 1)).toBe(true);
      expect(isWithinBounds(at(1.5 * x, 1.5 * y), box(0, 0), 1)).toBe(false);
    }
  });
});

describe("zeros of a cubic at the very bound of what touches", () => {
  it.each<readonly [readonly [number, number, number, number], readonly number[]]>([
    [
      [1, 1, 1, 1],
      [0, 1],
    ],
    [
      [-1, -1, -1, -1],
      [0, 1],
    ],
    [
      [1, -1, 1, -1],
      [0, 1],
    ],
    [[1, 3, 5, 7], [0]],
    [[7, 5, 3, 1], [1]],
    [[-1, -3, -5, -7], [0]],
    [[-7, -5, -3, -1], [1]],
    [[1.5, 3, 5, 7], []],
    [[-7, -5, -3, -1.5], []],
    // Its turn is half-way, at 4 − 3 = 1: ordinates 4, 0, 0, 4 come to a quarter of 4 there.
    [[4, 0, 0, 4], [0.5]],
    [[-4, 0, 0, -4], [0.5]],
    [[6, 0, 0, 6], []],
    [[0, 3, 5, 7], [0]],
    [[7, 5, 3, 0], [1]],
    [[-2, 0, 2, 4], [expect.closeTo(1 / 3, 12)]],
    [[2, 0, -2, -4], [expect.closeTo(1 / 3, 12)]],
  ])("%j, touching within 1", (ordinates, zeros) => {
    expect(cubicZeros(...ordinates, 1)).toEqual(zeros);
  });

  it("a touch is where it comes nearest, not where it comes from or goes to", () => {
    // Differences −0.7, 0, 4.8: 4.1 t² + 1.4 t − 0.7 is 0 at its turn, where it is 0.57; at 0 it is 0.9.
    const turn = (-1.4 + Math.sqrt(1.4 ** 2 + 4 * 4.1 * 0.7)) / 8.2;
    expect(cubicZeros(0.9, 0.2, 0.2, 5, 1)).toEqual([expect.closeTo(turn, 12)]);
    expect(cubicZeros(5, 0.2, 0.2, 0.9, 1)).toEqual([expect.closeTo(1 - turn, 12)]);
    expect(cubicZeros(-0.9, -0.2, -0.2, -5, 1)).toEqual([expect.closeTo(turn, 12)]);
  });

  it.each([
    [0.5, 0.5, -9, 0.5],
    [0.5, -9, 0.5, 0.5],
    [-0.5, 9, 0.5, -0.5],
  ])("%s, %s, %s, %s reaches out between ends that are near, and is 0 on the way there and back", (f0, f1, f2, f3) => {
    const zeros = cubicZeros(f0, f1, f2, f3, 1);
    expect(zeros).toHaveLength(2);
    for (const t of zeros) {
      const s = 1 - t;
      expect(f0 * s ** 3 + 3 * f1 * s * s * t + 3 * f2 * s * t * t + f3 * t ** 3).toBeCloseTo(0, 9);
      expect(Math.min(t, s)).toBeGreaterThan(0);
    }
  });

  it("a double turn is told twice: it only stands still there", () => {
    // Differences 1, −1, 1: (s − t)².
    expect(cubicTurns(0, 1, 0, 1)).toEqual([0.5, 0.5]);
    expect(cubicZeros(-1, 1, -1, 1, 1e-4)).toEqual([0.5]);
  });

  it("has its turns in order, whichever way it goes first, and none at its ends", () => {
    // Differences 4, −3, 2: 4 s² − 6 s t + 2 t² = 2 (2 s − t) (s − t), with s = 1 − t.
    const half = [expect.closeTo(1 / 2, 12), expect.closeTo(2 / 3, 12)] as unknown[];
    expect(cubicTurns(0, 4, 1, 3)).toEqual(half);
    expect(cubicTurns(0, -4, -1, -3)).toEqual(half);
    expect(cubicTurns(3, 1, 4, 0)).toEqual([expect.closeTo(1 / 3, 12), expect.closeTo(1 / 2, 12)]);
    // One turn: 1 s² − 1 t².
    expect(cubicTurns(0, 1, 1, 0)).toEqual([0.5]);
    expect(cubicTurns(0, 0, 0, 0)).toEqual([]);
    expect(cubicTurns(0, 0, 1, 1)).toEqual([]);
    expect(cubicTurns(1, 1, 0, 0)).toEqual([]);
    expect(cubicTurns(0, 1, 2, 3)).toEqual([]);
    // It never quite stands still: 1, −0.9, 1.
    expect(cubicTurns(0, 1, 0.1, 1.1)).toEqual([]);
  });
});

describe("at a cusp within the curve", () => {
  const turned = (degrees: number, mirror: 1 | -1) => {
    const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    const { a, c1, c2, b } = cuspCurve(-0.3, 1);
    const [p, q, r, s] = [a, c1, c2, b].map(({ x, y }): [number, number] => [
      x * cos - mirror * y * sin,
      x * sin + mirror * y * cos,
    ]);
    return cubicOf(p ?? [0, 0], q ?? [0, 0], r ?? [0, 0], s ?? [0, 0]);
  };
  // (100 u², 100 u³) from −0.3 to 1 stands still at u = 0, and goes on the way its axis points, turning to +y.
  const t = 0.3 / 1.3;

  it.each([0, 37, 90, 170, -100])(
    "the direction is that of its axis, and it turns its own way, turned by %d degrees",
    (degrees) => {
      for (const mirror of [1, -1] as const) {
        const curve = turned(degrees, mirror);
        expect(cubicTangentAt(curve, t)).toBeCloseTo((degrees * Math.PI) / 180, 6);
        expect(cubicCurvatureAt(curve, t)).toBe(mirror * Infinity);
      }
    },
  );

  it("a level line that turns back does not turn to any side", () => {
    // 200 s² − 600 s t + 200 t² is 0 where t∕s = (3 − √5)∕2.
    const r = (3 - Math.sqrt(5)) / 2;
    expect(cubicCurvatureAt(cubicOf([0, 0], [200, 0], [-100, 0], [100, 0]), r / (1 + r))).toBe(0);
  });
});

describe("meetings found one after the other", () => {
  const line = cubicOf([0, 0], [30, 0], [60, 0], [90, 0]);
  const across = cubicOf([45, -45], [45, -15], [45, 15], [45, 45]);
  const meeting = (kind: "end" | "crossing" | "touch", gap: number, t = 0.5) =>
    ({ t1: t, t2: 0.5, point: at(90 * t, 0), kind, gap }) as const;
  const added = (known: ReturnType<typeof meeting>, next: ReturnType<typeof meeting>) => {
    const found = [known];
    addMeeting(found, next, line, across);
    return found;
  };

  it("are one where they lie in one place: the nearer of the two", () => {
    const [near, far] = [meeting("touch", 1e-5), meeting("touch", 5e-5)];
    expect(added(far, near)).toEqual([near]);
    expect(added(near, far)).toEqual([near]);
    const alike = meeting("crossing", 1e-5);
    expect(added(near, alike)[0]).toBe(near);
  });

  it("are the end where one of them is", () => {
    const [end, crossing] = [meeting("end", 5e-5), meeting("crossing", 0)];
    expect(added(end, crossing)).toEqual([end]);
  });

  it("are two where they lie apart, a thousandth of a millimetre and more", () => {
    const [one, other] = [meeting("crossing", 0), meeting("crossing", 0, 0.5 + 2e-5)];
    expect(added(one, other)).toEqual([one, other]);
    expect(added(one, meeting("crossing", 0, 0.5 + 1e-5))).toEqual([one]);
  });
});

describe("boxes of points", () => {
  it("hold them all; a side without length counts as one millimetre", () => {
    expect(boundsOfPoints([at(3, -2), at(-1, 5), at(0, 0)])).toEqual({ min: at(-1, -2), max: at(3, 5) });
    expect(boundsOfPoints([at(3, -2)])).toEqual({ min: at(3, -2), max: at(3, -2) });
    expect(() => boundsOfPoints([])).toThrow("no points have no bounds");
    expect(extentOf([at(3, -2), at(-1, 5)])).toEqual({ x: -1, y: -2, width: 4, height: 7 });
    expect(extentOf([at(3, -2), at(3, 5)])).toEqual({ x: 3, y: -2, width: 1, height: 7 });
    expect(extentOf([at(3, 5), at(-1, 5)])).toEqual({ x: -1, y: 5, width: 4, height: 1 });
  });
});

describe("lines drawn as chords", () => {
  it("are parted as Wang's bound says: √(3∕4 · bend ∕ tolerance) of them", () => {
    // Second differences of (0, 40) at both controls; 30 over 0.3 is a hundred: ten chords.
    const bow = cubicOf([0, 0], [10, -40], [20, -40], [30, 0]);
    expect(cubicFlatten(bow, 0.3)).toHaveLength(11);
    expect(cubicFlatten(bow, 0.299)).toHaveLength(12);
    // Only one of the two bends, either: 0.75 · 40 over 1.2 is 25: five.
    expect(cubicFlatten(cubicOf([0, 0], [10, -40], [20, -40], [30, -40]), 1.2)).toHaveLength(6);
    expect(cubicFlatten(cubicOf([0, -40], [10, -40], [20, -40], [30, 0]), 1.2)).toHaveLength(6);
    // And across: second differences of (−30, 40), 50 long: 37.5 over 1.5.
    expect(cubicFlatten(cubicOf([0, 0], [40, -40], [50, -40], [60, -40]), 1.5)).toHaveLength(6);
    expect(cubicFlatten(cubicOf([0, 0], [10, 0], [20, 0], [30, 0]), 1e-9)).toEqual([at(0, 0), at(30, 0)]);
  });
});

describe("coming nearer", () => {
  it("is settled by less than the accuracy only", () => {
    const stuck = (miss: number) =>
      comeNear(miss, { missOf: (value) => value, correct: () => null, rounds: 3, accuracy: 0.5 });
    expect(stuck(0.5)).toEqual({ value: 0.5, miss: 0.5, isSettled: false });
    expect(stuck(-0.5)).toEqual({ value: -0.5, miss: -0.5, isSettled: false });
    expect(stuck(0.49)).toEqual({ value: 0.49, miss: 0.49, isSettled: true });
  });

  it("takes just so many rounds, and as many again as were taken back", () => {
    const asked: number[] = [];
    // Each correction goes half the way.
    const settled = comeNear(64, {
      missOf: (value) => value,
      correct: (value, by) => {
        asked.push(by);
        return value - by / 2;
      },
      rounds: 3,
      accuracy: 1e-9,
    });
    expect(asked).toEqual([64, 32, 16]);
    expect(settled).toEqual({ value: 8, miss: 8, isSettled: false });
    // Four times too strong: full and half as much are taken back, a quarter is just right.
    const shares: number[] = [];
    expect(
      comeNear(8, {
        missOf: (value) => value,
        correct: (value, by) => {
          shares.push(by);
          return value - 4 * by;
        },
        rounds: 1,
        accuracy: 1e-9,
      }),
    ).toEqual({ value: 0, miss: 0, isSettled: true });
    expect(shares).toEqual([8, 4, 2]);
  });

  it("gives up after eight halvings that made nothing better", () => {
    const shares: number[] = [];
    const settled = comeNear(1, {
      missOf: () => 1,
      correct: (value, by) => {
        shares.push(by);
        return value + 1;
      },
      rounds: 3,
      accuracy: 0.1,
    });
    expect(shares).toEqual([1, 1 / 2, 1 / 4, 1 / 8, 1 / 16, 1 / 32, 1 / 64, 1 / 128, 1 / 256]);
    expect(settled).toEqual({ value: 1, miss: 1, isSettled: false });
  });

  it("halves until the two are within the accuracy, and no further", () => {
    const asked: number[] = [];
    const holds = (value: number): boolean => {
      asked.push(value);
      return value < 3;
    };
    expect(halve(0, 8, 8, holds)).toEqual({ holding: 0, failing: 8 });
    expect(asked).toEqual([]);
    expect(halve(0, 8, 1, holds)).toEqual({ holding: 2, failing: 3 });
    expect(asked).toEqual([4, 2, 3]);
    expect(halve(8, 0, 1, (value) => value > 3)).toEqual({ holding: 4, failing: 3 });
    asked.length = 0;
    halve(0, 8, -1, holds);
    expect(asked).toHaveLength(60);
  });
});
