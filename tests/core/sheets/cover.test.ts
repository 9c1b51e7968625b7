/** Which cells a ring touches, drawn by hand, and for any ring by clipping its sides at each cell. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { coverOf, evenLines, type Lines } from "../../../src/core/sheets/cover";
import { SAME_POINT } from "../../../src/core/tolerance";
import { anyAmount } from "../../support/amounts";
import { picture } from "./pictures";

type Corner = readonly [number, number];

const touched = (corners: readonly Corner[], columns: Lines, rows: Lines): readonly string[] =>
  picture(
    coverOf(
      corners.map(([x, y]) => ({ x, y })),
      columns,
      rows,
    ),
    columns.at.length - 1,
  );

/** On cells of 10 mm. */
const on = (columns: number, rows: number, ...corners: readonly Corner[]): readonly string[] =>
  touched(corners, evenLines(columns, 10), evenLines(rows, 10));

const box = (left: number, top: number, right: number, bottom: number): readonly Corner[] => [
  [left, top],
  [right, top],
  [right, bottom],
  [left, bottom],
];

describe("the cells of a ring", () => {
  it("are those of a slant that it cuts off, and none that it touches by a corner", () => {
    expect(on(4, 3, [0, 0], [30, 0], [0, 30])).toEqual(["###.", "##..", "#..."]);
  });

  it("are all that a flat slant runs through: 40 mm across and 10 mm down from the middle of a cell", () => {
    // The line from (5, 5) to (45, 15) crosses y = 10 at x = 25; its other side comes back 1 mm lower.
    expect(on(5, 3, [5, 5], [45, 15], [45, 16], [5, 6])).toEqual(["###..", "..###", "....."]);
  });

  it("are those inside too, and not those of a hollow", () => {
    expect(on(6, 5, [0, 0], [60, 0], [60, 50], [40, 50], [40, 20], [20, 20], [20, 50], [0, 50])).toEqual([
      "######",
      "######",
      "##..##",
      "##..##",
      "##..##",
    ]);
  });

  it("are those of both ends of a ring that crosses itself, and of one that goes round twice", () => {
    expect(on(4, 4, [1, 1], [39, 39], [39, 1], [1, 39])).toEqual(["#..#", "####", "####", "#..#"]);
    expect(on(4, 4, ...box(1, 1, 39, 39), ...box(1, 1, 39, 39))).toEqual(["####", "####", "####", "####"]);
  });

  it("are not those within a hole that the ring goes back round", () => {
    expect(on(5, 5, ...box(0, 0, 50, 50), [0, 0], [10, 10], [10, 40], [40, 40], [40, 10], [10, 10])).toEqual([
      "#####",
      "#...#",
      "#...#",
      "#...#",
      "#####",
    ]);
  });

  it("are the same whichever way round it goes, and wherever it begins", () => {
    const corners: readonly Corner[] = [
      [3, 4],
      [57, 12],
      [33, 27],
      [48, 46],
      [12, 38],
    ];
    const once = on(6, 5, ...corners);
    expect(on(6, 5, ...corners.toReversed())).toEqual(once);
    expect(on(6, 5, ...corners.slice(2), ...corners.slice(0, 2))).toEqual(once);
  });

  it("are those within the lines alone, of a ring that goes beyond them on every side", () => {
    expect(on(3, 2, ...box(-25, -35, 45, 55))).toEqual(["###", "###"]);
    expect(on(3, 3, ...box(-25, 11, -5, 19))).toEqual(["...", "...", "..."]);
    expect(on(3, 3, ...box(-25, -15, 5, 9))).toEqual(["#..", "...", "..."]);
    expect(on(3, 3, ...box(25, 21, 55, 59))).toEqual(["...", "...", "..#"]);
    expect(on(3, 3, ...box(11, 35, 19, 59))).toEqual(["...", "...", "..."]);
  });

  it("are not those that it runs along, within a hair", () => {
    const hair = SAME_POINT / 2;
    expect(on(3, 3, ...box(10, 10, 20, 20))).toEqual(["...", ".#.", "..."]);
    expect(on(3, 3, ...box(10 - hair, 10 - hair, 20 + hair, 20 + hair))).toEqual(["...", ".#.", "..."]);
    expect(on(3, 3, ...box(10 - 4 * hair, 10, 20, 20))).toEqual(["...", "##.", "..."]);
    expect(on(3, 3, ...box(10, 10 - 4 * hair, 20, 20))).toEqual([".#.", ".#.", "..."]);
    expect(on(3, 3, ...box(10, 10, 20 + 4 * hair, 20))).toEqual(["...", ".##", "..."]);
    expect(on(3, 3, ...box(10, 10, 20, 20 + 4 * hair))).toEqual(["...", ".#.", ".#."]);
  });

  it("are found for a sliver within one cell", () => {
    expect(on(3, 3, [12, 13], [17, 13.5], [12, 14])).toEqual(["...", ".#.", "..."]);
  });

  it("go by the lines where they are uneven: pages and the strips between them", () => {
    const zones: Lines = { at: [0, 180, 200, 360, 380, 560], even: null };
    expect(touched(box(0, 0, 180, 180), zones, zones)).toEqual(["#....", ".....", ".....", ".....", "....."]);
    expect(touched(box(185, 90, 365, 190), zones, zones)).toEqual([".###.", ".###.", ".....", ".....", "....."]);
    expect(touched(box(200, 380, 999, 560), zones, zones)).toEqual([".....", ".....", ".....", ".....", "..###"]);
  });
});

