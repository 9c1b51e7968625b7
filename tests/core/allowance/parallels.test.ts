/** Parallels and where lines meet, on numbers that are read off a sketch. */
import { describe, expect, it } from "vitest";
import {
  beside,
  meet,
  meetLine,
  meetLines,
  meetSegment,
  offChord,
  parallelOf,
  shorten,
} from "../../../src/core/allowance/parallels";
import { cubicEdge, lineEdge } from "../../../src/core/geometry/edgeCurve";
import { piecePoint, type PiecePoint } from "../../../src/core/geometry/point";
import { radians } from "../../../src/core/units";

const p = piecePoint;
const RIGHT = radians(0);
const DOWN = radians(Math.PI / 2);
const UP = radians(-Math.PI / 2);
const near = (x: number, y: number) => ({ x: expect.closeTo(x, 6) as number, y: expect.closeTo(y, 6) as number });

describe("beside a line", () => {
  it("lies what is outside of a ring that goes clockwise on screen", () => {
    expect(beside(p(10, 10), RIGHT, 5)).toEqual(near(10, 5));
    expect(beside(p(10, 10), DOWN, 5)).toEqual(near(15, 10));
    expect(beside(p(10, 10), UP, 5)).toEqual(near(5, 10));
    expect(beside(p(10, 10), RIGHT, -5)).toEqual(near(10, 15));
  });

  it("lies the very place where nothing is allowed", () => {
    const at = p(0.1, 0.7);
    expect(beside(at, radians(0.3), 0)).toBe(at);
  });
});

describe("off a chord", () => {
  it("is square to it, on either side, wherever it lies", () => {
    expect(offChord(p(3, 4), p(0, 0), p(10, 0))).toBeCloseTo(4, 12);
    expect(offChord(p(3, -4), p(0, 0), p(10, 0))).toBeCloseTo(4, 12);
    // From (1, 2) a third of the way along (3, 4), then 2 square to it: (-4/5, 3/5) · 2.
    expect(offChord(p(2 - 1.6, 2 + 4 / 3 + 1.2), p(1, 2), p(4, 6))).toBeCloseTo(2, 12);
  });

  it("is the distance from a chord that is one place", () => {
    expect(offChord(p(4, 6), p(1, 2), p(1, 2))).toBe(5);
  });
});

describe("a ray", () => {
  const ray = { from: p(0, 0), way: RIGHT };

  it("meets what lies across it", () => {
    expect(meetSegment(ray, p(5, -3), p(5, 7))).toEqual(near(5, 0));
    expect(meetSegment(ray, p(5, 7), p(5, -3))).toEqual(near(5, 0));
    expect(meetSegment({ from: p(1, 1), way: radians(Math.PI / 4) }, p(0, 6), p(6, 0))).toEqual(near(3, 3));
    expect(meetSegment({ from: p(7, 2), way: DOWN }, p(1, 2), p(9, 10))).toEqual(near(7, 8));
  });

  it("meets nothing behind it, beside it or along it", () => {
    expect(meetSegment(ray, p(-5, -3), p(-5, 7))).toBeNull();
    expect(meetSegment(ray, p(5, 1), p(5, 7))).toBeNull();
    expect(meetSegment(ray, p(5, -7), p(5, -1))).toBeNull();
    expect(meetSegment(ray, p(2, 0), p(9, 0))).toBeNull();
    expect(meetSegment(ray, p(5, 0), p(5, 0))).toBeNull();
  });

  it("meets what misses it by less than a ten-thousandth of a millimetre, the same point", () => {
    expect(meetSegment(ray, p(5, 0.00005), p(5, 7))).toEqual({ x: 5, y: expect.closeTo(0, 9) as number });
    expect(meetSegment(ray, p(5, 0.0002), p(5, 7))).toBeNull();
    expect(meetSegment(ray, p(5, -7), p(5, -0.00005))).not.toBeNull();
    expect(meetSegment(ray, p(5, -7), p(5, -0.0002))).toBeNull();
    expect(meetSegment(ray, p(-0.00005, -1), p(-0.00005, 1))).not.toBeNull();
    expect(meetSegment(ray, p(-0.0002, -1), p(-0.0002, 1))).toBeNull();
    expect(meetSegment(ray, p(5, -0.00002), p(5, 0.00002))).toBeNull();
  });

  it("meets what crosses it at a sine of two thousand-millionths and not at half a one", () => {
    expect(meetSegment(ray, p(-1000, -2e-6), p(1000, 2e-6))).not.toBeNull();
    expect(meetSegment(ray, p(-1000, -5e-7), p(1000, 5e-7))).toBeNull();
  });

  it("meets a line of points that is continued before its first, and counts those passed", () => {
    expect(meetLine(ray, [p(5, 10), p(5, 20)], UP)).toEqual({ at: near(5, 0), index: 0 });
    expect(meetLine(ray, [p(5, -20), p(5, -10), p(5, 10)], UP)).toEqual({ at: near(5, 0), index: 2 });
    expect(meetLine(ray, [p(5, 10), p(5, 20)], DOWN)).toBeNull();
    // Two metres and no further.
    expect(meetLine(ray, [p(5, 1999), p(5, 2005)], UP)).not.toBeNull();
    expect(meetLine(ray, [p(5, 2001), p(5, 2005)], UP)).toBeNull();
  });

  it("meets another taken backwards", () => {
    expect(meet(ray, { from: p(5, 5), way: DOWN })).toEqual(near(5, 0));
    expect(meet(ray, { from: p(5, 5), way: UP })).toBeNull();
    expect(meet(ray, { from: p(-5, 5), way: DOWN })).toBeNull();
  });
});

