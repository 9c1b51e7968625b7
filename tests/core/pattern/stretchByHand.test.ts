/** Stretches of straight edges, moved, turned, carried and drawn fuller: where each point and handle goes, by hand. */
import { describe, expect, it } from "vitest";
import { piecePoint, type PiecePoint } from "../../../src/core/geometry/point";
import { rigidMotion } from "../../../src/core/geometry/rigid";
import { mouth, straight } from "../../../src/core/pattern/namedEdges";
import { pointOf, type Edge, type NamedPoint, type Piece, type PointName } from "../../../src/core/pattern/piece";
import {
  bendStretch,
  endsOf,
  placeAlong,
  placeAt,
  smoothStretchAt,
  stretchAt,
  stretchFrom,
  stretchLength,
  stretchTo,
  withEndCarried,
  withEndMoved,
  withEndTurned,
  withFullness,
  withoutPoints,
} from "../../../src/core/pattern/seamStretch";
import { CoreBug } from "../../../src/core/result";
import { radians, radiansFromDegrees } from "../../../src/core/units";

type At = readonly [x: number, y: number];
const NECK = ["centreNeck", "bend000", "bend001", "sideNeck"] as const;
const at = ([x, y]: At): NamedPoint => ({ at: piecePoint(x, y), level: "bust" });

/** A neck through four places, its middle ones bends, and a straight rest. */
function through(places: readonly [At, At, At, At], from = 0): Piece {
  const edges: readonly Edge[] = [
    straight("centreNeck", "bend000", "neck"),
    straight("bend000", "bend001", "neck"),
    straight("bend001", "sideNeck", "neck"),
    straight("sideNeck", "sideWaist", "side"),
    straight("sideWaist", "centreNeck", "centre"),
  ];
  return {
    name: "front",
    points: {
      ...Object.fromEntries(NECK.map((name, i) => [name, at(places[i] ?? [0, 0])])),
      sideWaist: at([50, 300]),
    },
    edges: [...edges.slice(from), ...edges.slice(0, from)],
    darts: [],
    levelLines: [],
    centreOnFold: true,
  };
}

/** 100 long, its bends at 30 and 60. */
const line = through([
  [0, 0],
  [30, 0],
  [60, 0],
  [100, 0],
]);

function expectClose({ x, y }: PiecePoint, [wantedX, wantedY]: At, digits = 9): void {
  expect(x).toBeCloseTo(wantedX, digits);
  expect(y).toBeCloseTo(wantedY, digits);
}
/** The four places of the neck. */
const expectPlaces = (piece: Piece, wanted: readonly At[]): void =>
  NECK.forEach((name, i) => expectClose(pointOf(piece, name), wanted[i] ?? [Number.NaN, 0]));
/** Handles edge by edge; they are carried by a small step, and so good to a thousandth. */
function expectHandles(piece: Piece, wanted: readonly (readonly [At, At])[]): void {
  wanted.forEach(([c1, c2], i) => {
    const curve = piece.edges[i]?.curve;
    expect(curve).not.toBeNull();
    expectClose(curve?.c1 ?? piecePoint(Number.NaN, 0), c1, 2.3);
    expectClose(curve?.c2 ?? piecePoint(Number.NaN, 0), c2, 2.3);
  });
}

