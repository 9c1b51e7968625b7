/** Turned by quarters and moved, by hand; and the choices that look arbitrary, by the figures their generator is known by. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import { CoreBug } from "../../../src/core/result";
import { ALL_QUARTERS, offSheet, onSheet, ringBounds } from "../../../src/core/sheets/placing";
import { cellDividing, cellsOver, placementOf, shapesOf } from "../../../src/core/sheets/shapes";
import { shuffled, steadyChooser } from "../../../src/core/sheets/steadyChoice";
import { SAME_POINT } from "../../../src/core/tolerance";
import { anyAmount } from "../../support/amounts";
import { rectangle, toLay } from "./laid";
import { drawn } from "./pictures";

describe("a point of a piece on the sheet", () => {
  // x goes towards y: (3, 5) to (-5, 3), to (-3, -5), to (5, -3).
  it.each([
    [0, 103, 205],
    [1, 95, 203],
    [2, 97, 195],
    [3, 105, 197],
  ] as const)("after %d quarters lies at %d, %d", (quarters, x, y) => {
    expect(onSheet({ quarters, dx: 100, dy: 200 }, piecePoint(3, 5))).toEqual({ x, y });
  });

  it("is found again from where it lies", () => {
    fc.assert(
      fc.property(fc.constantFrom(...ALL_QUARTERS), anyAmount(-9, 9), anyAmount(-9, 9), (quarters, x, y) => {
        const placement = { quarters, dx: 40, dy: -70 };
        const back = offSheet(placement, onSheet(placement, piecePoint(x, y)));
        expect(back.x).toBeCloseTo(x, 9);
        expect(back.y).toBeCloseTo(y, 9);
      }),
    );
  });
});

describe("the box of a ring", () => {
  const ring = (...corners: readonly (readonly [number, number])[]) => toLay("a", corners).ring;

  it("holds every point, the first and the last among them", () => {
    expect(ringBounds(ring([9, -3], [4, 2], [-1, 7]))).toEqual({ min: { x: -1, y: -3 }, max: { x: 9, y: 7 } });
    expect(ringBounds(ring([-1, 7], [4, 2], [9, -3]))).toEqual({ min: { x: -1, y: -3 }, max: { x: 9, y: 7 } });
  });

  it.each([
    ["no points", ring()],
    ["two points", ring([0, 0], [1, 1])],
    ["a point nowhere across", ring([0, 0], [1, 1], [Number.NaN, 0])],
    ["a point nowhere down", ring([0, 0], [1, 1], [0, Infinity])],
  ])("is none of %s", (_what, none) => {
    expect(() => ringBounds(none)).toThrow(CoreBug);
  });
});

describe("a piece as cells", () => {
  it("has cells of 5 mm, or as little more as divides a step evenly", () => {
    expect(cellDividing(180)).toBe(5);
    // 53 cells of 5 mm are 265 mm, 54 are 270.
    expect(cellDividing(267)).toBe(267 / 53);
    expect([cellDividing(4), cellDividing(9.9), cellDividing(10)]).toEqual([4, 9.9, 5]);
  });

  it("has as many as hold it, a hair apart", () => {
    expect([0, 5, 5 + SAME_POINT / 2, 5 + 2 * SAME_POINT, 23].map((length) => cellsOver(length, 5))).toEqual([
      1, 1, 1, 2, 5,
    ]);
  });

  it("is turned four ways, its corner at the first cell, with what is kept free about it", () => {
    const piece = toLay("l", [
      [-10, 40],
      [0, 40],
      [0, 45],
      [-5, 45],
      [-5, 55],
      [-10, 55],
    ]);
    const { key, area, turns } = shapesOf(piece, { width: 5, height: 5 }, 4);
    expect(key).toBe("l");
    // 10 by 15 less 5 by 10.
    expect(area).toBeCloseTo(100, 9);
    expect(turns.map(({ cells }) => drawn(cells))).toEqual([
      ["##", "#.", "#."],
      ["###", "..#"],
      [".#", ".#", "##"],
      ["#..", "###"],
    ]);
    expect(
      turns.map(({ quarters, dx, dy, width, height, marginX, marginY }) => [
        quarters,
        // Not to tell 0 from -0.
        dx + 0,
        dy + 0,
        width,
        height,
        marginX,
        marginY,
      ]),
    ).toEqual([
      [0, 10, -40, 10, 15, 1, 1],
      [1, 55, 10, 15, 10, 1, 1],
      [2, 0, 55, 10, 15, 1, 1],
      [3, -40, 0, 15, 10, 1, 1],
    ]);
    expect(turns.map(({ kept }) => drawn(kept))[0]).toEqual(["####", "####", "####", "###.", "###."]);
  });

  it("keeps its area wherever it lies, and turned over", () => {
    const corners = [
      [0, 0],
      [30, 0],
      [0, 40],
    ] as const;
    const far = corners.map(([x, y]) => [x + 500, y - 900] as const);
    for (const ring of [corners, far, corners.toReversed()])
      expect(shapesOf(toLay("a", ring), { width: 5, height: 5 }, 0).area).toBeCloseTo(600, 9);
  });

  it("is placed by the cell that its corner lies at", () => {
    const shapes = shapesOf(rectangle("a", 20, 10), { width: 5, height: 4 }, 0);
    const [turn] = shapes.turns;
    expect(turn).toMatchObject({ dx: 30, dy: -40 });
    expect(turn === undefined ? null : placementOf({ shapes, turn, x: 3, y: 7 }, { width: 5, height: 4 })).toEqual({
      key: "a",
      quarters: 0,
      dx: 30 + 15,
      dy: -40 + 28,
    });
  });
});

describe("steady choices", () => {
  it("are those of the minimal standard generator: from 1, its ten thousandth number is 399 268 537", () => {
    const choose = steadyChooser();
    // Asked below the modulus itself, the choice is the number, or one less by rounding.
    const numbers = Array.from({ length: 10_000 }, () => choose(2_147_483_647));
    expect(numbers[0]).toBeCloseTo(48_271, -1);
    expect(Math.abs((numbers.at(-1) ?? 0) - 399_268_537)).toBeLessThanOrEqual(1);
  });

  it("lie below what was asked, all of them met, alike each time", () => {
    const [one, other] = [steadyChooser(), steadyChooser()];
    const chosen = Array.from({ length: 200 }, () => one(5));
    expect(new Set(chosen)).toEqual(new Set([0, 1, 2, 3, 4]));
    expect(chosen).toEqual(Array.from({ length: 200 }, () => other(5)));
  });

  it("shuffle by taking one after the other out of those left", () => {
    const places = [2, 0, 1, 0];
    const asked: number[] = [];
    const choose = (below: number): number => {
      asked.push(below);
      return places[asked.length - 1] ?? 0;
    };
    const things = ["a", "b", "c", "d"];
    expect(shuffled(things, choose)).toEqual(["c", "a", "d", "b"]);
    expect(asked).toEqual([4, 3, 2, 1]);
    expect(things).toEqual(["a", "b", "c", "d"]);
  });
});