describe("a line of points", () => {
  const upright = [p(5, -10), p(5, 10)];

  it("meets another in the stretch that reaches it", () => {
    // The first stretch points at (5, 5), but ends before.
    expect(meetLines([p(0, 0), p(1, 1), p(8, 1)], upright, UP)).toEqual({ at: near(5, 1), index: 1, along: 1 });
    expect(meetLines([p(0, 0), p(8, 0)], upright, UP)).toEqual({ at: near(5, 0), index: 1, along: 0 });
  });

  it("meets it at its very end, and not a little short of it", () => {
    expect(meetLines([p(0, 0), p(5, 0)], upright, UP)?.at).toEqual(near(5, 0));
    expect(meetLines([p(0, 0), p(4.99995, 0)], upright, UP)).not.toBeNull();
    expect(meetLines([p(0, 0), p(4.9998, 0)], upright, UP)).toBeNull();
  });

  it("passes over points that are one", () => {
    expect(meetLines([p(0, 0), p(0, 0), p(8, 0)], upright, UP)).toMatchObject({ along: 1 });
    expect(meetLines([p(5, 0), p(5, 0), p(8, 0)], upright, UP)).toMatchObject({ along: 1 });
    expect(meetLines([p(0, 0)], upright, UP)).toBeNull();
  });

  it("is shortened at either end", () => {
    const points = (): PiecePoint[] => [p(0, 0), p(1, 0), p(2, 0), p(3, 0)];
    const left = (count: number, atStart: boolean): number[] => {
      const some = points();
      shorten(some, count, atStart);
      return some.map(({ x }) => x);
    };
    expect(left(2, true)).toEqual([2, 3]);
    expect(left(1, false)).toEqual([0, 1, 2]);
    expect(left(3, false)).toEqual([0]);
    expect(left(0, false)).toEqual([0, 1, 2, 3]);
    expect(left(0, true)).toEqual([0, 1, 2, 3]);
  });
});

describe("the parallel of a curve", () => {
  // A quarter of a circle of radius 100 about (0, 0), from the top to the right: clockwise on screen.
  const K = (400 / 3) * (Math.SQRT2 - 1);
  const quarter = cubicEdge({ a: p(0, -100), c1: p(K, -100), c2: p(100, -K), b: p(100, 0) });
  const radius = ({ x, y }: PiecePoint): number => Math.hypot(x, y);

  it("of a straight line is its ends moved", () => {
    expect(parallelOf(lineEdge(p(0, 0), p(50, 0)), 10)).toEqual([near(0, -10), near(50, -10)]);
  });

  it.each([10, -10])("of a circle is a circle, %s mm off, its ends square off the ends", (off) => {
    const points = parallelOf(quarter, off, 0.34);
    expect(points[0]).toEqual(near(0, -100 - off));
    expect(points.at(-1)).toEqual(near(100 + off, 0));
    // The cubic leaves the circle by 0.027 mm.
    for (const point of points) expect(Math.abs(radius(point) - 100 - off)).toBeLessThan(0.03);
  });

  it("is as dense as half of what it may be off needs, and no denser", () => {
    // Sagitta of a chord of 90°/n on radius 110: n = 8 gives 0.53, n = 16 gives 0.13, n = 32 gives 0.03.
    expect(parallelOf(quarter, 10, 0.34)).toHaveLength(17);
    expect(parallelOf(quarter, 10, 0.2)).toHaveLength(33);
  });

  it("is halved twice at least, and ten times at most", () => {
    expect(parallelOf(quarter, 10, 1000)).toHaveLength(5);
    expect(parallelOf(quarter, 10, 0)).toHaveLength(1025);
  });

  it("follows an S whose middle lies on its chord", () => {
    const wave = cubicEdge({ a: p(0, 0), c1: p(40, -60), c2: p(60, 60), b: p(100, 0) });
    const points = parallelOf(wave, 0, 0.1);
    // Its first half stands off the straight way by some 17 mm.
    expect(Math.min(...points.map(({ y }) => y))).toBeLessThan(-15);
    expect(points.length).toBeGreaterThan(17);
  });
});
