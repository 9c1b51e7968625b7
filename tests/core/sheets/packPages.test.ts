/** The lay of pages against what no lay can beat: rectangles that fill two A4 windows, and that no order by size lays so. */
import { describe, expect, it } from "vitest";
import { FORMATS } from "../../../src/core/sheets/formats";
import { layPieces } from "../../../src/core/sheets/layPieces";
import { distances, laidRings, rectangle } from "./laid";

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