describe("a stretch", () => {
  it("goes from corner to corner over bends, wherever the ring begins", () => {
    expect([0, 1, 2, 3, 4].map((index) => stretchAt(line, index))).toEqual([[0, 1, 2], [0, 1, 2], [0, 1, 2], [3], [4]]);
    const begun = through(
      [
        [0, 0],
        [30, 0],
        [60, 0],
        [100, 0],
      ],
      1,
    );
    expect([0, 1, 4].map((index) => stretchAt(begun, index))).toEqual([
      [4, 0, 1],
      [4, 0, 1],
      [4, 0, 1],
    ]);
    expect(stretchFrom(begun, "centreNeck")).toEqual([4, 0, 1]);
    expect(stretchTo(begun, "sideNeck")).toEqual([4, 0, 1]);
    expect(stretchTo(begun, "centreNeck")).toEqual([3]);
    expect(endsOf(begun, [4, 0, 1])).toEqual({ from: "centreNeck", to: "sideNeck" });
    // Counted on past the end of the ring, or back before it.
    expect(stretchAt(line, 0)).toEqual(stretchAt(line, 2));
  });

  it("ends at the mouth of a dart and where another seam begins, bends or not", () => {
    const edges: readonly Edge[] = [
      straight("centreNeck", "bend000", "neck"),
      mouth("bend000", "bend001", "neck", "neckDart"),
      straight("bend001", "sideNeck", "neck"),
    ];
    const darted: Piece = { ...line, edges: [...edges, ...line.edges.slice(3)] };
    expect([0, 1, 2].map((index) => stretchAt(darted, index))).toEqual([[0], [1], [2]]);
    const seams: Piece = { ...line, edges: line.edges.with(1, straight("bend000", "bend001", "shoulder")) };
    expect([0, 1, 2].map((index) => stretchAt(seams, index))).toEqual([[0], [1], [2]]);
    const two: Piece = { ...line, edges: line.edges.with(2, straight("bend001", "sideNeck", "shoulder")) };
    expect([0, 1, 2].map((index) => stretchAt(two, index))).toEqual([[0, 1], [0, 1], [2]]);
  });

  it("of nothing but bends goes once round, and ends at the edge asked for", () => {
    const round: Piece = {
      ...line,
      points: { bend000: at([0, 0]), bend001: at([40, 0]), bend002: at([0, 30]) },
      edges: [
        straight("bend000", "bend001", "edge"),
        straight("bend001", "bend002", "edge"),
        straight("bend002", "bend000", "edge"),
      ],
    };
    expect([0, 1, 2].map((index) => stretchAt(round, index))).toEqual([
      [1, 2, 0],
      [2, 0, 1],
      [0, 1, 2],
    ]);
  });

  it("has a length, places along it, and its ends for what lies beyond", () => {
    expect(stretchLength(line, [0, 1, 2])).toBe(100);
    expect(stretchLength(line, [])).toBe(0);
    const along = (length: number) => placeAlong(line, [0, 1, 2], length);
    expect([-5, 0, 15, 30, 45, 60, 80, 100, 120].map(along)).toEqual([
      { index: 0, t: 0 },
      { index: 0, t: 0 },
      { index: 0, t: 0.5 },
      { index: 0, t: 1 },
      { index: 1, t: 0.5 },
      { index: 1, t: 1 },
      { index: 2, t: 0.5 },
      { index: 2, t: 1 },
      { index: 2, t: 1 },
    ]);
    expect(placeAt(line, [0, 1, 2], 0.45)).toEqual({ index: 1, t: 0.5 });
    expect(placeAt(line, [3], 0.45)).toEqual({ index: 3, t: 0.45 });
    expect(() => placeAlong(line, [], 3)).toThrow(CoreBug);
  });

  it("runs smooth as far as a corner of more than five degrees", () => {
    const turning = (first: number, second: number): Piece => {
      const [a, b] = [radiansFromDegrees(first), radiansFromDegrees(first + second)];
      return through([
        [0, 0],
        [30, 0],
        [30 + 30 * Math.cos(a), 30 * Math.sin(a)],
        [30 + 30 * Math.cos(a) + 40 * Math.cos(b), 30 * Math.sin(a) + 40 * Math.sin(b)],
      ]);
    };
    const parts = (piece: Piece) => [0, 1, 2].map((index) => smoothStretchAt(piece, index));
    const whole = [0, 1, 2];
    expect(parts(turning(4.9, -4.9))).toEqual([whole, whole, whole]);
    expect(parts(turning(5.1, 0))).toEqual([[0], [1, 2], [1, 2]]);
    expect(parts(turning(-5.1, 0))).toEqual([[0], [1, 2], [1, 2]]);
    expect(parts(turning(0, 5.1))).toEqual([[0, 1], [0, 1], [2]]);
    expect(parts(turning(20, -20))).toEqual([[0], [1], [2]]);
    expect(smoothStretchAt(line, 3)).toEqual([3]);
  });
});

