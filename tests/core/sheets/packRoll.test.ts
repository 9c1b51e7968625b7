/** The lay of a roll against what no lay can beat: rectangles that fill a stretch of it, cell by cell. */
import { describe, expect, it } from "vitest";
import { packRoll } from "../../../src/core/sheets/packRoll";
import { shapesOf, type Laid } from "../../../src/core/sheets/shapes";
import { rectangle } from "./laid";

const CELL = { width: 5, height: 5 };
type Sides = readonly [number, number];

/** Rectangles of so many cells, `gap` mm apart. */
const pack = (across: number, tries: number, sides: readonly Sides[], gap = 0): readonly Laid[] =>
  packRoll(
    sides.map(([width, height], index) => shapesOf(rectangle(`${index}`, width * 5, height * 5), CELL, gap)),
    { across },
    tries,
  );
const lengthOf = (lying: readonly Laid[]): number => Math.max(...lying.map(({ turn, y }) => y + turn.cells.height));
const boxes = (lying: readonly Laid[]) =>
  lying.map(({ shapes: { key }, x, y, turn: { cells } }) => [key, x, y, cells.width, cells.height]);

describe("pieces on a roll", () => {
  it("are laid each with its lower end as high as it goes, and there as far left, so that most room is at the end", () => {
    // On 20 across all orders are 9 long. By their longer sides 8 by 2 comes before 8 by 7: its end is at 2, not at 9.
    expect(
      boxes(
        pack(20, 0, [
          [8, 2],
          [12, 9],
          [8, 7],
        ]),
      ),
    ).toEqual([
      ["1", 0, 0, 12, 9],
      ["0", 12, 0, 8, 2],
      ["2", 12, 2, 8, 7],
    ]);
  });

  it("lie in any turn that goes on the roll", () => {
    expect(boxes(pack(10, 0, [[4, 18]]))).toEqual([["0", 0, 0, 4, 18]]);
    expect(boxes(pack(18, 0, [[4, 18]]))).toEqual([["0", 0, 0, 18, 4]]);
  });

  it("lie all upright where that is shorter, though each by itself ends higher lying", () => {
    // 5 by 6 on 10 across: lying one below the other 10, upright side by side 6.
    expect(
      lengthOf(
        pack(10, 0, [
          [5, 6],
          [5, 6],
        ]),
      ),
    ).toBe(6);
  });

  it("lie no nearer than the gap: a cell between them for up to 5 mm, two for more", () => {
    const spans = (gap: number) =>
      pack(
        40,
        0,
        [
          [9, 6],
          [9, 6],
        ],
        gap,
      ).map(({ x, turn }) => [x, x + turn.cells.width]);
    for (const [gap, cells] of [
      [0, 0],
      [5, 1],
      [5.1, 2],
    ] as const) {
      const [[, end] = [], [start] = []] = spans(gap);
      expect((start ?? Number.NaN) - (end ?? Number.NaN)).toBe(cells);
    }
  });

  it.each<readonly [number, number, readonly Sides[]]>([
    [
      18,
      14,
      [
        [5, 7],
        [4, 7],
        [3, 7],
        [6, 7],
        [4, 7],
        [5, 7],
        [3, 7],
        [6, 7],
      ],
    ],
    [
      17,
      14,
      [
        [5, 4],
        [4, 4],
        [9, 6],
        [9, 4],
        [4, 5],
        [4, 5],
        [8, 3],
        [8, 6],
      ],
    ],
    [
      22,
      24,
      [
        [6, 4],
        [11, 4],
        [5, 4],
        [3, 6],
        [3, 14],
        [19, 10],
        [19, 10],
      ],
    ],
    [
      18,
      26,
      [
        [6, 8],
        [12, 8],
        [3, 14],
        [15, 14],
        [4, 4],
        [3, 4],
        [11, 4],
      ],
    ],
    [
      16,
      22,
      [
        [8, 7],
        [8, 4],
        [8, 7],
        [8, 4],
        [5, 6],
        [5, 5],
        [6, 11],
        [5, 11],
      ],
    ],
    [
      17,
      16,
      [
        [7, 6],
        [7, 6],
        [7, 4],
        [10, 7],
        [10, 5],
        [4, 4],
        [6, 4],
      ],
    ],
    [
      18,
      21,
      [
        [8, 6],
        [8, 5],
        [10, 6],
        [10, 5],
        [3, 4],
        [3, 6],
        [5, 10],
        [10, 10],
      ],
    ],
  ])("fill %d by %d cells in one of the orders that are tried first", (across, down, sides) => {
    expect(lengthOf(pack(across, 0, sides))).toBe(down);
  });

  it.each<readonly [number, number, readonly Sides[]]>([
    [
      22,
      15,
      [
        [13, 8],
        [13, 7],
        [4, 4],
        [4, 11],
        [5, 3],
        [5, 7],
        [5, 5],
      ],
    ],
    [
      17,
      23,
      [
        [10, 6],
        [10, 6],
        [7, 3],
        [7, 9],
        [4, 3],
        [4, 8],
        [9, 11],
        [4, 11],
      ],
    ],
    [
      24,
      27,
      [
        [9, 17],
        [9, 5],
        [15, 16],
        [15, 6],
        [10, 5],
        [7, 5],
        [7, 5],
      ],
    ],
    [
      24,
      25,
      [
        [5, 4],
        [5, 6],
        [5, 10],
        [14, 10],
        [13, 3],
        [13, 12],
        [11, 5],
        [11, 10],
      ],
    ],
    [
      21,
      23,
      [
        [13, 13],
        [4, 13],
        [4, 3],
        [4, 10],
        [6, 10],
        [4, 10],
        [4, 10],
        [7, 10],
      ],
    ],
    [
      16,
      19,
      [
        [4, 11],
        [7, 11],
        [5, 6],
        [5, 5],
        [7, 4],
        [7, 4],
        [5, 8],
        [4, 8],
      ],
    ],
    [
      18,
      21,
      [
        [4, 5],
        [4, 4],
        [10, 9],
        [4, 9],
        [10, 12],
        [4, 12],
        [4, 8],
        [4, 4],
      ],
    ],
    [
      25,
      17,
      [
        [9, 3],
        [7, 3],
        [10, 14],
        [6, 14],
        [4, 3],
        [5, 3],
        [9, 10],
        [9, 4],
      ],
    ],
  ])("fill %d by %d cells, their order changed again and again", (across, down, sides) => {
    expect(sides.reduce((sum, [width, height]) => sum + width * height, 0)).toBe(across * down);
    expect(lengthOf(pack(across, 40, sides))).toBe(down);
  });
});
