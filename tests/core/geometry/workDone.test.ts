/**
 * How much is looked at. What lies apart is told by control points alone, Newton doubles its digits, and a stretch run together
 * is set aside whole: without any of these the answers stay the same, only late. So the reads of the coordinates given are
 * counted. The bounds come from no theory: they are what it takes, and a tenth more; halving alone takes several times that.
 */
import { describe, expect, it } from "vitest";
import type { Cubic } from "../../../src/core/geometry/bezier";
import { cubicSegmentIntersections } from "../../../src/core/geometry/bezierIntersect";
import { cubicLength, cubicParameterAtLength } from "../../../src/core/geometry/bezierLength";
import { cubicNearest } from "../../../src/core/geometry/bezierNearest";
import { cubicIntersections } from "../../../src/core/geometry/bezierPair";
import { cubicPart } from "../../../src/core/geometry/bezierSplit";
import { piecePoint, type PiecePoint } from "../../../src/core/geometry/point";
import { cubicOf, cuspCurve, type TestCubic } from "../../support/curves";

let reads = 0;

/** The same point, whose coordinates count how often they are read. */
function counting({ x, y }: PiecePoint): PiecePoint {
  const point = piecePoint(x, y);
  const counted = (value: number): PropertyDescriptor => ({
    get: () => {
      reads += 1;
      return value;
    },
  });
  Object.defineProperties(point, { x: counted(x), y: counted(y) });
  return point;
}

const countingCurve = ({ a, c1, c2, b }: TestCubic): Cubic<"piece"> => ({
  a: counting(a),
  c1: counting(c1),
  c2: counting(c2),
  b: counting(b),
});

function readsOf(work: () => unknown): number {
  reads = 0;
  work();
  return reads;
}

const arch = cubicOf([0, 0], [0, 80], [100, 80], [100, 0]);
/** An S without symmetry. */
const wave = cubicOf([0, 0], [40, 70], [70, -30], [120, 33]);

const meeting = (c: TestCubic, d: TestCubic): number => {
  const [one, other] = [countingCurve(c), countingCurve(d)];
  return readsOf(() => cubicIntersections(one, other));
};
const moved = (c: TestCubic, dx: number, dy: number): TestCubic =>
  cubicOf([c.a.x + dx, c.a.y + dy], [c.c1.x + dx, c.c1.y + dy], [c.c2.x + dx, c.c2.y + dy], [c.b.x + dx, c.b.y + dy]);
const turned = (c: TestCubic, degrees: number): TestCubic => {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const at = ({ x, y }: PiecePoint): [number, number] => [x * cos - y * sin, x * sin + y * cos];
  return cubicOf(at(c.a), at(c.c1), at(c.c2), at(c.b));
};

describe("two curves apart", () => {
  /** Its chord stands aslant, and all of it lies below the arch's. */
  const below = cubicOf([20, -5], [-40, -60], [160, -60], [60, -80]);

  // Two curves have 16 coordinates, which each direction reads once; a chord has four more.
  it.each<readonly [string, TestCubic, TestCubic, number]>([
    ["across", arch, moved(arch, 101, 0), 16],
    ["upwards", arch, moved(arch, 0, 81), 32],
    ["across the chord of the first", turned(arch, 30), turned(below, 30), 52],
    ["across the chord of the second", turned(below, 30), turned(arch, 30), 72],
    ["across an upright chord", turned(arch, 90), turned(below, 90), 16],
    [
      "across the chord of the first, far from the origin",
      moved(turned(arch, 30), 900, 700),
      moved(turned(below, 30), 900, 700),
      52,
    ],
    [
      "across the chord of the second, far from the origin",
      moved(turned(below, 30), -900, 700),
      moved(turned(arch, 30), -900, 700),
      72,
    ],
  ])("%s are told by their control points, in the first direction that parts them", (_, c, d, most) => {
    expect(cubicIntersections(c, d)).toEqual([]);
    expect(meeting(c, d)).toBeLessThanOrEqual(most);
  });
});

describe("two curves that meet", () => {
  // What it takes, and a tenth more.
  it.each<readonly [string, TestCubic, TestCubic, number, number]>([
    ["cross once", wave, cubicOf([70, -40], [50, 10], [80, 30], [60, 90]), 1, 1180],
    ["cross twice", arch, cubicOf([-10, 31], [30, 20], [70, 47], [111, 36]), 2, 2010],
    ["run together", arch, cubicPart(arch, 0.21, 0.83), 2, 172_000],
    ["touch", cubicPart(arch, 0, 0.7), cubicPart(cubicOf([0, 120], [0, 40], [100, 40], [100, 120]), 0.2, 1), 1, 85_000],
    ["nearly run together and cross", arch, moved(arch, 0.05, 0.05), 1, 160_000],
  ])("and %s are found soon", (_, c, d, count, most) => {
    expect(cubicIntersections(c, d)).toHaveLength(count);
    expect(meeting(c, d)).toBeLessThan(most);
  });
});

describe("one curve", () => {
  it.each([
    [60, 80, 220],
    // An end is nearest: nothing is searched.
    [33, -20, 12],
    [150, 60, 12],
    [100, 4, 270],
    [70, 15, 190],
    [20, 21, 210],
  ])("has the place nearest to %d, %d by a few of Newton's steps", (x, y, most) => {
    const curve = countingCurve(wave);
    expect(readsOf(() => cubicNearest(curve, piecePoint(x, y)))).toBeLessThanOrEqual(most);
  });

  it.each([
    [1, 280],
    [20, 320],
    [43, 300],
    [77, 290],
    [101, 350],
    [130, 350],
  ])("has the place at %d mm by a few of Newton's steps", (length, most) => {
    const curve = countingCurve(wave);
    expect(readsOf(() => cubicParameterAtLength(curve, length))).toBeLessThanOrEqual(most);
  });

  it("is told from a line beside it by its control points", () => {
    const curve = countingCurve(wave);
    expect(
      readsOf(() => cubicSegmentIntersections(curve, piecePoint(0, 100), piecePoint(100, 120))),
    ).toBeLessThanOrEqual(8);
  });

  it.each([
    [-0.3, 1, 3250, 2250],
    [-1, 1, 3500, 2080],
    [0, 1, 3350, 2600],
    [-1, 0, 2900, 820],
  ])("with a cusp, from %s to %s, takes a few times as many", (u, v, mostLengths, mostNearest) => {
    const curve = countingCurve(cuspCurve(u, v));
    const whole = cubicLength(curve);
    const lengths = [0.02, 0.1, 0.2, 0.3, 0.4999, 0.5, 0.51, 0.7, 0.9, 0.99].map((share) =>
      readsOf(() => cubicParameterAtLength(curve, share * whole)),
    );
    expect(sum(lengths)).toBeLessThan(mostLengths);
    const nearest = (
      [
        [10, 10],
        [30, -5],
        [-3, 40],
        [70, 60],
        [0, 0.1],
      ] as const
    ).map(([x, y]) => readsOf(() => cubicNearest(curve, piecePoint(x, y))));
    expect(sum(nearest)).toBeLessThan(mostNearest);
  });
});

const sum = (all: readonly number[]): number => all.reduce((a, b) => a + b, 0);
