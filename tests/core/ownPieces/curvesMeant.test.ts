/** Short stretches that stand for circles, and what of a line is straight by itself. */
import { describe, expect, it } from "vitest";
import { cubicEdge, edgePointAt, lineEdge, type EdgeCurve } from "../../../src/core/geometry/edgeCurve";
import { piecePoint } from "../../../src/core/geometry/point";
import { curvesMeant } from "../../../src/core/ownPieces/curvesMeant";

type Place = readonly [number, number];
const p = piecePoint;
const line = (...places: Place[]): readonly EdgeCurve<"piece">[] =>
  places.slice(1).map((at, i) => lineEdge(p(...(places[i] ?? at)), p(...at)));
const closed = (...places: Place[]) => line(...places, places[0] ?? [0, 0]);
/** On a circle about (0, 0). */
const arc = (radius: number, from: number, to: number, count: number): Place[] =>
  Array.from({ length: count + 1 }, (_, i): Place => {
    const turn = ((from + ((to - from) * i) / count) * Math.PI) / 180;
    return [radius * Math.cos(turn), radius * Math.sin(turn)];
  });
/** How far an edge leaves a circle, at the worst. */
const offCircle = (edge: EdgeCurve<"piece">, radius: number): number =>
  Math.max(
    ...[0.1, 0.25, 0.5, 0.75, 0.9].map((t) =>
      Math.abs(Math.hypot(edgePointAt(edge, t).x, edgePointAt(edge, t).y) - radius),
    ),
  );

