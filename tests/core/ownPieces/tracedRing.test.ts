/** Rings walked by their length, mirrored, placed, and darts on them: a box of 200 by 300, and figures read off it. */
import { describe, expect, it } from "vitest";
import { cubicEdge, lineEdge, type EdgeCurve } from "../../../src/core/geometry/edgeCurve";
import { piecePoint, sheetPoint } from "../../../src/core/geometry/point";
import {
  cutDarts,
  drawnDarts,
  withMouths,
  withoutDoubles,
  type TracedDart,
} from "../../../src/core/ownPieces/findDarts";
import {
  halfOf,
  intoPiece,
  mirrorAxis,
  ontoHalf,
  ontoSheet,
  placedBy,
  sideOf,
  type Placement,
} from "../../../src/core/ownPieces/placement";
import {
  flattened,
  isSmooth,
  jointsOf,
  lastUpTo,
  nearestOn,
  partOn,
  pointOn,
  tracedRing,
  turnAt,
  wayFrom,
  wrapped,
} from "../../../src/core/ownPieces/tracedRing";

type Place = readonly [number, number];
const p = piecePoint;
const near = (x: number, y: number) => ({ x: expect.closeTo(x, 6) as number, y: expect.closeTo(y, 6) as number });
const chain = (places: readonly Place[], closed = true): readonly EdgeCurve<"piece">[] =>
  places
    .slice(0, closed ? undefined : -1)
    .map((at, i) => lineEdge(p(...at), p(...(places[(i + 1) % places.length] ?? at))));
const ringOf = (...places: Place[]) => tracedRing(chain(places));
/** Clockwise on screen from its upper left corner: 200 along the top, 300 down, and so on. */
const BOX: readonly Place[] = [
  [0, 0],
  [200, 0],
  [200, 300],
  [0, 300],
];
const ring = ringOf(...BOX);
const ends = (edges: readonly EdgeCurve<"piece">[]): string[] => edges.map(({ a, b }) => `${a.x},${a.y} ${b.x},${b.y}`);

describe("a ring", () => {
  it("goes by the clock, without edges that have no length", () => {
    expect(ring).toMatchObject({ starts: [0, 200, 500, 700], length: 1000, off: 0 });
    const back = tracedRing(
      chain([
        [0, 0],
        [0, 300],
        [0, 300],
        [200, 300],
        [200, 0],
      ]),
      0.03,
    );
    expect(ends(back.edges)).toEqual(["0,0 200,0", "200,0 200,300", "200,300 0,300", "0,300 0,0"]);
    expect(back).toMatchObject({ length: 1000, off: 0.03 });
  });

  it("keeps a loop that ends where it begins", () => {
    const loop = cubicEdge({ a: p(0, 0), c1: p(100, -80), c2: p(100, 80), b: p(0, 0) });
    expect(tracedRing([loop, lineEdge(p(0, 0), p(0, 0))]).edges).toEqual([loop]);
  });

  it("is found in a list of lengths by the last that is no greater", () => {
    const list = [0, 5, 5, 8, 20];
    expect([-1, 0, 4.9, 5, 7.9, 8, 19.9, 20, 99].map((most) => lastUpTo(list, most))).toEqual([
      0, 0, 0, 2, 2, 3, 3, 4, 4,
    ]);
    expect(lastUpTo([0], 3)).toBe(0);
    expect(lastUpTo([0, 3], 2)).toBe(0);
  });

  it("is walked round and round", () => {
    expect([wrapped(ring, 1100), wrapped(ring, -100), wrapped(ring, 1000), wrapped(ring, 0)]).toEqual([100, 900, 0, 0]);
    expect([wayFrom(ring, 100, 300), wayFrom(ring, 300, 100), wayFrom(ring, 5, 5)]).toEqual([200, 800, 0]);
    expect([50, 200, 350, 600, 850, 1000, 1050, -50].map((s) => pointOn(ring, s))).toEqual([
      near(50, 0),
      near(200, 0),
      near(200, 150),
      near(100, 300),
      near(0, 150),
      near(0, 0),
      near(50, 0),
      near(0, 50),
    ]);
    expect(pointOn(ring, 199.99995)).toEqual({ x: 200, y: 0 });
  });

  it("is cut between any two places, whole edges as they are", () => {
    expect(ends(partOn(ring, 50, 150))).toEqual(["50,0 150,0"]);
    expect(ends(partOn(ring, 50, 300))).toEqual(["50,0 200,0", "200,0 200,100"]);
    expect(ends(partOn(ring, 850, 100))).toEqual(["0,150 0,0", "0,0 100,0"]);
    expect(ends(partOn(ring, 150, 50))).toEqual([
      "150,0 200,0",
      "200,0 200,300",
      "200,300 0,300",
      "0,300 0,0",
      "0,0 50,0",
    ]);
    expect(partOn(ring, 200, 700)).toEqual([ring.edges[1], ring.edges[2]]);
    expect(partOn(ring, 200, 500)[0]).toBe(ring.edges[1]);
    expect(partOn(ring, 30, 30)).toEqual([]);
  });

  it("has a nearest place to any point, on a curve too", () => {
    expect(nearestOn(ring, p(210, 100))).toEqual({ s: 300, distance: 10 });
    expect(nearestOn(ring, p(90, 20))).toEqual({ s: 90, distance: 20 });
    expect(nearestOn(ring, p(-3, -4))).toEqual({ s: 0, distance: 5 });
    expect(nearestOn(ring, p(203, 304))).toEqual({ s: 500, distance: 5 });
    // The right side bulges out by 30 in the middle: 3/4 of its handles' 40.
    const bulged = tracedRing([
      lineEdge(p(0, 0), p(200, 0)),
      cubicEdge({ a: p(200, 0), c1: p(240, 100), c2: p(240, 200), b: p(200, 300) }),
      lineEdge(p(200, 300), p(0, 300)),
      lineEdge(p(0, 300), p(0, 0)),
    ]);
    const found = nearestOn(bulged, p(240, 150));
    expect(found.distance).toBeCloseTo(10, 6);
    expect(found.s).toBeCloseTo(200 + (bulged.length - 700) / 2, 3);
    expect(nearestOn(bulged, p(10, 150))).toEqual({
      s: expect.closeTo(bulged.length - 150, 6) as number,
      distance: 10,
    });
  });

  it("is flattened with how far round each point lies", () => {
    expect(flattened(ring, 0.1)).toEqual({ points: BOX.map((at) => p(...at)), s: [0, 200, 500, 700] });
  });
});

