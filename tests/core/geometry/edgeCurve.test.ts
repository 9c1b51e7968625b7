import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  cubicEdge,
  cubicOfEdge,
  edgeBounds,
  edgeCrossingsAtY,
  edgeFlatten,
  edgeHullBounds,
  edgeIntersections,
  edgeLength,
  edgeLengthBetween,
  edgeMap,
  edgeNearest,
  edgeParameterAtLength,
  edgePart,
  edgePointAt,
  edgeReverse,
  edgeSplit,
  edgeTangentAt,
  lineEdge,
  type EdgeCurve,
} from "../../../src/core/geometry/edgeCurve";
import { piecePoint, sheetPoint } from "../../../src/core/geometry/point";
import {
  anyCubic,
  anyParameter,
  anyPoint,
  cubicOf,
  cuspCurve,
  cuspLength,
  referencePoint,
  RUNS,
} from "../../support/curves";
import { expectPointClose, expectSamePoints } from "../../support/matchers";

/** mm. Rounding. */
const ROUNDING_ERROR = 1e-9;

const at = piecePoint;
const line = lineEdge(at(0, 0), at(90, 120)); // 150 mm
/** The same line as a cubic at constant speed: every answer must be the same. */
const straight = cubicEdge(cubicOf([0, 0], [30, 40], [60, 80], [90, 120]));
const arch = cubicEdge(cubicOf([0, 0], [0, 80], [100, 80], [100, 0]));
const slope = Math.atan2(120, 90);

const both: readonly (readonly [string, EdgeCurve<"piece">])[] = [
  ["a line", line],
  ["a straight cubic", straight],
];

describe.each(both)("%s of 150 mm", (_name, edge) => {
  it("has its length, whole and in part", () => {
    expect(edgeLength(edge)).toBeCloseTo(150, 9);
    expect(edgeLengthBetween(edge, 0.2, 0.6)).toBeCloseTo(60, 9);
    expect(edgeLengthBetween(edge, 0.6, 0.2)).toBeCloseTo(-60, 9);
  });

  it("has its points and direction", () => {
    expectPointClose(edgePointAt(edge, 0), edge.a, 0);
    expectPointClose(edgePointAt(edge, 1), edge.b, 0);
    expectPointClose(edgePointAt(edge, 0.2), { x: 18, y: 24 }, ROUNDING_ERROR);
    for (const t of [0, 0.4, 1]) expect(edgeTangentAt(edge, t)).toBeCloseTo(slope, 12);
    expect(edgeTangentAt(edgeReverse(edge), 0.5)).toBeCloseTo(slope - Math.PI, 12);
  });

  it("is split and cut into parts", () => {
    const [first, second] = edgeSplit(edge, 0.2);
    expect(first.a).toBe(edge.a);
    expect(second.b).toBe(edge.b);
    expect(first.b).toBe(second.a);
    expectPointClose(first.b, { x: 18, y: 24 }, ROUNDING_ERROR);
    expect(edgeLength(first)).toBeCloseTo(30, 9);
    expect(edgeLength(second)).toBeCloseTo(120, 9);
    const part = edgePart(edge, 0.6, 0.2);
    expectPointClose(part.a, { x: 54, y: 72 }, ROUNDING_ERROR);
    expectPointClose(part.b, { x: 18, y: 24 }, ROUNDING_ERROR);
    expect(edgePart(edge, 0, 1).b).toBe(edge.b);
  });

  it("has a nearest place", () => {
    // (46, 12) is 30 mm to the side of (22, 30)... along (0.6, 0.8): 46·0.6 + 12·0.8 = 37.2 mm.
    const near = edgeNearest(edge, at(46, 12));
    expect(near.t).toBeCloseTo(37.2 / 150, 9);
    expect(near.distance).toBeCloseTo(46 * 0.8 - 12 * 0.6, 9);
    expect(edgeNearest(edge, at(-3, -4))).toEqual({ t: 0, point: edge.a, distance: 5 });
  });

  it("has a parameter at every length, held to its ends", () => {
    expect(edgeParameterAtLength(edge, 30)).toBeCloseTo(0.2, 9);
    expect(edgeParameterAtLength(edge, -1)).toBe(0);
    expect(edgeParameterAtLength(edge, 151)).toBe(1);
    expect(edgeParameterAtLength(edge, Number.NaN)).toBeNaN();
  });

  it.each([
    [60, [0.5]],
    [0, [0]],
    [120, [1]],
    [-5e-5, [0]],
    [120 + 5e-5, [1]],
    [-2e-4, []],
    [121, []],
  ])("meets the level %d at %j", (y, expected) => {
    expect(edgeCrossingsAtY(edge, y)).toEqual(expected.map((t) => expect.closeTo(t, 9)));
    expect(edgeCrossingsAtY(edgeReverse(edge), y)).toEqual(expected.map((t) => expect.closeTo(1 - t, 9)));
  });

  it("meets another edge, line or curve, in either order", () => {
    for (const other of [lineEdge(at(0, 60), at(90, 60)), cubicEdge(cubicOf([0, 60], [30, 60], [60, 60], [90, 60]))]) {
      for (const [p, q] of [
        [edge, other],
        [other, edge],
      ] as const) {
        const [meeting, ...more] = edgeIntersections(p, q);
        expect(more).toEqual([]);
        expectPointClose(meeting?.point, { x: 45, y: 60 }, 1e-6);
        expect(meeting?.t1).toBeCloseTo(0.5, 8);
        expect(meeting?.t2).toBeCloseTo(0.5, 8);
      }
    }
    expect(edgeIntersections(edge, lineEdge(at(200, 0), at(300, 0)))).toEqual([]);
  });

  it("has bounds", () => {
    expect(edgeBounds(edge)).toEqual({ min: at(0, 0), max: at(90, 120) });
    expect(edgeBounds(edgeReverse(edge))).toEqual({ min: at(0, 0), max: at(90, 120) });
  });

  it("is flat already", () => {
    expect(edgeFlatten(edge, 0.01)).toEqual([edge.a, edge.b]);
  });

  it("keeps its kind when mapped", () => {
    const onSheet = edgeMap(edge, (p) => sheetPoint(p.x + 10, 2 * p.y));
    expect(onSheet.curve === null).toBe(edge.curve === null);
    expectPointClose(edgePointAt(onSheet, 0.5), { x: 55, y: 120 }, ROUNDING_ERROR);
  });
});