describe("a line in short stretches", () => {
  it("all round a circle is that circle, through the same places", () => {
    const ring = closed(...arc(100, 0, 360, 120).slice(0, -1));
    const { edges, off } = curvesMeant(ring);
    expect(edges.map(({ a }) => a)).toEqual(ring.map(({ a }) => a));
    for (const edge of edges) {
      expect(edge.curve).not.toBeNull();
      expect(offCircle(edge, 100)).toBeLessThan(1e-5);
    }
    // The sagitta of three degrees.
    expect(off).toBeCloseTo(100 * (1 - Math.cos(Math.PI / 120)), 4);
  });

  it("turned the other way is a circle too", () => {
    const { edges } = curvesMeant(closed(...arc(100, 360, 0, 120).slice(0, -1)));
    for (const edge of edges) expect(offCircle(edge, 100)).toBeLessThan(1e-5);
  });

  it("from corner to corner is one to its very ends, whatever edge the ring is begun at", () => {
    // A quarter of a disc: its corner, and 30 stretches of three degrees.
    const places: Place[] = [[0, 0], ...arc(100, 0, 90, 30)];
    for (const begun of [0, 1, 7, 31]) {
      const ring = closed(...places.slice(begun), ...places.slice(0, begun));
      const { edges } = curvesMeant(ring);
      expect(edges.map(({ a, b }) => [a, b])).toEqual(ring.map(({ a, b }) => [a, b]));
      const curves = edges.filter(({ curve }) => curve !== null);
      expect(curves).toHaveLength(30);
      for (const edge of curves) expect(offCircle(edge, 100)).toBeLessThan(1e-5);
    }
  });

  it("of unequal stretches lies on it all the same", () => {
    const degrees = [0, 2, 5, 7, 10, 12.5, 15, 18, 20, 22, 25, 28, 30];
    const ring = closed([0, 0], ...degrees.map((at): Place => arc(100, at, at, 1)[0] ?? [0, 0]));
    const curves = curvesMeant(ring).edges.filter(({ curve }) => curve !== null);
    expect(curves).toHaveLength(degrees.length - 1);
    for (const edge of curves) expect(offCircle(edge, 100)).toBeLessThan(1e-3);
  });

  it("leaves no stretch by much more than the others, nor by more than 0.06 mm: one as long as two of them", () => {
    // Of 3 degrees they leave it by 0.034, and one of 6 by 0.137.
    const degrees = [0, 3, 6, 9, 12, 18, 21, 24, 27, 30];
    const ring = closed([0, 0], ...degrees.map((at): Place => arc(100, at, at, 1)[0] ?? [0, 0]));
    const { edges, off } = curvesMeant(ring);
    expect(off).toBeCloseTo(0.06, 6);
    const long = edges.find(
      ({ a, b }) => Math.hypot(b.x - a.x, b.y - a.y) > 10 && Math.hypot(a.x, a.y) > 99 && Math.hypot(b.x, b.y) > 99,
    );
    if (long === undefined) throw new Error("long stretch");
    expect(long.curve).not.toBeNull();
    const { x, y } = edgePointAt(long, 0.5);
    const sagitta = Math.hypot(x, y) - Math.hypot((long.a.x + long.b.x) / 2, (long.a.y + long.b.y) / 2);
    expect(sagitta).toBeCloseTo(0.06, 3);
    // One of 9 by 0.31, more than two and a half times that: it is straight by itself.
    const longer = [0, 3, 6, 9, 12, 21, 24, 27, 30, 33];
    const parted = curvesMeant(closed([0, 0], ...longer.map((at): Place => arc(100, at, at, 1)[0] ?? [0, 0])));
    expect(parted.edges.filter(({ curve }) => curve !== null)).toHaveLength(8);
  });

  it("of two stretches is what it looks like, of three a curve", () => {
    const many = (count: number) =>
      curvesMeant(closed([0, 0], ...arc(100, 0, 3 * count, count))).edges.filter(({ curve }) => curve !== null).length;
    expect(many(2)).toBe(0);
    expect(many(3)).toBe(3);
  });

  it("is straight where it hardly bends", () => {
    const { edges, off } = curvesMeant(closed([0, 0], [50, 0.0001], [100, 0], [150, 0], [150, 100], [0, 100]));
    expect(edges.every(({ curve }) => curve === null)).toBe(true);
    expect(off).toBe(0);
  });

  it("that runs on straight from a curve gives it its way there", () => {
    // A quarter of a circle, then 200 straight on along its tangent.
    const places: Place[] = [[100, -200], ...arc(100, 0, 90, 30), [0, 0], [0, -200]];
    const { edges } = curvesMeant(closed(...places));
    const first = edges.find(({ a }) => a.x === 100 && a.y === 0);
    expect(edges[0]?.curve).toBeNull();
    // It sets out straight down, as the long stretch came.
    expect(first?.curve?.c1.x).toBeCloseTo(100, 6);
    expect(first?.curve?.c1.y).toBeGreaterThan(0);
  });

  it("keeps its curves, and the corners where two lines meet that bend by themselves", () => {
    const curve = cubicEdge({ a: p(0, 0), c1: p(30, -20), c2: p(70, -20), b: p(100, 0) });
    const { edges } = curvesMeant([curve, ...line([100, 0], [100, 100], [0, 100], [0, 0])]);
    expect(edges[0]).toBe(curve);
    expect(edges.slice(1).every((edge) => edge.curve === null)).toBe(true);
    // Two circles that meet at 6 degrees: a kink beside stretches of one degree each.
    const one = arc(100, -90, -70, 20);
    const [ox, oy] = one.at(-1) ?? [0, 0];
    const turn = (26 * Math.PI) / 180;
    const other = arc(100, -90, -70, 20).map(([x, y]): Place => {
      const [dx, dy] = [x, y + 100];
      return [ox + dx * Math.cos(turn) - dy * Math.sin(turn), oy + dx * Math.sin(turn) + dy * Math.cos(turn)];
    });
    const ring = closed(...one, ...other.slice(1), [0, 200]);
    const kinked = curvesMeant(ring).edges;
    // Before the kink it comes as the first circle goes, not as the second.
    const last = kinked[19];
    const way = Math.atan2((last?.b.y ?? 0) - (last?.curve?.c2.y ?? 0), (last?.b.x ?? 0) - (last?.curve?.c2.x ?? 0));
    expect((way * 180) / Math.PI).toBeCloseTo(20, 3);
  });
});