describe("where two edges meet", () => {
  /** Two stretches that turn by some degrees. */
  const bent = (one: number, other: number, degrees: number) => {
    const way = (degrees * Math.PI) / 180;
    const [a, b] = [
      lineEdge(p(0, 0), p(one, 0)),
      lineEdge(p(one, 0), p(one + other * Math.cos(way), other * Math.sin(way))),
    ];
    return isSmooth(a, b, turnAt(a, b));
  };
  const curved = (degrees: number) => {
    const way = (degrees * Math.PI) / 180;
    const a = cubicEdge({ a: p(0, 0), c1: p(30, 10), c2: p(70, 0), b: p(100, 0) });
    const b = lineEdge(p(100, 0), p(100 + 50 * Math.cos(way), 50 * Math.sin(way)));
    return [isSmooth(a, b, turnAt(a, b)), isSmooth(b, a, turnAt(a, b))];
  };

  it("curves go on that turn by three degrees at most", () => {
    expect(curved(2.9)).toEqual([true, true]);
    expect(curved(-2.9)).toEqual([true, true]);
    expect(curved(3.1)).toEqual([false, false]);
    expect(curved(-3.1)).toEqual([false, false]);
  });

  it("short stretches stand for a curve by the shorter of them: by an eighth of its length times the turn", () => {
    // 10 mm at 6.8 degrees leave it by 0.148, at 6.95 by 0.1516.
    expect(bent(10, 10, 6.8)).toBe(true);
    expect(bent(10, 10, -6.8)).toBe(true);
    expect(bent(10, 10, 6.95)).toBe(false);
    expect(bent(10, 400, 6.8)).toBe(true);
    // However short, no more than 20 degrees.
    expect(bent(3, 3, 19.9)).toBe(true);
    expect(bent(3, 3, 20.1)).toBe(false);
  });

  it("stretches longer than 30 mm do so by two degrees and 0.06 mm at most, or where they hardly turn at all", () => {
    expect(bent(29, 29, 2.2)).toBe(true);
    expect(bent(31, 31, 2.2)).toBe(false);
    // 31 at 0.87 degrees: 0.0588; at 0.9: 0.0609.
    expect(bent(31, 31, 0.87)).toBe(true);
    expect(bent(31, 31, 0.9)).toBe(false);
    // A metre at 0.001 degrees leaves its way by 0.002.
    expect(bent(1000, 1000, 0.001)).toBe(true);
    expect(bent(4000, 4000, 0.01)).toBe(false);
  });

  it("corners are told with their turn, to the right as positive", () => {
    expect(jointsOf(ringOf([0, 0], [200, 0], [200, 300], [100, 200], [0, 300]))).toEqual([
      { s: 0, edge: 0, turn: expect.closeTo(90, 9) as number, smooth: false },
      { s: 200, edge: 1, turn: expect.closeTo(90, 9) as number, smooth: false },
      { s: 500, edge: 2, turn: expect.closeTo(135, 9) as number, smooth: false },
      {
        s: expect.closeTo(500 + 100 * Math.SQRT2, 9) as number,
        edge: 3,
        turn: expect.closeTo(-90, 9) as number,
        smooth: false,
      },
      {
        s: expect.closeTo(500 + 200 * Math.SQRT2, 9) as number,
        edge: 4,
        turn: expect.closeTo(135, 9) as number,
        smooth: false,
      },
    ]);
  });
});

