/** Stretches fitted and sizes matched: where they are parted, what of them is straight, and how far off the fit is said to be. */
import { describe, expect, it } from "vitest";
import { cubicEdge, edgeNearest, edgePointAt, lineEdge, type EdgeCurve } from "../../../src/core/geometry/edgeCurve";
import { piecePoint } from "../../../src/core/geometry/point";
import { asCubic, fitAlike } from "../../../src/core/ownPieces/fitCubics";
import { matchSizes } from "../../../src/core/ownPieces/matchSizes";
import type { Chain } from "../../../src/core/ownPieces/tracedRing";

type Place = readonly [number, number];
const p = piecePoint;
const line = (...places: readonly Place[]): EdgeCurve<"piece">[] =>
  places.slice(1).map((at, i) => lineEdge(p(...(places[i] ?? at)), p(...at)));
const degrees = (by: number): number => (by * Math.PI) / 180;
/** Points of a circle that starts at a place on a way, bending to the right of it by so many degrees. */
const arc = ([x, y]: Place, way: number, radius: number, by: number, count: number): Place[] =>
  Array.from({ length: count + 1 }, (_, i): Place => {
    const turn = degrees(way + (by * i) / count);
    const from = degrees(way);
    return [x + radius * (Math.sin(turn) - Math.sin(from)), y - radius * (Math.cos(turn) - Math.cos(from))];
  });
/** That circle as one cubic, by its usual handles. */
const round = (from: Place, way: number, radius: number, by: number): EdgeCurve<"piece"> => {
  const [, to] = arc(from, way, radius, by, 1);
  const handle = (4 / 3) * Math.tan(degrees(by) / 4) * radius;
  if (to === undefined) throw new Error("arc");
  return cubicEdge({
    a: p(...from),
    c1: p(from[0] + handle * Math.cos(degrees(way)), from[1] + handle * Math.sin(degrees(way))),
    c2: p(to[0] - handle * Math.cos(degrees(way + by)), to[1] - handle * Math.sin(degrees(way + by))),
    b: p(...to),
  });
};
const endOf = (edge: EdgeCurve<"piece"> | undefined): Place => [edge?.b.x ?? NaN, edge?.b.y ?? NaN];
const near = ([x, y]: Place, digits = 3) => ({
  x: expect.closeTo(x, digits) as number,
  y: expect.closeTo(y, digits) as number,
});
const ends = (chain: Chain | undefined) => (chain ?? []).map(({ b }) => b);
/** How far points are off a line, at the worst. */
const off = (points: readonly Place[], fit: Chain): number =>
  Math.max(...points.map((at) => Math.min(...fit.map((edge) => edgeNearest(edge, p(...at)).distance))));