describe("a curved edge", () => {
  it("is its cubic", () => {
    expect(cubicOfEdge(arch)).toEqual(cubicOf([0, 0], [0, 80], [100, 80], [100, 0]));
    expect(cubicOfEdge(line)).toBeNull();
  });

  it("has the length of its cubic and the parameter at it", () => {
    const cusp = cubicEdge(cuspCurve(-1, 1));
    expect(edgeLength(cusp)).toBeCloseTo(cuspLength(-1, 1), 6);
    expect(edgeLengthBetween(cusp, 0.5, 1)).toBeCloseTo(cuspLength(0, 1), 6);
    expect(edgeParameterAtLength(cusp, cuspLength(-1, 0.5))).toBeCloseTo(0.75, 6);
  });

  it("reaches above its ends and below its controls", () => {
    expectPointClose(edgeBounds(arch).max, { x: 100, y: 60 }, ROUNDING_ERROR);
    expectPointClose(edgeHullBounds(arch).max, { x: 100, y: 80 }, 0);
  });

  it.each([
    [45, [0.25, 0.75]],
    [60, [0.5]],
    [60 + 5e-5, [0.5]],
    [60 + 2e-4, []],
    [0, [0, 1]],
    [-1, []],
  ])("meets the level %d at %j", (y, expected) => {
    expect(edgeCrossingsAtY(arch, y)).toEqual(expected.map((t) => expect.closeTo(t, 6)));
  });

  it("meets a level through any of its points", () => {
    fc.assert(
      fc.property(anyCubic, anyParameter, (c, t) => {
        const { y } = referencePoint(c, t);
        const found = edgeCrossingsAtY(cubicEdge(c), y);
        expect(found.length).toBeGreaterThan(0);
        for (const u of found) expect(Math.abs(referencePoint(c, u).y - y)).toBeLessThanOrEqual(1e-4);
        expect(found).toEqual(found.toSorted((p, q) => p - q));
      }),
      RUNS,
    );
  });

  it("meets a line in the same places as the line meets it", () => {
    fc.assert(
      fc.property(anyCubic, anyPoint, anyPoint, (c, p, q) => {
        const [curved, flat] = [cubicEdge(c), lineEdge(p, q)];
        const forth = edgeIntersections(curved, flat);
        const back = edgeIntersections(flat, curved);
        expectSamePoints(
          back.map(({ point }) => point),
          forth.map(({ point }) => point),
          1e-3,
        );
        for (const { t1, point } of back) {
          expectPointClose(point, { x: p.x + t1 * (q.x - p.x), y: p.y + t1 * (q.y - p.y) }, 1e-3);
        }
        expect(back.map(({ t1 }) => t1)).toEqual(back.map(({ t1 }) => t1).toSorted((t, u) => t - u));
      }),
      RUNS,
    );
  });
});

describe("a level line on the level", () => {
  it("meets it at both ends", () => {
    expect(edgeCrossingsAtY(lineEdge(at(0, 7), at(50, 7)), 7)).toEqual([0, 1]);
  });
});

describe("an edge without length", () => {
  it("has one place for all questions", () => {
    const dot = lineEdge(at(3, 4), at(3, 4));
    expect(edgeLength(dot)).toBe(0);
    expect(edgeTangentAt(dot, 0.5)).toBe(0);
    expect(edgeParameterAtLength(dot, 0)).toBe(0);
    expect(edgeNearest(dot, at(0, 0)).distance).toBe(5);
  });
});