describe("a placement", () => {
  const at = (some: Partial<Placement>): Placement => ({ turns: 0, turnedOver: false, tilt: 0, dx: 0, dy: 0, ...some });

  it("turns by quarters, then over, then upright, then moves", () => {
    const place = sheetPoint(3, 1);
    const [none, one, two, three] = ([0, 1, 2, 3] as const).map((turns) => intoPiece(at({ turns }), place));
    expect([none, one, two, three]).toEqual([near(3, 1), near(-1, 3), near(-3, -1), near(1, -3)]);
    expect(intoPiece(at({ turnedOver: true }), place)).toEqual(near(-3, 1));
    expect(intoPiece(at({ turns: 1, turnedOver: true }), place)).toEqual(near(1, 3));
    expect(intoPiece(at({ tilt: Math.PI / 2 }), place)).toEqual(near(-1, 3));
    expect(intoPiece(at({ turns: 1, turnedOver: true, tilt: Math.PI / 2, dx: 10, dy: 20 }), place)).toEqual(
      near(10 - 3, 20 + 1),
    );
  });

  it("goes back onto the sheet", () => {
    for (const turns of [0, 1, 2, 3] as const)
      for (const turnedOver of [false, true])
        for (const tilt of [0, 0.3, -1]) {
          const place = at({ turns, turnedOver, tilt, dx: 7, dy: -9 });
          expect(ontoSheet(place, intoPiece(place, sheetPoint(31, 17)))).toEqual(near(31, 17));
        }
  });

  it("placed further does both, one after the other", () => {
    const first = at({ turns: 1, turnedOver: true, tilt: 0.4, dx: 5, dy: 6 });
    const then = placedBy(first, 0.2, 30, -40);
    const { x, y } = intoPiece(first, sheetPoint(12, 34));
    expect(intoPiece(then, sheetPoint(12, 34))).toEqual(
      near(x * Math.cos(0.2) - y * Math.sin(0.2) + 30, x * Math.sin(0.2) + y * Math.cos(0.2) - 40),
    );
  });
});