/** Liang and Barsky: the share of a stretch that lies within a box, clipped at each of its sides. */
function shareWithin([ax, ay]: Corner, [bx, by]: Corner, [left, top, right, bottom]: readonly number[]): number {
  let [from, to] = [0, 1];
  for (const [step, room] of [
    [ax - bx, ax - (left ?? 0)],
    [bx - ax, (right ?? 0) - ax],
    [ay - by, ay - (top ?? 0)],
    [by - ay, (bottom ?? 0) - ay],
  ] as const) {
    if (step < 0) from = Math.max(from, room / step);
    else if (step > 0) to = Math.min(to, room / step);
    else if (room < 0) return 0;
  }
  return Math.max(0, to - from);
}

/** How often a ring goes round a place, by adding up the angles at which its sides are seen. */
function roundsOf(ring: readonly Corner[], [x, y]: Corner): number {
  const angles = ring.map(([ax, ay], index) => {
    const [bx, by] = ring[(index + 1) % ring.length] ?? [0, 0];
    const [ux, uy, vx, vy] = [ax - x, ay - y, bx - x, by - y];
    return Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
  });
  return Math.round(angles.reduce((sum, angle) => sum + angle, 0) / (2 * Math.PI));
}

describe("the cells of any ring", () => {
  const anyRing = fc.array(fc.tuple(anyAmount(-15, 75), anyAmount(-15, 75)), { minLength: 3, maxLength: 7 });

  it("are those that a side of it runs through, and those whose middle it goes round", () => {
    fc.assert(
      fc.property(anyRing, (ring) => {
        const expected = Array.from({ length: 6 }, (_, row) =>
          Array.from({ length: 6 }, (_cell, column) => {
            const cell = [10 * column, 10 * row, 10 * column + 10, 10 * row + 10];
            const isCrossed = ring.some((a, index) => shareWithin(a, ring[(index + 1) % ring.length] ?? a, cell) > 0);
            return isCrossed || roundsOf(ring, [10 * column + 5, 10 * row + 5]) !== 0 ? "#" : ".";
          }).join(""),
        );
        expect(on(6, 6, ...ring)).toEqual(expected);
      }),
      { numRuns: 150 },
    );
  });

  it("are the same whether the lines are counted or looked up", () => {
    const even = evenLines(6, 10);
    const lookedUp: Lines = { at: even.at, even: null };
    fc.assert(
      fc.property(anyRing, (ring) => {
        expect(touched(ring, lookedUp, lookedUp)).toEqual(touched(ring, even, even));
      }),
      { numRuns: 60 },
    );
  });
});
