/** Curves to test with, and a second opinion on them that shares no code with the core. */
import * as fc from "fast-check";
import { anyAmount } from "./amounts";
import { piecePoint, type PiecePoint } from "../../src/core/geometry/point";
import type { Cubic } from "../../src/core/geometry/bezier";

export type TestCubic = Cubic<"piece">;
type Pair = readonly [number, number];

/** Property tests run on the same cases every time. */
export const RUNS = { seed: 20_240, numRuns: 300 };

export const cubicOf = (a: Pair, c1: Pair, c2: Pair, b: Pair): TestCubic => ({
  a: piecePoint(...a),
  c1: piecePoint(...c1),
  c2: piecePoint(...c2),
  b: piecePoint(...b),
});

const cuspBlossom = (p: number, q: number, r: number): Pair => [(100 * (p * q + q * r + p * r)) / 3, 100 * p * q * r];

/** The part of the semicubical parabola (100u², 100u³) from u to v; it has its cusp at u = 0 and a known length. */
export function cuspCurve(u: number, v: number): TestCubic {
  return cubicOf(cuspBlossom(u, u, u), cuspBlossom(u, u, v), cuspBlossom(u, v, v), cuspBlossom(v, v, v));
}

const fromCusp = (w: number): number => (100 * (Math.sqrt(4 + 9 * w * w) ** 3 - 8)) / 27;

/** Its length, from the integral of 100·sqrt(4u² + 9u⁴). */
export function cuspLength(u: number, v: number): number {
  return u <= 0 && v >= 0 ? fromCusp(u) + fromCusp(v) : Math.abs(fromCusp(v) - fromCusp(u));
}

/** Control length of a quarter circle of radius 1, as used everywhere. */
export const CIRCLE_CONTROL = 0.5522847498;

/** Awkward ones by name. */
export const awkward: readonly (readonly [string, TestCubic])[] = [
  ["a tight S", cubicOf([0, 0], [300, 1], [-200, 2], [100, 3])],
  ["a cusp", cuspCurve(-1, 1)],
  ["a cusp off the middle", cuspCurve(-0.3, 1)],
  ["a cusp at the start", cuspCurve(0, 1)],
  ["a cusp at the end", cuspCurve(-1, 0)],
  ["almost a cusp", cubicOf([0, 0], [100.001, 100], [0, 100], [100, 0])],
  ["a loop", cubicOf([0, 0], [150, 100], [-50, 100], [100, 0])],
  ["a tiny loop", cubicOf([0, 0], [101, 100], [-1, 100], [100, 0])],
  ["a closed curve", cubicOf([50, 0], [150, 100], [-50, 100], [50, 0])],
  ["the first control on the start", cubicOf([0, 0], [0, 0], [60, 80], [100, 0])],
  ["the second control on the end", cubicOf([0, 0], [40, 80], [100, 0], [100, 0])],
  ["both controls on their ends", cubicOf([0, 0], [0, 0], [100, 50], [100, 50])],
  ["both controls on the start", cubicOf([0, 0], [0, 0], [0, 0], [100, 50])],
  ["both controls in one place", cubicOf([0, 0], [50, 90], [50, 90], [100, 0])],
  ["a straight line", cubicOf([0, 0], [30, 15], [60, 30], [90, 45])],
  ["a straight line with a turn back", cubicOf([0, 0], [200, 100], [-100, -50], [100, 50])],
  ["a point", cubicOf([7, 9], [7, 9], [7, 9], [7, 9])],
];

// Steps of a ten-thousandth of a millimetre: as fine as SAME_POINT, without the denormals that no pattern holds.
const coordinate = fc.integer({ min: -3_000_000, max: 3_000_000 }).map((steps) => steps / 10_000);
export const anyPoint: fc.Arbitrary<PiecePoint> = fc.tuple(coordinate, coordinate).map(([x, y]) => piecePoint(x, y));
export const anyParameter = fc.oneof(anyAmount(0, 1), fc.double({ min: 0, max: 1, noNaN: true }));

/** Curves of up to a few hundred mm, an awkward one now and then. */
export const anyCubic: fc.Arbitrary<TestCubic> = fc.oneof(
  { weight: 5, arbitrary: fc.record({ a: anyPoint, c1: anyPoint, c2: anyPoint, b: anyPoint }) },
  { weight: 1, arbitrary: fc.constantFrom(...awkward.map(([, curve]) => curve)) },
);