describe("a whole piece", () => {
  // A house: mirrored in x = 100 alone.
  const house = ringOf([100, 0], [200, 100], [200, 300], [0, 300], [0, 100]);

  it("is mirrored in its middle line, an upright one first", () => {
    // Of the 40000 of the box and 10000 of the roof: (200 · 40000 + 66.67 · 10000) / 50000 down.
    expect(mirrorAxis(house)).toEqual({
      x: expect.closeTo(100, 3) as number,
      y: expect.closeTo((200 * 40_000 + (200 / 3) * 10_000) / 50_000, 3) as number,
      way: Math.PI / 2,
    });
    expect(mirrorAxis(ring)?.way).toBe(Math.PI / 2);
    expect(mirrorAxis(ringOf([0, 100], [100, 0], [300, 0], [300, 200], [100, 200]))?.way).toBe(0);
    expect(mirrorAxis(ringOf([0, 0], [200, 0], [230, 300], [0, 300]))).toBeNull();
  });

  it("is mirrored in a line that leans, along it or across", () => {
    const turn = ([x, y]: Place, by: number): Place => [
      x * Math.cos(by) - y * Math.sin(by),
      x * Math.sin(by) + y * Math.cos(by),
    ];
    const leaning = (by: number) =>
      mirrorAxis(
        ringOf(
          ...(
            [
              [100, 0],
              [200, 100],
              [200, 400],
              [0, 400],
              [0, 100],
            ] as const
          ).map((at) => turn(at, by)),
        ),
      );
    const way = leaning(0.5)?.way ?? NaN;
    // Its long way is its middle line, turned by 0.5 from upright; a line has no sense, so half a turn is nothing.
    expect(Math.abs(Math.sin(way - Math.PI / 2 - 0.5))).toBeLessThan(1e-6);
  });

  it("is one half of it, closed along that line", () => {
    const half = halfOf(house, { x: 100, y: 0, way: Math.PI / 2 });
    expect(half?.length).toBeCloseTo(100 * Math.SQRT2 + 200 + 100 + 300, 3);
    const xs = half?.edges.flatMap(({ a, b }) => [a.x, b.x]) ?? [];
    // The half that is kept lies where the side is above nothing: to the left of a line that goes down.
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([0, expect.closeTo(100, 6) as number]);
    expect(halfOf(house, { x: 500, y: 0, way: Math.PI / 2 })).toBeNull();
    const twice = ringOf([0, 0], [200, 0], [200, 300], [100, 100], [0, 300]);
    expect(halfOf(twice, { x: 0, y: 200, way: 0 })).toBeNull();
  });

  it("has places of the other half as in a mirror", () => {
    const axis = { x: 100, y: 0, way: Math.PI / 2 };
    expect(sideOf(axis, 40, 7)).toBeCloseTo(60, 9);
    expect(sideOf(axis, 140, 7)).toBeCloseTo(-40, 9);
    expect(ontoHalf(axis, 40, 7)).toEqual([40, 7]);
    expect(ontoHalf(axis, 140, 7)).toEqual([expect.closeTo(60, 9), expect.closeTo(7, 9)]);
    expect(ontoHalf(null, 140, 7)).toEqual([140, 7]);
    const slanted = { x: 0, y: 0, way: Math.PI / 4 };
    // To the left of the way, as far as half of the diagonal of a square of 10.
    expect(sideOf(slanted, 0, 10)).toBeCloseTo(10 * Math.SQRT1_2, 9);
    expect(sideOf(slanted, 10, 0)).toBeCloseTo(-10 * Math.SQRT1_2, 9);
    expect(sideOf({ x: 3, y: 4, way: 0 }, 100, 9)).toBeCloseTo(5, 9);
    expect(ontoHalf(slanted, 10, 0)).toEqual([expect.closeTo(0, 9), expect.closeTo(10, 9)]);
  });
});

describe("darts cut out of an outline", () => {
  /** The box with a dart in its lower edge: mouth from 120 to 80, its end so high above, or beside. */
  const withDart = (height: number, x = 100, half = 20) =>
    ringOf([0, 0], [200, 0], [200, 300], [100 + half, 300], [x, 300 - height], [100 - half, 300], [0, 300]);

  it("are told by their mouth and their end", () => {
    const leg = Math.hypot(20, 120);
    expect(cutDarts(withDart(120))).toEqual([
      { first: 580, second: expect.closeTo(580 + 2 * leg, 9) as number, apex: { x: 100, y: 180 }, by: "outline" },
    ]);
    expect(cutDarts(ring)).toEqual([]);
  });

  it("have legs longer than 20 mm, one not shorter than three quarters of the other (our own choice)", () => {
    expect(cutDarts(withDart(20.5, 100, 5))).toHaveLength(1);
    expect(cutDarts(withDart(19, 100, 5))).toEqual([]);
    // 60 high: 30 beside the middle √(10² + 60²) = 60.8 and √(50² + 60²) = 78.1; 45 beside it 65.0 and 88.5.
    expect(cutDarts(withDart(60, 130))).toHaveLength(1);
    expect(cutDarts(withDart(60, 70))).toHaveLength(1);
    expect(cutDarts(withDart(60, 145))).toEqual([]);
    expect(cutDarts(withDart(60, 55))).toEqual([]);
  });

  it("open by more than 2 and less than 75 degrees", () => {
    // 2 atan(half/100).
    expect(cutDarts(withDart(100, 100, 1.8))).toHaveLength(1);
    expect(cutDarts(withDart(100, 100, 1.7))).toEqual([]);
    expect(cutDarts(withDart(100, 100, 76))).toHaveLength(1);
    expect(cutDarts(withDart(100, 100, 77))).toEqual([]);
  });
});

