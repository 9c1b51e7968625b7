import * as fc from "fast-check";
import { Intersection, ShapeInfo } from "kld-intersections";
import { describe, expect, it } from "vitest";
import { cubicReverse } from "../../../src/core/geometry/bezier";
import { cubicIntersections } from "../../../src/core/geometry/bezierPair";
import { cubicPart } from "../../../src/core/geometry/bezierSplit";
import { piecePoint } from "../../../src/core/geometry/point";
import { CURVE_ACCURACY } from "../../../src/core/tolerance";
import {
  anyCubic,
  anyPoint,
  awkward,
  cubicOf,
  cuspCurve,
  referenceCrossings,
  referencePoint,
  referencePoints,
  RUNS,
  spread,
  spreadCubics,
  type TestCubic,
} from "../../support/curves";
import { arePointsClose, expectPointClose, expectSamePoints } from "../../support/matchers";

const arch = cubicOf([0, 0], [0, 80], [100, 80], [100, 0]); // its top is (50, 60)
const places = (found: readonly { readonly point: { readonly x: number; readonly y: number } }[]) =>
  found.map(({ point }) => point);
const parameters = (found: readonly { readonly t1: number; readonly t2: number }[]) =>
  found.map(({ t1, t2 }) => [t1, t2]);
const moved = (c: TestCubic, dx: number, dy: number): TestCubic =>
  cubicOf([c.a.x + dx, c.a.y + dy], [c.c1.x + dx, c.c1.y + dy], [c.c2.x + dx, c.c2.y + dy], [c.b.x + dx, c.b.y + dy]);

function shortChord(c: TestCubic, t: number): { readonly x: number; readonly y: number } {
  const [p, q] = [referencePoint(c, t - 1e-5), referencePoint(c, t + 1e-5)];
  return { x: q.x - p.x, y: q.y - p.y };
}

