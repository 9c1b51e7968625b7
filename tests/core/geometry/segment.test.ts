import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { piecePoint, type PiecePoint } from "../../../src/core/geometry/point";
import { lineDistance, reflectInLine, segmentIntersections, segmentNearest } from "../../../src/core/geometry/segment";
import { anyPoint, RUNS } from "../../support/curves";
import { expectPointClose, expectSamePoints } from "../../support/matchers";

/** mm. Rounding. */
const ROUNDING_ERROR = 1e-9;

const at = piecePoint;
const meetings = (a: PiecePoint, b: PiecePoint, c: PiecePoint, d: PiecePoint) => segmentIntersections(a, b, c, d);

describe("segmentNearest", () => {
  it.each([
    ["beside the middle", at(40, 7), 0.4, at(40, 0), 7],
    ["before the start", at(-3, 4), 0, at(0, 0), 5],
    ["beyond the end", at(103, -4), 1, at(100, 0), 5],
  ])("%s", (_name, p, t, point, distance) => {
    expect(segmentNearest(at(0, 0), at(100, 0), p)).toEqual({ t, point, distance });
  });

  it("of a segment without length is its one point", () => {
    expect(segmentNearest(at(3, 4), at(3, 4), at(0, 0))).toEqual({ t: 0, point: at(3, 4), distance: 5 });
  });

  it("is no farther than any sampled place", () => {
    fc.assert(
      fc.property(anyPoint, anyPoint, anyPoint, (a, b, p) => {
        const { distance } = segmentNearest(a, b, p);
        const sampled = Array.from({ length: 101 }, (_, i) =>
          Math.hypot(a.x + (i / 100) * (b.x - a.x) - p.x, a.y + (i / 100) * (b.y - a.y) - p.y),
        );
        expect(distance).toBeLessThanOrEqual(Math.min(...sampled) + ROUNDING_ERROR);
      }),
      RUNS,
    );
  });
});

describe("segmentIntersections", () => {
  const [a, b] = [at(0, 0), at(100, 0)];

  it("finds a crossing", () => {
    expect(meetings(a, b, at(30, -10), at(30, 30))).toEqual([{ t1: 0.3, t2: 0.25, point: at(30, 0) }]);
  });

  it.each([
    ["end on the inside", at(30, 0), at(30, 50), [[0.3, 0]]],
    ["end on end", at(100, 0), at(150, 50), [[1, 0]]],
    ["end on start, reversed", at(50, 50), at(0, 0), [[0, 1]]],
    ["end within reach", at(30, 9e-5), at(30, 50), [[0.3, 0]]],
    ["end out of reach", at(30, 2e-4), at(30, 50), []],
    ["parallel", at(0, 1), at(100, 1), []],
    ["on one line, apart", at(101, 0), at(150, 0), []],
    ["on one line, end to end", at(100, 0), at(150, 0), [[1, 0]]],
    [
      "overlapping",
      at(60, 0),
      at(150, 0),
      [
        [0.6, 0],
        [1, 4 / 9],
      ],
    ],
    [
      "overlapping, reversed",
      at(150, 0),
      at(60, 0),
      [
        [0.6, 1],
        [1, 5 / 9],
      ],
    ],
    [
      "held within",
      at(20, 0),
      at(70, 0),
      [
        [0.2, 0],
        [0.7, 1],
      ],
    ],
    [
      "holding",
      at(-100, 0),
      at(300, 0),
      [
        [0, 0.25],
        [1, 0.5],
      ],
    ],
    [
      "the same",
      at(0, 0),
      at(100, 0),
      [
        [0, 0],
        [1, 1],
      ],
    ],
    [
      "the same, reversed",
      at(100, 0),
      at(0, 0),
      [
        [0, 1],
        [1, 0],
      ],
    ],
    ["a point on it", at(30, 0), at(30, 0), [[0.3, 0]]],
    ["a point beside it", at(30, 1), at(30, 1), []],
    ["short of it", at(30, 10), at(30, 1), []],
  ])("%s", (_name, c, d, expected) => {
    const found = meetings(a, b, c, d);
    expect(found.map(({ t1, t2 }) => [t1, t2])).toEqual(expected.map((pair) => pair.map((t) => expect.closeTo(t, 9))));
    found.forEach(({ t1, point }) => expectPointClose(point, { x: 100 * t1, y: 0 }, 1e-4));
  });

  it("find a planted crossing", () => {
    const inside = fc.double({ min: 0.01, max: 0.99, noNaN: true });
    fc.assert(
      fc.property(anyPoint, anyPoint, anyPoint, inside, inside, (p, q, r, t1, t2) => {
        // The second segment runs from r through the place at t1 of the first, which is its own share t2.
        const place = { x: p.x + t1 * (q.x - p.x), y: p.y + t1 * (q.y - p.y) };
        const end = at(r.x + (place.x - r.x) / t2, r.y + (place.y - r.y) / t2);
        const turn = (q.x - p.x) * (end.y - r.y) - (q.y - p.y) * (end.x - r.x);
        const lengths = Math.hypot(q.x - p.x, q.y - p.y) * Math.hypot(end.x - r.x, end.y - r.y);
        fc.pre(Math.abs(turn) > 0.01 * lengths && lengths > 100);
        expectSamePoints(
          meetings(p, q, r, end).map(({ point }) => point),
          [place],
          1e-6,
        );
      }),
      RUNS,
    );
  });
});

describe("lineDistance", () => {
  it("is positive on the side +x turns towards +y, and measured to the endless line", () => {
    expect(lineDistance(at(500, 3), at(0, 0), at(10, 0))).toBeCloseTo(3, 12);
    expect(lineDistance(at(500, -3), at(0, 0), at(10, 0))).toBeCloseTo(-3, 12);
    expect(lineDistance(at(0, 5), at(0, 0), at(4, 3))).toBeCloseTo(4, 12);
  });

  it("is the plain distance where there is no line", () => {
    expect(lineDistance(at(3, 4), at(0, 0), at(0, 0))).toBe(5);
  });
});

describe("reflectInLine", () => {
  it("mirrors in a level, an upright and a slanting line", () => {
    expectPointClose(reflectInLine(at(3, 4), at(0, 1), at(9, 1)), { x: 3, y: -2 }, ROUNDING_ERROR);
    expectPointClose(reflectInLine(at(3, 4), at(1, 0), at(1, 9)), { x: -1, y: 4 }, ROUNDING_ERROR);
    expectPointClose(reflectInLine(at(3, 4), at(0, 0), at(7, 7)), { x: 4, y: 3 }, ROUNDING_ERROR);
  });

  it("mirrors in the point where there is no line", () => {
    expectPointClose(reflectInLine(at(3, 4), at(1, 1), at(1, 1)), { x: -1, y: -2 }, ROUNDING_ERROR);
  });

  it("twice is nothing, and it keeps distances to both points of the line", () => {
    fc.assert(
      fc.property(anyPoint, anyPoint, anyPoint, (p, a, b) => {
        fc.pre(Math.hypot(b.x - a.x, b.y - a.y) > 1);
        const mirrored = reflectInLine(p, a, b);
        expectPointClose(reflectInLine(mirrored, a, b), p, 1e-6);
        for (const q of [a, b]) {
          const off = Math.hypot(mirrored.x - q.x, mirrored.y - q.y) - Math.hypot(p.x - q.x, p.y - q.y);
          expect(Math.abs(off)).toBeLessThan(1e-6);
        }
      }),
      RUNS,
    );
  });
});