/** Evenly spread numbers of a linear congruential generator, for tables of cases that do not need shrinking. */
export function spread(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1_664_525 + 1_013_904_223) % 2 ** 32;
    return state / 2 ** 32;
  };
}

export function spreadCubics(seed: number, count: number, size = 300): readonly TestCubic[] {
  const next = spread(seed);
  const point = (): Pair => [next() * size, next() * size];
  return Array.from({ length: count }, () => cubicOf(point(), point(), point(), point()));
}

interface Plain {
  readonly x: number;
  readonly y: number;
}

/** The point at t by repeated halfway points, where the core uses weights. */
export function referencePoint(c: TestCubic, t: number): Plain {
  let row: Plain[] = [c.a, c.c1, c.c2, c.b];
  while (row.length > 1) {
    row = row.slice(1).map((q, i) => {
      const p = row[i] ?? q;
      return { x: (1 - t) * p.x + t * q.x, y: (1 - t) * p.y + t * q.y };
    });
  }
  return row[0] ?? c.a;
}

export const referencePoints = (c: TestCubic, count: number): readonly Plain[] =>
  Array.from({ length: count + 1 }, (_, i) => referencePoint(c, i / count));

/** The length from t = 0 to `to` by chords at two spacings, extrapolated (Richardson). */
export function referenceLength(c: TestCubic, to = 1, chords = 1024): number {
  const length = (count: number): number => {
    let sum = 0;
    let before = referencePoint(c, 0);
    for (let i = 1; i <= count; i++) {
      const point = referencePoint(c, (to * i) / count);
      sum += Math.hypot(point.x - before.x, point.y - before.y);
      before = point;
    }
    return sum;
  };
  return (4 * length(chords) - length(chords / 2)) / 3;
}

/** The least distance from p by dense sampling and then ever finer sampling about each local minimum. */
export function referenceDistance(c: TestCubic, p: Plain, count = 1000): number {
  const off = (t: number): number => {
    const q = referencePoint(c, Math.min(1, Math.max(0, t)));
    return Math.hypot(q.x - p.x, q.y - p.y);
  };
  const samples = Array.from({ length: count + 1 }, (_, i) => off(i / count));
  let least = Infinity;
  samples.forEach((value, i) => {
    // Of equal neighbours the first stands for all.
    if (value >= (samples[i - 1] ?? Infinity) || value > (samples[i + 1] ?? Infinity)) return;
    let middle = i / count;
    for (let step = 1 / count; step > 1e-12; step /= 4) {
      const near = [-4, -3, -2, -1, 0, 1, 2, 3, 4].map((k) => middle + (k * step) / 4);
      middle = near.reduce((best, t) => (off(t) < off(best) ? t : best), middle);
    }
    least = Math.min(least, off(middle));
  });
  return least;
}

const side = (u: Plain, v: Plain, w: Plain): number => (v.x - u.x) * (w.y - u.y) - (v.y - u.y) * (w.x - u.x);

/** Where two chords cross, or null. */
function chordCrossing(a: Plain, b: Plain, c: Plain, d: Plain): Plain | null {
  if (Math.max(a.x, b.x) < Math.min(c.x, d.x) || Math.max(c.x, d.x) < Math.min(a.x, b.x)) return null;
  if (side(a, b, c) > 0 === side(a, b, d) > 0 || side(c, d, a) > 0 === side(c, d, b) > 0) return null;
  const share = side(c, d, a) / (side(c, d, a) - side(c, d, b));
  return { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) };
}

const chordsOf = (points: readonly Plain[]): readonly (readonly [Plain, Plain])[] =>
  points.slice(1).map((q, i) => [points[i] ?? q, q] as const);

const isPoint = (p: Plain | null): p is Plain => p !== null;

/** Where two chains of chords cross, by testing every pair: rough places, but none is missed. */
export function referenceCrossings(p: readonly Plain[], q: readonly Plain[]): readonly Plain[] {
  const others = chordsOf(q);
  return chordsOf(p).flatMap(([a, b]) => others.map(([c, d]) => chordCrossing(a, b, c, d)).filter(isPoint));
}

/** Where one chain of chords crosses itself. */
export function referenceSelfCrossings(p: readonly Plain[]): readonly Plain[] {
  const chords = chordsOf(p);
  return chords.flatMap(([a, b], i) =>
    chords
      .slice(i + 2)
      .map(([c, d]) => chordCrossing(a, b, c, d))
      .filter(isPoint),
  );
}