describe("a stretch fitted", () => {
  it("is straight where it leaves its chord by half of what fitting may (0.01 mm), and says by how much", () => {
    const bent = (by: number) => fitAlike([line([0, 0], [50, by], [100, 0])]);
    expect(bent(0.009).edges).toEqual([line([0, 0], [100, 0])]);
    expect(bent(0.009).off).toEqual([expect.closeTo(0.009, 6)]);
    expect(bent(-0.009).off).toEqual([expect.closeTo(0.009, 6)]);
    expect(bent(0.011).edges[0]?.some(({ curve }) => curve !== null)).toBe(true);
    // Straight in one size and not in the other: curves in both.
    const two = fitAlike([line([0, 0], [50, 0], [100, 0]), line(...arc([0, 0], 0, 100, 60, 30))]);
    expect(two.edges[0]?.length).toBe(two.edges[1]?.length);
    expect(two.edges.flat().every(({ curve }) => curve !== null)).toBe(true);
    for (const { a, b, curve } of two.edges[0] ?? [])
      expect([a.y, b.y, curve?.c1.y, curve?.c2.y].map((y) => Math.abs(y ?? NaN) < 1e-9)).toEqual([
        true,
        true,
        true,
        true,
      ]);
  });

  it("of one cubic is that cubic, wherever it lies", () => {
    for (const by of [40, -70, 90]) {
      const drawn = round([30, 500], 25, by > 0 ? 80 : -120, by);
      const { edges, off: left } = fitAlike([[drawn]]);
      expect(edges[0]).toHaveLength(1);
      expect(left[0]).toBeLessThan(1e-3);
      for (const t of [0.1, 0.3, 0.5, 0.7, 0.9]) {
        const at = edgePointAt(drawn, t);
        expect(off([[at.x, at.y]], edges[0] ?? [])).toBeLessThan(2e-3);
      }
      expect(edges[0]?.[0]?.curve?.c1).toEqual(near([drawn.curve?.c1.x ?? NaN, drawn.curve?.c1.y ?? NaN], 0));
    }
    // However short: of 8 mm too.
    const [small] = fitAlike([[round([0, 0], 0, 5, 90)]]).edges[0] ?? [];
    expect(small?.curve?.c1).toEqual(near([5 * 0.5523, 0], 1));
    // Handles of unlike lengths.
    const uneven = cubicEdge({ a: p(0, 0), c1: p(20, 0), c2: p(100, 30), b: p(100, 90) });
    const [fit] = fitAlike([[uneven]]).edges[0] ?? [];
    expect([fit?.curve?.c1, fit?.curve?.c2]).toEqual([near([20, 0], 0), near([100, 30], 0)]);
  });

  it("is parted where it turns at once, though by less than a corner; else in its middle", () => {
    // Quarters of circles of 60 and 140 mm, one after the other; the first ends at 0.3 of the whole way.
    const parted = (turn: number) => {
      const first = round([0, 0], 0, 60, 90);
      const { edges } = fitAlike([[first, round(endOf(first), 90 + turn, 140, 90)]]);
      return { joint: endOf(first), ends: ends(edges[0]) };
    };
    const bent = parted(0.5);
    expect(bent.ends).toContainEqual(near(bent.joint));
    const back = parted(-0.5);
    expect(back.ends).toContainEqual(near(back.joint));
    const smooth = parted(0.1);
    expect(smooth.ends).not.toContainEqual(near(smooth.joint));
    // The middle of its length: 100 mm round the circle of 140 after the 60 π/2 of the first.
    const half = ((60 + 140) * Math.PI) / 4 - (60 * Math.PI) / 2;
    const [, middle] = arc(smooth.joint, 90.1, 140, (half / 140) * (180 / Math.PI), 1);
    expect(smooth.ends).toContainEqual(near([middle?.[0] ?? NaN, middle?.[1] ?? NaN], 1));
  });

  it("is parted where a curve goes on into a line, or a line into a curve, not between lines", () => {
    const curve = round([0, 0], 0, 60, 90);
    const [x, y] = endOf(curve);
    const way = (turn: number): Place => [x - 80 * Math.sin(degrees(turn)), y + 80 * Math.cos(degrees(turn))];
    const into = fitAlike([[curve, ...line([x, y], way(0.6))]]).edges[0];
    expect(ends(into)).toContainEqual(near([x, y]));
    expect(into?.at(-1)).toMatchObject({ a: near([x, y]), b: near(way(0.6)) });
    const start: Place = [-80 * Math.cos(degrees(0.6)), -80 * Math.sin(degrees(0.6))];
    const from = fitAlike([[...line(start, [0, 0]), curve]]).edges[0];
    expect(ends(from)).toContainEqual(near([0, 0]));
    // Of several places the one that turns most.
    const third = [...line(start, [0, 0]), curve, ...line([x, y], way(1.8))];
    const [first] = [fitAlike([third]).edges[0]];
    expect(ends(first)).toContainEqual(near([x, y]));
  });

  it("says how far its points are off, at the worst of all its parts", () => {
    // A wave that one cubic cannot hold; drawn so finely that nothing lies off its points.
    const wave = Array.from({ length: 121 }, (_, i): Place => [i * 2, 18 * Math.sin((i * 2 * Math.PI) / 120)]);
    const { edges, off: left } = fitAlike([line(...wave)]);
    expect(left[0]).toBeLessThan(0.03);
    expect(off(wave, edges[0] ?? [])).toBeCloseTo(left[0] ?? NaN, 2);
    expect(edges[0]?.[0]?.a).toEqual({ x: 0, y: 0 });
    expect(edges[0]?.at(-1)?.b).toEqual(near(wave.at(-1) ?? [NaN, NaN], 9));
    for (const [k, edge] of (edges[0] ?? []).slice(1).entries()) expect(edge.a).toEqual(edges[0]?.[k]?.b);
    // Teeth are halved five times and no further, and what is left is told.
    const teeth = Array.from({ length: 161 }, (_, i): Place => [i * 4, i % 2 === 0 ? 0 : 0.5]);
    const rough = fitAlike([line(...teeth)]);
    expect(rough.edges[0]).toHaveLength(32);
    expect(rough.off[0]).toBeGreaterThan(0.1);
    expect(rough.off[0]).toBeLessThan(0.6);
  });

  it("follows a long straight line that a curve goes on into, all along", () => {
    const curve = round([0, 0], 0, 60, 90);
    const { edges } = fitAlike([[curve, ...line([60, 60], [60, 360])]]);
    const down = [80, 120, 180, 240, 300].map((y): Place => [60, y]);
    expect(off(down, edges[0] ?? [])).toBeLessThan(0.03);
    expect(off(arc([0, 0], 0, 60, 90, 12), edges[0] ?? [])).toBeLessThan(0.05);
  });

  it("is not parted into what is too short to be sewn", () => {
    const zig = (length: number) =>
      fitAlike([line([0, 0], [length / 4, 0.1], [length / 2, -0.1], [(3 * length) / 4, 0.1], [length, 0])]).edges[0]
        ?.length;
    expect(zig(0.9)).toBe(1);
    expect(zig(40)).toBeGreaterThan(1);
  });

  it("in several sizes is parted at the same shares, by the one that is furthest off", () => {
    const small = round([0, 0], 0, 60, 90);
    const bend = [small, round(endOf(small), 90.5, 140, 90)];
    const plain = line([0, 0], [400, 0]);
    const { edges } = fitAlike([plain, bend]);
    expect(edges[0]?.length).toBe(edges[1]?.length);
    const share = (60 * Math.PI) / 2 / (((60 + 140) * Math.PI) / 2);
    const k = ends(edges[1]).findIndex(({ x, y }) => Math.hypot(x - 60, y - 60) < 1e-3);
    expect(k).toBeGreaterThanOrEqual(0);
    expect(ends(edges[0])[k]?.x).toBeCloseTo(400 * share, 0);
  });

  it("a straight edge as a cubic has its controls at thirds", () => {
    const curve = { c1: p(1, 2), c2: p(3, 4) };
    expect(asCubic({ a: p(0, 0), b: p(9, 9), curve })).toEqual({ a: p(0, 0), b: p(9, 9), curve });
    expect(asCubic(lineEdge(p(3, 9), p(9, -3)))).toEqual({
      a: p(3, 9),
      b: p(9, -3),
      curve: { c1: p(5, 5), c2: p(7, 1) },
    });
  });
});

