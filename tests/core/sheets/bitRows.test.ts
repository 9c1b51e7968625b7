/** Cells of a sheet as bits, held against marks looked at one by one. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cellsNear, emptyRows, grown, isFree, rowsFrom, stamp, type BitRows } from "../../../src/core/sheets/bitRows";
import { drawn, fromPicture } from "./pictures";

/** Marks of any size, many of them set. */
const anyMarks = (mostWide: number, mostHigh: number): fc.Arbitrary<readonly string[]> =>
  fc
    .record({ width: fc.integer({ min: 1, max: mostWide }), height: fc.integer({ min: 1, max: mostHigh }) })
    .chain(({ width, height }) =>
      fc.array(fc.string({ unit: fc.constantFrom(".", ".", "#"), minLength: width, maxLength: width }), {
        minLength: height,
        maxLength: height,
      }),
    );

const isMarked = (picture: readonly string[], x: number, y: number): boolean => picture[y]?.[x] === "#";

/** A shape put on a sheet mark by mark, what falls off it left out. */
function stamped(sheet: readonly string[], shape: readonly string[], x: number, y: number): readonly string[] {
  return sheet.map((line, row) =>
    line
      .split("")
      .map((mark, column) => (mark === "#" || isMarked(shape, column - x, row - y) ? "#" : "."))
      .join(""),
  );
}

const meets = (sheet: readonly string[], shape: readonly string[], x: number, y: number): boolean =>
  shape.some((line, v) => line.split("").some((mark, u) => mark === "#" && isMarked(sheet, x + u, y + v)));

describe("rows of bits", () => {
  it("hold 32 cells to a word, each row beginning a word of its own", () => {
    const marks = new Uint8Array(66);
    for (const cell of [0, 32, 33 + 31]) marks[cell] = 1;
    const rows: BitRows = { width: 33, height: 2, words: 2, bits: Uint32Array.from([1, 1, 2 ** 31, 0]) };
    expect(rowsFrom(marks, 33)).toEqual(rows);
  });

  it.each([
    [1, 1],
    [32, 1],
    [33, 2],
    [64, 2],
    [65, 3],
  ])("begin empty: %d cells take %d words", (width, words) => {
    expect(emptyRows(width, 3)).toEqual({ width, height: 3, words, bits: new Uint32Array(3 * words) });
  });
});

describe("a shape of cells on a sheet", () => {
  it("is free where no cell of it lies on a marked one", () => {
    fc.assert(
      fc.property(anyMarks(75, 20), anyMarks(40, 12), (sheet, shape) => {
        const [on, own] = [fromPicture(sheet), fromPicture(shape)];
        for (let y = 0; y + own.height <= on.height; y += 1)
          for (let x = 0; x + own.width <= on.width; x += 1)
            expect(isFree(on, own, x, y)).toBe(!meets(sheet, shape, x, y));
      }),
      { numRuns: 40 },
    );
  });

  it("is not free for one cell alone, wherever it is on the shape", () => {
    // 70 by 11 cells, all marked: three words wide, and rows beyond those that are asked first.
    const whole = fromPicture(Array.from({ length: 11 }, () => "#".repeat(70)));
    for (const [x, y] of [
      [3, 2],
      [34, 9],
      [35, 3],
      [66, 12],
      [72, 5],
    ] as const) {
      const sheet = emptyRows(80, 15);
      expect(isFree(sheet, whole, 3, 2)).toBe(true);
      stamp(sheet, fromPicture(["#"]), x, y);
      expect(isFree(sheet, whole, 3, 2)).toBe(false);
    }
  });

  it("is put down mark by mark, what lies off the sheet left out, what was there left there", () => {
    const place = fc.integer({ min: -45, max: 80 });
    fc.assert(
      fc.property(anyMarks(75, 8), anyMarks(40, 6), place, fc.integer({ min: -8, max: 10 }), (sheet, shape, x, y) => {
        const on = fromPicture(sheet);
        stamp(on, fromPicture(shape), x, y);
        expect(drawn(on)).toEqual(stamped(sheet, shape, x, y));
      }),
      { numRuns: 150 },
    );
  });
});

describe("cells nearer than a gap", () => {
  const count = (...of: Parameters<typeof cellsNear>): number => cellsNear(...of).length;

  it("are the cell itself where there is no gap", () => {
    expect(cellsNear(5, 5, 0).map(([dx, dy]) => [Math.abs(dx), Math.abs(dy)])).toEqual([[0, 0]]);
  });

  it("are those beside it, of a gap of a cell: two further on are a whole cell away", () => {
    expect(cellsNear(5, 5, 5)).toEqual([-1, 0, 1].flatMap((dy) => [-1, 0, 1].map((dx) => [dx, dy])));
  });

  it("are further ones of a greater gap, the corners last: 5 and 5 mm away is 7.07 mm", () => {
    expect(count(5, 5, 5.1)).toBe(25 - 4);
    expect(count(5, 5, 7.07)).toBe(25 - 4);
    expect(count(5, 5, 7.08)).toBe(25);
  });

  it("are not those exactly so far: 3 and 4 mm away is 5 mm", () => {
    expect(cellsNear(3, 4, 5).filter(([dx, dy]) => Math.abs(dx) === 2 && Math.abs(dy) === 2)).toEqual([]);
    expect(count(3, 4, 5)).toBe(25 - 4);
    expect(count(3, 4, 5.001)).toBe(25);
  });

  it("go by each side of the cell: 4 by 6 mm and 9 mm about", () => {
    // Three across are 8 mm away, two down 6 mm; 8 and 6 mm is 10 mm, 4 and 6 mm is 7.2 mm.
    const near = cellsNear(4, 6, 9);
    expect(near).toHaveLength(7 * 5 - 4);
    expect(near).toContainEqual([3, 1]);
    expect(near).toContainEqual([-2, 2]);
    expect(near).not.toContainEqual([3, 2]);
  });

  it("are what a shape grows by", () => {
    const cross = [
      [0, 0],
      [0, -1],
      [-1, 0],
      [2, 0],
    ] as const;
    expect(drawn(grown(fromPicture(["#.", ".#"]), cross, 2, 1))).toEqual(["..#...", ".####.", "..##.#", "......"]);
  });
});