describe("cubicIntersections", () => {
  it("of an arch and its mirror image lie on the axis between them", () => {
    // The mirror image in y = 22.5 is met where y = 240t(1 - t) = 22.5.
    const mirrored = cubicOf([0, 45], [0, -35], [100, -35], [100, 45]);
    const root = Math.sqrt(1 - 4 * (22.5 / 240));
    const [t, u] = [(1 - root) / 2, (1 + root) / 2];
    const found = cubicIntersections(arch, mirrored);
    expect(parameters(found)).toEqual([
      [expect.closeTo(t, 9), expect.closeTo(t, 9)],
      [expect.closeTo(u, 9), expect.closeTo(u, 9)],
    ]);
    found.forEach(({ point }) => expect(point.y).toBeCloseTo(22.5, 9));
  });

  it("are the nine of two Chebyshev curves, y = T3(x) and x = T3(y), two of them at ends", () => {
    // T3(T3(x)) = x with x = cos θ is cos 9θ = cos θ, so θ is a multiple of π/4 or π/5; and y is cos 3θ.
    const ordinates = [-1, 5, -5, 1].map((f) => 50 + 50 * f);
    const [f0 = 0, f1 = 0, f2 = 0, f3 = 0] = ordinates;
    const level = cubicOf([0, f0], [100 / 3, f1], [200 / 3, f2], [100, f3]);
    const upright = cubicOf([f0, 0], [f1, 100 / 3], [f2, 200 / 3], [f3, 100]);
    const angles = [0, 1 / 5, 1 / 4, 2 / 5, 1 / 2, 3 / 5, 3 / 4, 4 / 5, 1].map((share) => share * Math.PI);
    const expected = angles.map((angle) => ({ x: 50 + 50 * Math.cos(angle), y: 50 + 50 * Math.cos(3 * angle) }));
    expectSamePoints(places(cubicIntersections(level, upright)), expected, 1e-6);
  });

  it.each([
    ["an end on an end", moved(arch, 100, 0), [[1, 0]]],
    [
      "ends that meet both ways",
      cubicOf([0, 0], [20, -50], [80, -50], [100, 0]),
      [
        [0, 0],
        [1, 1],
      ],
    ],
    ["an end on the inside", cubicOf([50, 60], [50, 80], [90, 90], [90, 120]), [[0.5, 0]]],
    ["an end just short of the inside", cubicOf([50, 60.01], [50, 80], [90, 90], [90, 120]), []],
    ["an end within reach of the inside", cubicOf([50, 60 + 9e-5], [50, 80], [90, 90], [90, 120]), [[0.5, 0]]],
    ["a curve of its own height beside it", moved(arch, 100.001, 0), []],
  ])("with %s", (_name, other, expected) => {
    expect(parameters(cubicIntersections(arch, other))).toEqual(
      expected.map((pair) => pair.map((t) => expect.closeTo(t, 6))),
    );
  });

  it("touch once where two arches meet top to top", () => {
    const upper = cubicOf([0, 120], [0, 40], [100, 40], [100, 120]);
    const found = cubicIntersections(arch, upper);
    // At 50 mm radius or so the two are one within 0.1 µm over a tenth of a millimetre.
    expectSamePoints(places(found), [{ x: 50, y: 60 }], 0.1);
    expect(cubicIntersections(arch, moved(upper, 0, 0.001))).toEqual([]);
  });

  it("meet once at a corner they leave side by side", () => {
    const steeper = cubicOf([0, 0], [0, 120], [100, 120], [100, 10]);
    expect(parameters(cubicIntersections(arch, steeper))).toEqual([[0, 0]]);
  });

  it.each([
    [
      "itself",
      arch,
      [
        [0, 0],
        [1, 1],
      ],
    ],
    [
      "itself reversed",
      cubicReverse(arch),
      [
        [0, 1],
        [1, 0],
      ],
    ],
    [
      "a part of itself",
      cubicPart(arch, 0.25, 0.6),
      [
        [0.25, 0],
        [0.6, 1],
      ],
    ],
    [
      "a part that runs on beyond",
      cubicPart(arch, 0.5, 1.5),
      [
        [0.5, 0],
        [1, 0.5],
      ],
    ],
  ])("give the ends of the stretch shared with %s", (_name, other, expected) => {
    expect(parameters(cubicIntersections(arch, other))).toEqual(
      expected.map((pair) => pair.map((t) => expect.closeTo(t, 6))),
    );
  });

  it("keep both ends of a closed straight curve that also passes its ends halfway", () => {
    const folded = cubicOf([0, 0], [-300, 0], [300, 0], [0, 0]);
    const away = cubicOf([0, 0], [0, -300], [-300, 0], [0, 1]);
    const found = parameters(cubicIntersections(folded, away));
    expect(found).toContainEqual([0, 0]);
    expect(found).toContainEqual([1, 0]);
  });

  it("find the tip of a cusp on a crossing curve", () => {
    const across = cubicOf([0, -50], [0, -20], [0, 20], [0, 50]);
    const found = cubicIntersections(cuspCurve(-1, 1), across);
    expectSamePoints(places(found), [{ x: 0, y: 0 }], 0.01);
  });

  it("find a planted crossing, on both and at the stated parameters", () => {
    const inside = fc.double({ min: 0.05, max: 0.95, noNaN: true });
    fc.assert(
      fc.property(anyCubic, anyCubic, inside, inside, (c, d, t, u) => {
        // The second curve is moved so that its place at u falls on the first one's at t.
        const on = referencePoint(c, t);
        const there = referencePoint(d, u);
        const other = moved(d, on.x - there.x, on.y - there.y);
        const found = cubicIntersections(c, other);
        for (const { t1, t2, point } of found) {
          expectPointClose(point, referencePoint(c, t1), CURVE_ACCURACY);
          expectPointClose(point, referencePoint(other, t2), CURVE_ACCURACY);
        }
        const [v, w] = [shortChord(c, t), shortChord(other, u)];
        const lengths = Math.hypot(v.x, v.y) * Math.hypot(w.x, w.y);
        fc.pre(Math.abs(v.x * w.y - v.y * w.x) > 0.05 * lengths && lengths > 1e-7);
        expect(found.some(({ point }) => arePointsClose(point, on, CURVE_ACCURACY))).toBe(true);
      }),
      RUNS,
    );
  });

  it("do not depend on the order or the direction of the curves", () => {
    const cubics = spreadCubics(12, 100);
    cubics.forEach((c, i) => {
      const d = cubics[(i + 1) % cubics.length] ?? c;
      const found = places(cubicIntersections(c, d));
      expectSamePoints(places(cubicIntersections(d, c)), found, CURVE_ACCURACY);
      expectSamePoints(places(cubicIntersections(cubicReverse(c), d)), found, CURVE_ACCURACY);
    });
  });

  it("find the shared end of two curves that start in one point, once", () => {
    fc.assert(
      fc.property(anyCubic, anyPoint, anyPoint, anyPoint, (c, c1, c2, b) => {
        const other = { a: c.b, c1, c2, b };
        fc.pre(Math.hypot(c1.x - c.b.x, c1.y - c.b.y) > 1 && Math.hypot(c.c2.x - c.b.x, c.c2.y - c.b.y) > 1);
        const shared = cubicIntersections(c, other).filter(({ t1, t2 }) => t1 === 1 && t2 === 0);
        expect(shared.length).toBe(1);
        expect(shared[0]?.point).toEqual(c.b);
      }),
      RUNS,
    );
  });

  it("agree with kld-intersections on 300 random pairs", () => {
    const [ours, others] = [spreadCubics(13, 300), spreadCubics(14, 300)];
    let total = 0;
    ours.forEach((c, i) => {
      const d = others[i] ?? c;
      const library = Intersection.intersect(
        ShapeInfo.cubicBezier(c.a, c.c1, c.c2, c.b),
        ShapeInfo.cubicBezier(d.a, d.c1, d.c2, d.b),
      );
      expectSamePoints(places(cubicIntersections(c, d)), library.points, CURVE_ACCURACY);
      total += library.points.length;
    });
    expect(total).toBeGreaterThan(200);
  });

  it.each(awkward.filter(([name]) => !name.includes("straight") && name !== "a point"))(
    "cross %s where its chords do",
    (_name, c) => {
      const next = spread(15);
      const chords = referencePoints(c, 300);
      for (let i = 0; i < 12; i++) {
        const pair = (): [number, number] => [200 * next() - 50, 200 * next() - 50];
        const d = cubicOf(pair(), pair(), pair(), pair());
        const expected = referenceCrossings(chords, referencePoints(d, 300));
        expectSamePoints(places(cubicIntersections(c, d)), expected, 1);
      }
    },
  );

  it("ends soon even where two curves run nearly together", () => {
    const near = cubicOf([0, 0], [0, 80.001], [100, 79.999], [100, 0]);
    const found = cubicIntersections(arch, near);
    for (const { t1, point } of found) expectPointClose(point, referencePoint(arch, t1), CURVE_ACCURACY);
    expect(found.length).toBeGreaterThanOrEqual(2);
    expect(found.length).toBeLessThan(10);
    expect(piecePoint(0, 0)).toEqual(found[0]?.point);
  });
});