describe("sizes of one seam", () => {
  const lengths = (chains: readonly Chain[]) => matchSizes(chains).edges.map((chain) => chain.length);

  it("drawn in as many edges are kept where those end within a fifth of the seam of each other", () => {
    const corner = (at: number): EdgeCurve<"piece">[] => line([0, 0], [at, 0], [at, 100 - at]);
    // Shares of 0.4 and 0.59, 0.61.
    expect(matchSizes([corner(40), corner(59)]).edges).toEqual([corner(40), corner(59)]);
    const far = matchSizes([corner(40), corner(61)]).edges;
    expect(ends(far[0])).toContainEqual(near([40, 0]));
    expect(ends(far[1])).toContainEqual(near([61, 0]));
    // Six edges at the most, if none is a stretch of a curve.
    const stairs = (count: number): EdgeCurve<"piece">[] =>
      line(...Array.from({ length: count + 1 }, (_, i): Place => [Math.ceil(i / 2) * 20, Math.floor(i / 2) * 20]));
    expect(matchSizes([stairs(6), stairs(6)]).edges).toEqual([stairs(6), stairs(6)]);
    expect(lengths([stairs(7), stairs(7)])).toEqual([7, 7]);
    const two = [round([0, 0], 0, 60, 45), round(arc([0, 0], 0, 60, 45, 1)[1] ?? [0, 0], 45, 60, 45)];
    expect(matchSizes([two, two]).edges).toEqual([two, two]);
    // Seven curves of a circle are one seam drawn in many.
    const curves = (count: number) =>
      Array.from({ length: count }, (_, k) => {
        const begun = arc([0, 0], 0, 200, 12 * k, 1)[1] ?? [0, 0];
        return round(begun, 12 * k, 200, 12);
      });
    expect(lengths([curves(6), curves(6)])).toEqual([6, 6]);
    expect(lengths([curves(7), curves(7)])[0]).toBeLessThan(7);
    const stretches = line(...arc([0, 0], 0, 300, 4, 4));
    expect(lengths([stretches, stretches])[0]).toBeLessThan(4);
  });

  it("are cubics in all where one has a curve, and stay straight where none has", () => {
    const curve = round([0, 0], 0, 60, 90);
    const straight = line([0, 0], [90, 0]);
    const made = matchSizes([
      [curve, ...line([60, 60], [0, 60])],
      [...straight, ...line([90, 0], [90, 60])],
    ]);
    expect(made.edges.map((chain) => chain.map((edge) => edge.curve !== null))).toEqual([
      [true, false],
      [true, false],
    ]);
    expect(made.edges[1]?.[0]?.curve).toEqual({ c1: p(30, 0), c2: p(60, 0) });
    expect(made.deviations).toEqual([0, 0]);
  });

  /** Two circles in stretches of a degree that meet turning by some degrees more. */
  const kinked = (by: number, step = 1): Place[] => {
    const first = arc([0, 0], 0, 100, 20 * step, 20);
    const [x, y] = first.at(-1) ?? [NaN, NaN];
    return [...first, ...arc([x, y], 20 * step - step + by, 100, 31 * step, 31).slice(1)];
  };
  const hasKink = (places: readonly Place[]): boolean =>
    ends(matchSizes([line(...places)]).edges[0]).some(
      ({ x, y }) => Math.hypot(x - (places[20]?.[0] ?? NaN), y - (places[20]?.[1] ?? NaN)) < 1e-9,
    );

  it("are parted where a line in short stretches turns at once: by more than a degree, and three times as much as beside", () => {
    expect(hasKink(kinked(3.2))).toBe(true);
    expect(hasKink(kinked(2.8))).toBe(false);
    expect(hasKink(kinked(-4.5))).toBe(true);
    // Stretches of a fifth of a degree: three times that is no degree yet.
    expect(hasKink(kinked(0.9, 0.2))).toBe(false);
    expect(hasKink(kinked(1.2, 0.2))).toBe(true);
  });

  it("with more than eight kinks have an unsteady hand", () => {
    const rough = (count: number): number => {
      const places: Place[] = [[0, 0]];
      let way = 0;
      for (let k = 0; k <= 8 * count + 8; k += 1) {
        const [x, y] = places.at(-1) ?? [0, 0];
        way += k % 8 === 7 && k < 8 * count + 7 ? 4 : 0.3;
        places.push([x + 3 * Math.cos(degrees(way)), y + 3 * Math.sin(degrees(way))]);
      }
      const kinks = places.filter((_, k) => k % 8 === 7 && k < 8 * count + 7);
      const found = ends(matchSizes([line(...places)]).edges[0]);
      return kinks.filter(([x, y]) => found.some((at) => Math.hypot(at.x - x, at.y - y) < 1e-9)).length;
    };
    expect(rough(5)).toBe(5);
    expect(rough(8)).toBe(8);
    expect(rough(9)).toBeLessThan(9);
  });

  it("tell the furthest that each of them leaves what is drawn, in whichever of its parts that is", () => {
    const teeth = Array.from({ length: 161 }, (_, i): Place => [i * 4, i % 2 === 0 ? 0 : 0.5]);
    const round90: Place[] = [...teeth, [640, 200]];
    const plain = line([0, 0], [640, 0], [640, 200]);
    const { deviations } = matchSizes([line(...round90), plain]);
    expect(deviations[0]).toBeGreaterThan(0.1);
    expect(deviations[0]).toBeLessThan(0.6);
    expect(deviations[1]).toBeLessThan(1e-6);
  });

  it("that lack a corner are cut there, in the middle of a curve too", () => {
    // Half of a quarter of a circle, by the half of the other's two legs.
    const curve = round([0, 0], 0, 60, 90);
    const [first, second] = matchSizes([[curve], line([0, 0], [50, 0], [50, 50])]).edges;
    expect([first?.length, second?.length]).toEqual([2, 2]);
    const middle = 60 * Math.SQRT1_2;
    expect(first?.[0]?.b).toEqual(near([middle, 60 - middle], 2));
    expect(second).toEqual([expect.objectContaining({ b: p(50, 0) }), expect.objectContaining({ a: p(50, 0) })]);
    // Where both have it, each at its own place, whole edges stay as they are.
    const corner = matchSizes([[...line([0, 0], [20, 0]), curve], [...line([0, 0], [20, 0], [70, 0], [70, 20])]]).edges;
    expect(corner[0]?.length).toBe(corner[1]?.length);
  });

  it("take corners for one another by share and turn, and leave out what is like none", () => {
    // The first turns right at 0.3 and left at 0.5; the second only left, at 0.45.
    const first = line([0, 0], [30, 0], [30, 20], [80, 20]);
    const second = line([0, 0], [45, 0], [45, -55]);
    const [one, other] = matchSizes([first, second]).edges;
    expect([one?.length, other?.length]).toEqual([3, 3]);
    expect(ends(other)).toContainEqual(p(45, 0));
    // Its left turn is the first's second, so the right one is put between: 0.3 of 0.5 of its own 0.45.
    expect(ends(other)[0]).toEqual(near([100 * 0.45 * (0.3 / 0.5), 0]));
    expect(ends(one).slice(0, 2)).toEqual([p(30, 0), p(30, 20)]);
  });
});