describe("an end moved", () => {
  // What lies behind a share s of the line goes 3 s² − 2 s³ of the way: 0.216 at 0.3, 0.648 at 0.6; its slope is 6 s (1 − s),
  // 1.26 and 1.44 over 100.
  it("takes the line along by its share of the way, and the handles by the slope there", () => {
    const moved = withEndMoved(line, [0, 1, 2], "end", piecePoint(100, 10));
    expectPlaces(moved, [
      [0, 0],
      [30, 2.16],
      [60, 6.48],
      [100, 10],
    ]);
    expectHandles(moved, [
      [
        [10, 0],
        [20, 2.16 - 1.26],
      ],
      [
        [40, 2.16 + 1.26],
        [50, 6.48 - 1.44],
      ],
      [
        [60 + 40 / 3, 6.48 + (1.44 * 4) / 3],
        [100 - 40 / 3, 10],
      ],
    ]);
    expect(moved.edges.slice(3)).toEqual(line.edges.slice(3));
    expect(moved.points.sideWaist).toBe(line.points.sideWaist);
  });

  it("at the start does the same from the other end, aslant too", () => {
    const moved = withEndMoved(line, [0, 1, 2], "start", piecePoint(-5, 10));
    // 0.784 and 0.352 are left at 0.3 and 0.6.
    expectPlaces(moved, [
      [-5, 10],
      [30 - 5 * 0.784, 7.84],
      [60 - 5 * 0.352, 3.52],
      [100, 0],
    ]);
    expectHandles(moved, [
      [
        [5, 10],
        [20 - 5 * 0.784 - 0.63, 7.84 + 1.26],
      ],
    ]);
  });

  it("is carried by a motion of what lies beyond it", () => {
    const quarter = rigidMotion(piecePoint(0, 0), radiansFromDegrees(90));
    const carried = withEndCarried(line, [0, 1, 2], "end", quarter);
    // (60, 0) is turned to (0, 60), and goes 0.648 of the way there.
    expectPlaces(carried, [
      [0, 0],
      [30 - 30 * 0.216, 30 * 0.216],
      [60 - 60 * 0.648, 60 * 0.648],
      [0, 100],
    ]);
    const up = rigidMotion(piecePoint(0, 0), radians(0), 0, -10);
    expectPlaces(withEndCarried(line, [0, 1, 2], "start", up), [
      [0, -10],
      [30, -7.84],
      [60, -3.52],
      [100, 0],
    ]);
  });
});

describe("the direction at an end turned", () => {
  const angle = 0.1;
  const [across, down] = [1 - Math.cos(angle), Math.sin(angle)];

  it("goes in full for the handle there, and less and less for what lies further: u (1 − u)² of the whole", () => {
    const turned = withEndTurned(line, [0, 1, 2], "end", radians(angle));
    // The last edge, 40 long, is its own handle. u is 0.7 and 0.4: 100 · 0.7 · 0.09 and 100 · 0.4 · 0.36 are 6.3 and 14.4 of it.
    expectPlaces(turned, [
      [0, 0],
      [30 + 6.3 * across, -6.3 * down],
      [60 + 14.4 * across, -14.4 * down],
      [100, 0],
    ]);
    const { c2 } = turned.edges[2]?.curve ?? { c2: piecePoint(0, 0) };
    expectClose(c2, [100 - (40 / 3) * Math.cos(angle), -(40 / 3) * down], 1.3);
    const { c1 } = turned.edges[0]?.curve ?? { c1: piecePoint(0, 0) };
    expectClose(c1, [10, 0], 2);
  });

  it("does so from the start", () => {
    const turned = withEndTurned(line, [0, 1, 2], "start", radians(angle));
    // u is 0.3 and 0.6: 100 · 0.3 · 0.49 = 14.7, 100 · 0.6 · 0.16 = 9.6, of a handle of 30.
    expectPlaces(turned, [
      [0, 0],
      [30 - 14.7 * across, 14.7 * down],
      [60 - 9.6 * across, 9.6 * down],
      [100, 0],
    ]);
    const { c1 } = turned.edges[0]?.curve ?? { c1: piecePoint(0, 0) };
    expectClose(c1, [10 * Math.cos(angle), 10 * down], 1.3);
  });

  it("bends one edge alone, straight though it was", () => {
    const one = withEndTurned(line, [3], "start", radians(angle));
    expect(one.edges[3]?.curve).not.toBeNull();
    expectPlaces(one, [
      [0, 0],
      [30, 0],
      [60, 0],
      [100, 0],
    ]);
  });

  it("is the same piece where nothing is turned", () => {
    expect(withEndTurned(line, [0, 1, 2], "end", radians(0))).toBe(line);
  });
});