describe("darts that are none", () => {
  it("turn back by less than 100 degrees at their end, or turn inwards at their mouth", () => {
    /** The end at so wide an angle: it turns by 180 less that. */
    const wide = (half: number) =>
      ringOf([0, 0], [400, 0], [400, 300], [200 + half, 300], [200, 260], [200 - half, 300], [0, 300]);
    // 2 atan(30/40) is 73.7, and turns by 106; 2 atan(33/40) is 79.
    expect(cutDarts(wide(30))).toHaveLength(1);
    expect(cutDarts(wide(33))).toEqual([]);
    // A step down beside it: its one end turns left.
    const step = ringOf([0, 0], [400, 0], [400, 200], [240, 200], [220, 300], [200, 200], [180, 300], [0, 300]);
    expect(cutDarts(step).map(({ apex }) => apex)).toEqual([{ x: 200, y: 200 }]);
    expect(cutDarts(ringOf([0, 0], [200, 0], [100, 20]))).toEqual([]);
  });

  it("have bowed legs", () => {
    const bowed = (by: number) =>
      cutDarts(
        tracedRing([
          ...chain(
            [
              [0, 0],
              [200, 0],
              [200, 300],
              [120, 300],
            ],
            false,
          ),
          cubicEdge({ a: p(120, 300), c1: p(120 + by, 260), c2: p(100 + by, 220), b: p(100, 180) }),
          ...chain(
            [
              [100, 180],
              [80, 300],
              [0, 300],
              [0, 0],
            ],
            false,
          ),
        ]),
      );
    expect(bowed(2)).toHaveLength(1);
    expect(bowed(60)).toEqual([]);
  });
});

describe("mouths", () => {
  const dart = (first: number, second: number): TracedDart => ({ first, second, apex: p(9, 9), by: "her" });

  it("are straight edges in the ring, each where it was, in its order", () => {
    expect(withMouths(ring, [])).toEqual({ ring, mouths: [] });
    const { ring: made, mouths } = withMouths(ring, [dart(580, 620), dart(150, 250)]);
    // From 150 on the upper side over the corner to 50 down the right one: √(50² + 50²) in the place of 100.
    expect(ends(made.edges)).toEqual([
      "150,0 200,50",
      "200,50 200,300",
      "200,300 120,300",
      "120,300 80,300",
      "80,300 0,300",
      "0,300 0,0",
      "0,0 150,0",
    ]);
    const mouth = 50 * Math.SQRT2;
    expect(mouths).toEqual([
      { first: 0, second: expect.closeTo(mouth, 9) as number, apex: p(9, 9), by: "her" },
      {
        first: expect.closeTo(mouth + 330, 9) as number,
        second: expect.closeTo(mouth + 370, 9) as number,
        apex: p(9, 9),
        by: "her",
      },
    ]);
    const over = withMouths(tracedRing(chain(BOX), 0.4), [dart(980, 30)]);
    expect(ends(over.ring.edges)).toEqual(["0,20 30,0", "30,0 200,0", "200,0 200,300", "200,300 0,300", "0,300 0,20"]);
    expect([over.ring.off, over.mouths[0]?.first, over.mouths[0]?.second]).toEqual([
      0.4,
      0,
      expect.closeTo(Math.hypot(20, 30), 9),
    ]);
  });
});

