import * as fc from "fast-check";
import { Intersection, ShapeInfo } from "kld-intersections";
import { describe, expect, it } from "vitest";
import { cubicSegmentIntersections, cubicSelfCrossing } from "../../../src/core/geometry/bezierIntersect";
import { piecePoint } from "../../../src/core/geometry/point";
import { CURVE_ACCURACY } from "../../../src/core/tolerance";
import {
  anyCubic,
  anyParameter,
  anyPoint,
  awkward,
  cubicOf,
  cuspCurve,
  referenceCrossings,
  referenceLength,
  referencePoint,
  referencePoints,
  referenceSelfCrossings,
  RUNS,
  spread,
  spreadCubics,
} from "../../support/curves";
import { arePointsClose, expectPointClose, expectSamePoints } from "../../support/matchers";

/** mm. Chords of 1/400 of a curve of a metre or so leave it by less than this. */
const CHORD_ERROR = 0.05;

const at = piecePoint;
const arch = cubicOf([0, 0], [0, 80], [100, 80], [100, 0]); // its top is (50, 60)
const places = (found: readonly { readonly point: { readonly x: number; readonly y: number } }[]) =>
  found.map(({ point }) => point);

describe("cubicSegmentIntersections", () => {
  it("cross an arch at the two places that a quadratic equation gives", () => {
    // y = 240t(1 - t) = 45 where t = 1/4 and 3/4; x = 300t²(1 - t) + 100t³ there.
    const found = cubicSegmentIntersections(arch, at(-10, 45), at(110, 45));
    expect(found.map(({ t1 }) => t1)).toEqual([expect.closeTo(0.25, 9), expect.closeTo(0.75, 9)]);
    expectSamePoints(
      places(found),
      [
        { x: 15.625, y: 45 },
        { x: 84.375, y: 45 },
      ],
      1e-9,
    );
    found.forEach(({ t2, point }) => expect(t2).toBeCloseTo((point.x + 10) / 120, 9));
  });

  it.each([
    ["a segment that stops short", at(-10, 45), at(15, 45), []],
    ["a segment that ends on the curve", at(-10, 45), at(15.625, 45), [[0.25, 1]]],
    ["a segment that starts on the curve", at(84.375, 45), at(200, 45), [[0.75, 0]]],
    ["a touch at the top", at(0, 60), at(100, 60), [[0.5, 0.5]]],
    ["a touch within reach", at(0, 60 + 9e-5), at(100, 60 + 9e-5), [[0.5, 0.5]]],
    ["a line just above the top", at(0, 60 + 2e-4), at(100, 60 + 2e-4), []],
    ["a line through the start", at(-50, -50), at(50, 50), [[0, 0.5]]],
    ["a line through the end", at(50, 50), at(150, -50), [[1, 0.5]]],
    ["a line that ends in the start", at(-50, 20), at(0, 0), [[0, 1]]],
    [
      "a line through both ends",
      at(-50, 0),
      at(150, 0),
      [
        [0, 0.25],
        [1, 0.75],
      ],
    ],
    [
      "a line from end to end",
      at(100, 0),
      at(0, 0),
      [
        [0, 1],
        [1, 0],
      ],
    ],
    ["a line along the tangent at the start", at(0, -50), at(0, 50), [[0, 0.5]]],
    ["a segment without length, on the curve", at(15.625, 45), at(15.625, 45), [[0.25, 0]]],
    ["a segment without length, beside it", at(20, 45), at(20, 45), []],
  ])("with %s", (_name, p, q, expected) => {
    const found = cubicSegmentIntersections(arch, p, q);
    expect(found.map(({ t1, t2 }) => [t1, t2])).toEqual(expected.map((pair) => pair.map((t) => expect.closeTo(t, 6))));
    for (const { t1, point } of found) expectPointClose(point, referencePoint(arch, t1), CURVE_ACCURACY);
  });

  it("give both ends of the stretch where a straight cubic runs along the segment", () => {
    const straight = cubicOf([0, 0], [30, 15], [60, 30], [90, 45]);
    const found = cubicSegmentIntersections(straight, at(30, 15), at(180, 90));
    expect(found.map(({ t1, t2 }) => [t1, t2])).toEqual([
      [expect.closeTo(1 / 3, 9), 0],
      [1, expect.closeTo(0.4, 9)],
    ]);
  });

  it("find the end of a curve through any line drawn through it, once", () => {
    fc.assert(
      fc.property(anyCubic, anyPoint, fc.boolean(), (c, p, atStart) => {
        const end = atStart ? c.a : c.b;
        fc.pre(Math.hypot(p.x - end.x, p.y - end.y) > 1 && referenceLength(c, 1, 64) > 1);
        const beyond = at(2 * end.x - p.x, 2 * end.y - p.y);
        const found = cubicSegmentIntersections(c, p, beyond);
        const atEnd = found.filter(({ t1 }) => t1 === (atStart ? 0 : 1));
        expect(atEnd.length).toBe(1);
        expectPointClose(atEnd[0]?.point, end, 1e-4);
      }),
      RUNS,
    );
  });

  it("find a planted crossing, on both and at the stated parameters", () => {
    fc.assert(
      fc.property(anyCubic, anyParameter, anyPoint, (c, t, p) => {
        const on = referencePoint(c, t);
        fc.pre(Math.hypot(p.x - on.x, p.y - on.y) > 1);
        const q = at(2 * on.x - p.x, 2 * on.y - p.y);
        const found = cubicSegmentIntersections(c, p, q);
        for (const { t1, t2, point } of found) {
          expectPointClose(point, referencePoint(c, t1), CURVE_ACCURACY);
          expectPointClose(point, { x: p.x + t2 * (q.x - p.x), y: p.y + t2 * (q.y - p.y) }, CURVE_ACCURACY);
        }
        // Beside a touch the planted place may stand for the stretch, so the touch is left to the cases above.
        const before = referencePoint(c, Math.max(0, t - 1e-4));
        const after = referencePoint(c, Math.min(1, t + 1e-4));
        const turn = (after.x - before.x) * (q.y - p.y) - (after.y - before.y) * (q.x - p.x);
        const lengths = Math.hypot(after.x - before.x, after.y - before.y) * Math.hypot(q.x - p.x, q.y - p.y);
        fc.pre(Math.abs(turn) > 0.05 * lengths && lengths > 1e-3);
        expect(found.some(({ point }) => arePointsClose(point, on, CURVE_ACCURACY))).toBe(true);
      }),
      RUNS,
    );
  });

  it("agree with kld-intersections on 300 random pairs", () => {
    const next = spread(8);
    let total = 0;
    for (const c of spreadCubics(9, 300)) {
      const [p, q] = [at(300 * next(), 300 * next()), at(300 * next(), 300 * next())];
      const library = Intersection.intersect(ShapeInfo.cubicBezier(c.a, c.c1, c.c2, c.b), ShapeInfo.line(p, q));
      expectSamePoints(places(cubicSegmentIntersections(c, p, q)), library.points, CURVE_ACCURACY);
      total += library.points.length;
    }
    expect(total).toBeGreaterThan(100);
  });

  it.each(awkward.filter(([name]) => !name.includes("straight") && name !== "a point"))(
    "cross %s where its chords do",
    (_name, c) => {
      const next = spread(10);
      const chords = referencePoints(c, 400);
      for (let i = 0; i < 30; i++) {
        const [p, q] = [at(200 * next() - 50, 200 * next() - 50), at(200 * next() - 50, 200 * next() - 50)];
        expectSamePoints(places(cubicSegmentIntersections(c, p, q)), referenceCrossings(chords, [p, q]), 1);
      }
    },
  );
});