describe("a stretch drawn fuller", () => {
  // 50, 40 and 50 long: the bends lie at 5 and 9 fourteenths of it, where 4 s (1 − s) is 45∕49.
  const arched = through([
    [0, 0],
    [30, 40],
    [70, 40],
    [100, 0],
  ]);

  it("goes off its straight by as much more as it is off it already, most in the middle", () => {
    const fuller = 40 * (45 / 49);
    expectPlaces(withFullness(arched, [0, 1, 2], 1.5), [
      [0, 0],
      [30, 40 + fuller / 2],
      [70, 40 + fuller / 2],
      [100, 0],
    ]);
    // A quarter turn round, so that it goes down instead of across.
    const upright = through([
      [0, 0],
      [-40, 30],
      [-40, 70],
      [0, 100],
    ]);
    expectPlaces(withFullness(upright, [0, 1, 2], 0.5), [
      [0, 0],
      [-40 + fuller / 2, 30],
      [-40 + fuller / 2, 70],
      [0, 100],
    ]);
    // Not through the origin, and aslant: three by four by five, 10 off to the left of its way.
    const slanting = through([
      [10, 20],
      [32, 66],
      [62, 106],
      [100, 140],
    ]);
    const drawn = withFullness(slanting, [0, 1, 2], 2);
    const [was, now] = [slanting, drawn].map((piece) => pointOf(piece, "bend000"));
    expect((now?.x ?? 0) - (was?.x ?? 0)).toBeLessThan(0);
    // It moves square to its straight, 90 across and 120 down.
    expect(90 * ((now?.x ?? 0) - (was?.x ?? 0)) + 120 * ((now?.y ?? 0) - (was?.y ?? 0))).toBeCloseTo(0, 9);
  });

  it("keeps straight edges straight between corners, but not where the line ran smooth on over a bend", () => {
    expect(withFullness(arched, [0, 1, 2], 1.5).edges).toEqual(arched.edges);
    // At the second bend the line turns by so much; at the first by a tenth.
    const turning = (by: number): Piece =>
      through([
        [0, 0],
        [30, 3],
        [60, 3],
        [60 + 40 * Math.cos(by), 3 + 40 * Math.sin(by)],
      ]);
    const bentBy = (by: number) =>
      withFullness(turning(by), [0, 1, 2], 3)
        .edges.slice(0, 3)
        .map(({ curve }) => curve !== null);
    expect(bentBy(0.008)).toEqual([false, true, true]);
    expect(bentBy(-0.008)).toEqual([false, true, true]);
    expect(bentBy(0.01)).toEqual([false, false, false]);
    expect(bentBy(-0.01)).toEqual([false, false, false]);
  });

  it("is the same piece at its own fullness, and where there is no straight between its ends", () => {
    expect(withFullness(arched, [0, 1, 2], 1)).toBe(arched);
    const closed = through([
      [0, 0],
      [30, 40],
      [70, 40],
      [0, 0],
    ]);
    expect(withFullness(closed, [0, 1, 2], 2)).toBe(closed);
  });
});

describe("a stretch moved by any field", () => {
  it("stays straight where the field is a shift, but where it is to be bent", () => {
    const shifted = bendStretch(line, [0, 1, 2], ({ x, y }) => piecePoint(x + 3, y - 4));
    expectPlaces(shifted, [
      [3, -4],
      [33, -4],
      [63, -4],
      [103, -4],
    ]);
    expect(shifted.edges).toEqual(line.edges);
  });

  it("leaves out points that have gone", () => {
    const names: readonly PointName[] = ["bend000", "underarm"];
    expect(Object.keys(withoutPoints(line, names).points)).toEqual(["centreNeck", "bend001", "sideNeck", "sideWaist"]);
    expect(withoutPoints(line, names).edges).toBe(line.edges);
  });
});
