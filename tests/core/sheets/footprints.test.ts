/** The pages of a shape for every place that it can have on them, by hand: windows of 190 by 277 mm, from 180 and 267 mm on. */
import { describe, expect, it } from "vitest";
import { footprintsOf, type Footprint } from "../../../src/core/sheets/footprints";
import type { ToLay } from "../../../src/core/sheets/layout";
import { shapesOf } from "../../../src/core/sheets/shapes";
import { rectangle, toLay } from "./laid";

const grid = { x: { shown: 190, step: 180 }, y: { shown: 277, step: 267 } };
const cell = { width: 5, height: 267 / 53 };
const perPage = { x: 36, y: 53 };

/** Of the piece as it is. */
function footprints(piece: ToLay): readonly Footprint[] {
  const [shape] = shapesOf(piece, cell, 5).turns;
  if (shape === undefined) throw new Error("no shape");
  return footprintsOf(piece, shape, grid, cell, perPage);
}
const evens = (from: number, to: number): readonly number[] =>
  Array.from({ length: (to - from) / 2 + 1 }, (_, index) => from + 2 * index);
const offsets = (xs: readonly number[], ys: readonly number[]) => ys.flatMap((y) => xs.map((x) => ({ x, y })));
const pagesAt = (all: readonly Footprint[], x: number, y: number) =>
  all
    .find((one) => one.offsets.some((offset) => offset.x === x && offset.y === y))
    ?.pages.map(({ column, row }) => [column, row]);

describe("the pages of a shape", () => {
  it("are one, two or four of a square of 100 mm: as many as it reaches over, at every second cell", () => {
    // Across it ends on the first page up to 90 mm, 18 cells; down up to 177 mm, 35.1 cells.
    const [left, right, upper, lower] = [evens(0, 18), evens(20, 34), evens(0, 34), evens(36, 52)];
    const [first, beside, below, both] = [
      { column: 0, row: 0 },
      { column: 1, row: 0 },
      { column: 0, row: 1 },
      { column: 1, row: 1 },
    ];
    expect(footprints(rectangle("a", 100, 100))).toEqual([
      { pages: [first], columns: 1, rows: 1, offsets: offsets(left, upper) },
      { pages: [first, beside], columns: 2, rows: 1, offsets: offsets(right, upper) },
      { pages: [first, below], columns: 1, rows: 2, offsets: offsets(left, lower) },
      { pages: [first, beside, below, both], columns: 2, rows: 2, offsets: offsets(right, lower) },
    ]);
  });

  it("leave out one that only the hollow of an L lies on", () => {
    const all = footprints(
      toLay("l", [
        [0, 0],
        [150, 0],
        [150, 40],
        [40, 40],
        [40, 200],
        [0, 200],
      ]),
    );
    // At 100 mm its upper arm goes over to 250, its other arm ends at 140; at 100.8 mm down the one ends at 140.8, the other at 300.8.
    expect(pagesAt(all, 20, 20)).toEqual([
      [0, 0],
      [1, 0],
      [0, 1],
    ]);
    // At 170 mm the arm down ends at 210, on both.
    expect(pagesAt(all, 34, 20)).toEqual([
      [0, 0],
      [1, 0],
      [0, 1],
      [1, 1],
    ]);
    expect(pagesAt(all, 8, 14)).toEqual([[0, 0]]);
    expect(pagesAt(all, 8, 16)).toEqual([
      [0, 0],
      [0, 1],
    ]);
  });

  it("are all that a very long strip goes over: 4000 mm need 1 and (4000 − 190) / 180 more", () => {
    const [first] = footprints(rectangle("s", 4000, 60));
    expect(first).toMatchObject({ columns: 23, rows: 1 });
    expect(first?.pages).toHaveLength(23);
  });
});