describe("cubicSelfCrossing", () => {
  it("of a symmetric loop lies on its axis", () => {
    // x(t) = 450t(1 - t)² - 150t²(1 - t) + 100t³ = 50 is (2t - 1)(350t² - 350t + 50) = 0, and y(t) = 300t(1 - t).
    const crossing = cubicSelfCrossing(cubicOf([0, 0], [150, 100], [-50, 100], [100, 0]));
    const root = Math.sqrt(1 - 4 / 7);
    expect(crossing?.t1).toBeCloseTo((1 - root) / 2, 12);
    expect(crossing?.t2).toBeCloseTo((1 + root) / 2, 12);
    expectPointClose(crossing?.point, { x: 50, y: 300 / 7 }, 1e-9);
  });

  it("of a curve that ends where it starts is its ends", () => {
    const closed = cubicOf([50, 0], [150, 100], [-50, 100], [50, 0]);
    expect(cubicSelfCrossing(closed)).toMatchObject({ t1: 0, t2: 1 });
  });

  it.each([
    ["an arch", arch],
    ["a cusp", cuspCurve(-1, 1)],
    ["an S", cubicOf([0, 0], [0, 80], [100, -80], [100, 0])],
    ["a straight line with a turn back", cubicOf([0, 0], [200, 100], [-100, -50], [100, 50])],
    ["a point", cubicOf([7, 9], [7, 9], [7, 9], [7, 9])],
    ["a loop that closes beyond the ends", cubicOf([0, 0], [105, 100], [5, 100], [100, 0])],
  ])("is none on %s", (_name, c) => {
    expect(cubicSelfCrossing(c)).toBeNull();
  });

  it("is found on random curves where their chords cross, and nowhere else", () => {
    let loops = 0;
    for (const c of spreadCubics(11, 400)) {
      const chords = referenceSelfCrossings(referencePoints(c, 300));
      const crossing = cubicSelfCrossing(c);
      expect(crossing === null).toBe(chords.length === 0);
      if (crossing === null) continue;
      loops++;
      expectPointClose(crossing.point, chords[0], CHORD_ERROR);
      expectPointClose(referencePoint(c, crossing.t1), referencePoint(c, crossing.t2), CURVE_ACCURACY / 1000);
    }
    expect(loops).toBeGreaterThan(10);
  });
});
