/** The lay of pages against what no lay can beat: rectangles that fill two A4 windows, and that no order by size lays so. */
import { describe, expect, it } from "vitest";
import { footprintsOf } from "../../../src/core/sheets/footprints";
import { FORMATS } from "../../../src/core/sheets/formats";
import { layPieces } from "../../../src/core/sheets/layPieces";
import type { ToLay } from "../../../src/core/sheets/layout";
import { packPages } from "../../../src/core/sheets/packPages";
import { onSheet } from "../../../src/core/sheets/placing";
import { placementOf, shapesOf } from "../../../src/core/sheets/shapes";
import { tilesFor } from "../../../src/core/sheets/tiling";
import { distances, laidRings, rectangle, toLay } from "./laid";

/** 190 by 277 mm: 38 by 54 cells of 5 and 267 / 53 mm, and a little more. */
const ACROSS = 5;
const DOWN = 267 / 53;
type Sides = readonly [number, number];

describe("rectangles that fill two pages", () => {
  it.each<{ readonly sides: readonly Sides[] }>([
    {
      sides: [
        [28, 44],
        [28, 10],
        [10, 14],
        [10, 40],
        [30, 54],
        [8, 54],
      ],
    },
    {
      sides: [
        [8, 22],
        [8, 32],
        [30, 42],
        [30, 12],
        [28, 54],
        [10, 54],
      ],
    },
    {
      sides: [
        [10, 46],
        [10, 8],
        [28, 10],
        [28, 44],
        [10, 42],
        [10, 12],
        [28, 28],
        [28, 26],
      ],
    },
    {
      sides: [
        [22, 42],
        [22, 12],
        [16, 18],
        [16, 36],
        [6, 24],
        [6, 30],
        [32, 10],
        [32, 44],
      ],
    },
    {
      sides: [
        [24, 44],
        [24, 10],
        [14, 14],
        [14, 40],
        [12, 44],
        [12, 10],
        [26, 30],
        [26, 24],
      ],
    },
  ])("are found to: $sides.length of them", ({ sides }) => {
    expect(sides.reduce((sum, [width, height]) => sum + width * height, 0)).toBe(2 * 38 * 54);
    const pieces = sides.map(([width, height], index) => rectangle(`${index}`, width * ACROSS, height * DOWN));
    const layout = layPieces(pieces, { format: FORMATS.A4, margin: 10, overlap: 10, gap: 0 });
    if (!layout.ok) throw new Error(layout.failure.code);
    expect(layout.value.tiles).toHaveLength(2);
    expect(Math.min(...distances(laidRings(pieces, layout.value)))).toBeGreaterThan(-1e-6);
  });
});

describe("pieces in the shape of an L", () => {
  const grid = { x: { shown: 190, step: 180 }, y: { shown: 277, step: 267 } };
  const cell = { width: ACROSS, height: DOWN };
  const perPage = { x: 36, y: 53 };
  const [columns, rows] = [6, 12];
  /** Arms 60 mm wide. */
  const ell = (key: string, width: number, height: number): ToLay =>
    toLay(key, [
      [0, 0],
      [width, 0],
      [width, 60],
      [60, 60],
      [60, height],
      [0, height],
    ]);
  const pieces = [ell("a", 300, 400), ell("b", 320, 380), ell("c", 260, 420), rectangle("d", 100, 300)];
  const laid = (tries: number) =>
    packPages(
      pieces.map((piece) => {
        const shapes = shapesOf(piece, cell, 5);
        return {
          shapes,
          turns: shapes.turns.map((shape) => ({ shape, footprints: footprintsOf(piece, shape, grid, cell, perPage) })),
        };
      }),
      { grid, cell, perPage, columns, rows },
      tries,
    );

  it.each([0, 40])("need the very pages that are counted for each of them, after %d tries", (tries) => {
    const { lying, pages, area } = laid(tries);
    expect(lying.map(({ shapes }) => shapes.key).toSorted()).toEqual(["a", "b", "c", "d"]);
    const counted = new Set<number>();
    for (const one of lying) {
      const piece = pieces.find(({ key }) => key === one.shapes.key);
      const ring = (piece?.ring ?? []).map((point) => onSheet(placementOf(one, cell), point));
      const { tiles, skipped } = tilesFor([ring], grid);
      const needed = tiles.map(({ column, row }) => (row + skipped.rows) * columns + column + skipped.columns);
      expect(one.pages.toSorted((p, q) => p - q)).toEqual(needed);
      for (const page of needed) counted.add(page);
    }
    expect(pages).toBe(counted.size);
    // The sheet from its corner to the last of them each way.
    const across = Math.max(...[...counted].map((page) => (page % columns) + 1));
    const down = Math.max(...[...counted].map((page) => Math.floor(page / columns) + 1));
    expect(area).toBeCloseTo(across * 180 * down * 267, 6);
  });
});