describe("darts drawn inside", () => {
  const legs = (...lines: readonly (readonly Place[])[]) => lines.map((line) => chain(line, false));
  const drawn = (lines: readonly (readonly Place[])[], reach = 0) => drawnDarts(ring, legs(...lines), reach);
  const DART: TracedDart = { first: 580, second: 620, apex: p(100, 180), by: "inner lines" };

  it("are two straight lines from the edge to one end, however they are drawn", () => {
    expect(
      drawn([
        [
          [120, 300],
          [100, 180],
        ],
        [
          [80, 300],
          [100, 180],
        ],
      ]),
    ).toEqual([DART]);
    expect(
      drawn([
        [
          [100, 180],
          [80, 300],
        ],
        [
          [120, 300],
          [100, 180],
        ],
      ]),
    ).toEqual([DART]);
    expect(
      drawn([
        [
          [80, 300],
          [100, 180],
          [120, 300],
        ],
      ]),
    ).toEqual([DART]);
    expect(
      drawn([
        [
          [80, 300],
          [90, 240],
          [100, 180],
        ],
        [
          [100, 180],
          [110, 240],
          [120, 300],
        ],
      ]),
    ).toEqual([DART]);
  });

  it("end within 1.5 mm of one another and within 3 of the line", () => {
    const apart = (by: number) =>
      drawn([
        [
          [120, 300],
          [100 + by, 180],
        ],
        [
          [80, 300],
          [100, 180],
        ],
      ]);
    expect(apart(1.4)).toEqual([{ ...DART, apex: near(100.7, 180) }]);
    expect(apart(1.6)).toEqual([]);
    const short = (by: number) =>
      drawn([
        [
          [120, 300 - by],
          [100, 180],
        ],
        [
          [80, 300 - by],
          [100, 180],
        ],
      ]);
    expect(short(2.9)).toHaveLength(1);
    expect(short(3.1)).toEqual([]);
  });

  it("are the widest from one end, where the fold is drawn too", () => {
    expect(
      drawn([
        [
          [120, 300],
          [100, 180],
        ],
        [
          [100, 300],
          [100, 180],
        ],
        [
          [80, 300],
          [100, 180],
        ],
      ]),
    ).toEqual([DART]);
  });

  it("are no lines that cross the piece, that are short, or bowed", () => {
    expect(
      drawn([
        [
          [120, 300],
          [100, 0],
        ],
        [
          [80, 300],
          [100, 0],
        ],
      ]),
    ).toEqual([]);
    expect(
      drawn([
        [
          [105, 300],
          [100, 281],
        ],
        [
          [95, 300],
          [100, 281],
        ],
      ]),
    ).toEqual([]);
    expect(
      drawn([
        [
          [105, 300],
          [100, 279],
        ],
        [
          [95, 300],
          [100, 279],
        ],
      ]),
    ).toHaveLength(1);
    const bowed = (by: number) =>
      drawnDarts(
        ring,
        [
          [cubicEdge({ a: p(120, 300), c1: p(120 + by, 260), c2: p(100 + by, 220), b: p(100, 180) })],
          ...legs([
            [80, 300],
            [100, 180],
          ]),
        ],
        0,
      );
    expect(bowed(10)).toHaveLength(1);
    expect(bowed(60)).toEqual([]);
  });

  it("go on to a cutting line that lies an allowance outside", () => {
    // Their lower ends lie 15 above the line: they go on by an eighth of their 105 to 20 · 120/105 beside the middle.
    const [found, more] = drawn(
      [
        [
          [120, 285],
          [100, 180],
        ],
        [
          [80, 285],
          [100, 180],
        ],
      ],
      15,
    );
    expect(more).toBeUndefined();
    expect(found?.first).toBeCloseTo(600 - 20 * (120 / 105), 6);
    expect(found?.second).toBeCloseTo(600 + 20 * (120 / 105), 6);
    expect(
      drawn(
        [
          [
            [120, 285],
            [100, 180],
          ],
          [
            [80, 285],
            [100, 180],
          ],
        ],
        11,
      ),
    ).toEqual([]);
  });

  it("are of lines that lie wholly inside, or stop short of the line on no more than one side", () => {
    const at = (mouths: readonly [Place, Place], end: Place, reach = 0) =>
      drawn(
        [
          [mouths[0], end],
          [mouths[1], end],
        ],
        reach,
      );
    // Over each side of the box: their mouths within 3 mm outside, or further.
    const over = (by: number) =>
      [
        at(
          [
            [90, -by],
            [110, -by],
          ],
          [100, 90],
        ),
        at(
          [
            [200 + by, 140],
            [200 + by, 160],
          ],
          [110, 150],
        ),
        at(
          [
            [110, 300 + by],
            [90, 300 + by],
          ],
          [100, 210],
        ),
        at(
          [
            [-by, 160],
            [-by, 140],
          ],
          [90, 150],
        ),
      ].map((darts) => darts.map(({ first, second }) => [first, second]));
    expect(over(2.9)).toEqual([[[90, 110]], [[340, 360]], [[590, 610]], [[840, 860]]]);
    // Three are within three.
    expect(over(3).flat()).toHaveLength(4);
    expect(over(3.1)).toEqual([[], [], [], []]);
    // An end as near to the line as its mouth is no end inside.
    expect(
      at(
        [
          [30, 2],
          [60, 2],
        ],
        [45, 11],
      ),
    ).toEqual([]);
  });

  it("have legs as long, and open as wide, as those cut out", () => {
    const from = (one: Place, other: Place, end: Place) =>
      drawn([
        [one, end],
        [other, end],
      ]).length;
    // 60.8 and 78.1 mm are alike, 65.0 and 88.5 are not.
    expect([from([120, 300], [80, 300], [130, 240]), from([120, 300], [80, 300], [145, 240])]).toEqual([1, 0]);
    // 2 atan(1.8/100) and (1.7/100), 2 atan(76/100) and (77/100).
    expect([from([101.8, 300], [98.2, 300], [100, 200]), from([101.7, 300], [98.3, 300], [100, 200])]).toEqual([1, 0]);
    expect([from([176, 300], [24, 300], [100, 200]), from([177, 300], [23, 300], [100, 200])]).toEqual([1, 0]);
  });

  it("go over the start of the ring, from whichever leg is drawn first", () => {
    const legsTo = (end: Place) =>
      [
        [[30, 0], end],
        [[0, 30], end],
      ] as const;
    const [one, other] = legsTo([80, 90]);
    for (const both of [
      [one, other],
      [other, one],
    ])
      expect(drawn(both)).toMatchObject([{ first: 970, second: 30, apex: { x: 80, y: 90 } }]);
  });

  it("go on to a line by the nearest place that they come to, within 80 mm of the mouth", () => {
    // A notch below: legs that stop 15 above the lower edge come to it beside the notch, not beyond.
    const [found] = drawn(
      [
        [
          [60, 285],
          [60, 100],
        ],
        [
          [100, 285],
          [61, 100],
        ],
      ],
      20,
    );
    expect(found?.second).toBeCloseTo(640, 6);
    expect(found?.first).toBeCloseTo(500 + (200 - (100 + (15 * 39) / 185)), 6);
    // Under the lower edge of 300 a hook comes round again, at 320 and 340: the legs end on the first that they come to.
    const hooked = ringOf([0, 0], [200, 0], [200, 340], [80, 340], [80, 320], [180, 320], [180, 300], [0, 300]);
    const two: readonly (readonly Place[])[] = [
      [
        [130, 285],
        [120, 180],
      ],
      [
        [110, 285],
        [120, 180],
      ],
    ];
    const [first] = drawnDarts(hooked, legs(...two), 20);
    expect(first?.first).toBeCloseTo(800 + 180 - (130 + 150 / 105), 6);
    expect(first?.second).toBeCloseTo(800 + 180 - (110 - 150 / 105), 6);
    // One that runs nearly along the line comes to it too far off: there it stays at the nearest place.
    const [flat] = drawn(
      [
        [
          [100, 295],
          [20, 292],
        ],
        [
          [60, 285],
          [20, 291],
        ],
      ],
      20,
    );
    expect(flat).toBeUndefined();
  });

  it("that lie over others were found twice", () => {
    const dart = (first: number, second: number): TracedDart => ({ first, second, apex: p(0, 0), by: "outline" });
    const spans = (...darts: TracedDart[]) => withoutDoubles(ring, darts).map(({ first, second }) => [first, second]);
    expect(spans(dart(580, 620), dart(100, 130))).toEqual([
      [100, 130],
      [580, 620],
    ]);
    expect(spans(dart(580, 620), dart(585, 625))).toEqual([[580, 620]]);
    expect(spans(dart(580, 620), dart(570, 590))).toEqual([[580, 620]]);
    expect(spans(dart(580, 620), dart(500, 700))).toEqual([[580, 620]]);
    expect(spans(dart(980, 20), dart(990, 30))).toEqual([[980, 20]]);
    // One that goes round another, whose middle that is not.
    expect(spans(dart(510, 520), dart(500, 700))).toEqual([[510, 520]]);
    expect(spans(dart(510, 520), dart(521, 700))).toHaveLength(2);
    expect(spans(dart(580, 620), dart(620.5, 640))).toHaveLength(2);
  });
});
