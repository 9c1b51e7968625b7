/** Where two shapes of cells meet, mark by mark; and the pages that a rectangle needs, wherever it lies on them. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clashOf, runsOf } from "../../../src/core/sheets/clash";
import { Clashes, pageBitsOf } from "../../../src/core/sheets/clashes";
import { footprintsOf, STRIDE } from "../../../src/core/sheets/footprints";
import { packPages } from "../../../src/core/sheets/packPages";
import { packRoll } from "../../../src/core/sheets/packRoll";
import { shapesOf, type Laid, type Shape } from "../../../src/core/sheets/shapes";
import { rectangle, toLay } from "./laid";
import { fromPicture } from "./pictures";

const shapeOf = (cells: readonly string[], kept = cells, margin = 0): Shape => {
  const own = fromPicture(cells);
  return {
    quarters: 0,
    dx: 0,
    dy: 0,
    width: own.width,
    height: own.height,
    cells: own,
    kept: fromPicture(kept),
    marginX: margin,
    marginY: margin,
  };
};

const meets = (one: readonly string[], other: readonly string[], dx: number, dy: number): boolean =>
  other.some((line, v) => line.split("").some((mark, u) => mark === "#" && one[v + dy]?.[u + dx] === "#"));

const anyPicture = (mostWide: number, mostHigh: number): fc.Arbitrary<readonly string[]> =>
  fc
    .record({ width: fc.integer({ min: 1, max: mostWide }), height: fc.integer({ min: 1, max: mostHigh }) })
    .chain(({ width, height }) =>
      fc.array(fc.string({ unit: fc.constantFrom(".", ".", ".", "#"), minLength: width, maxLength: width }), {
        minLength: height,
        maxLength: height,
      }),
    );

describe("runs of cells", () => {
  it("are their first and last cells, row by row, over the ends of words", () => {
    const row = `##.#${".".repeat(26)}####`;
    const { rows, ends } = runsOf(fromPicture([row, ".".repeat(34), `#${".".repeat(33)}`]));
    expect([...rows]).toEqual([0, 6, 6, 8]);
    expect([...ends]).toEqual([0, 1, 3, 3, 30, 33, 0, 0]);
  });
});

describe("two shapes", () => {
  it("clash at the offsets at which a cell of one lies on one of the other", () => {
    fc.assert(
      fc.property(anyPicture(40, 7), anyPicture(40, 7), (one, other) => {
        const [laid, next] = [shapeOf(one), shapeOf(other)];
        const { left, top, height, words, planes } = clashOf(laid, next, runsOf(laid.kept), runsOf(next.cells));
        expect([left, top, height]).toEqual([1 - next.width, 1 - next.height, laid.height + next.height - 1]);
        expect(planes).toHaveLength(STRIDE);
        for (let row = 0; row < height; row += 1)
          for (let column = 0; column < laid.width + next.width - 1; column += 1) {
            const at = Math.floor(column / STRIDE);
            const word = planes[column % STRIDE]?.[row * words + Math.floor(at / 32)] ?? 0;
            expect(Math.floor(word / 2 ** (at % 32)) % 2 === 1).toBe(meets(one, other, left + column, top + row));
          }
      }),
      { numRuns: 20 },
    );
  });

  it("clash on a page of the sheet where one lies on the other's room, or runs off the sheet", () => {
    const place = fc.integer({ min: -3, max: 45 });
    fc.assert(
      fc.property(
        anyPicture(30, 6),
        fc.array(fc.record({ own: anyPicture(30, 6), x: place, y: fc.integer({ min: -3, max: 22 }) }), {
          maxLength: 2,
        }),
        fc.record({ x: fc.integer({ min: 1, max: 70 }), y: fc.integer({ min: 1, max: 12 }) }),
        fc.record({ column: fc.integer({ min: 0, max: 1 }), row: fc.integer({ min: 0, max: 1 }) }),
        fc.integer({ min: 0, max: 2 }),
        (cells, laid, perPage, { column, row }, margin) => {
          const sheet = { width: 75, height: 20 };
          const next = shapeOf(cells);
          const lying = laid.map(({ own, x, y }): Laid => {
            const turn = shapeOf(own, own, margin);
            return { shapes: { key: "a", area: 1, turns: [turn] }, turn, x, y };
          });
          const clashes = new Clashes(perPage, sheet);
          // Asked again, what is remembered says the same.
          const blocked = clashes.on(lying, next, column, row);
          expect(clashes.on(lying, next, column, row)).toEqual(blocked);
          const { across, down, words } = pageBitsOf(perPage);
          expect([across, down]).toEqual([Math.ceil(perPage.x / STRIDE), Math.ceil(perPage.y / STRIDE)]);
          for (let line = 0; line < down; line += 1)
            for (let at = 0; at < across; at += 1) {
              const [x, y] = [column * perPage.x + STRIDE * at, row * perPage.y + STRIDE * line];
              const isOff = x + next.width > sheet.width || y + next.height > sheet.height;
              const isMet = laid.some((one) => meets(one.own, cells, x - one.x + margin, y - one.y + margin));
              const word = blocked[line * words + Math.floor(at / 32)] ?? 0;
              expect(Math.floor(word / 2 ** (at % 32)) % 2 === 1).toBe(isOff || isMet);
            }
        },
      ),
      { numRuns: 30 },
    );
  });
});

/** Windows of 200 mm that begin every 180 mm, 36 cells of 5 mm. */
const grid = { x: { shown: 200, step: 180 }, y: { shown: 200, step: 180 } };
const cell = { width: 5, height: 5 };
const perPage = { x: 36, y: 36 };
const field = { grid, cell, perPage, columns: 3, rows: 3 };

const evens = (from: number, to: number): readonly number[] =>
  Array.from({ length: (to - from) / 2 + 1 }, (_, index) => from + 2 * index);
const offsets = (xs: readonly number[], ys: readonly number[]) => ys.flatMap((y) => xs.map((x) => ({ x, y })));

describe("the pages that a rectangle of 100 by 50 mm needs", () => {
  it("are one as far as it lies within the window, and those beside it beyond", () => {
    const piece = rectangle("a", 100, 50);
    const [shape] = shapesOf(piece, cell, 0).turns;
    if (shape === undefined) throw new Error("no shape");
    // It reaches over the window's 200 mm from beyond 100 mm across, 20 cells, and 150 mm down, 30 cells.
    const [near, far] = [evens(0, 20), evens(22, 34)];
    const [above, below] = [evens(0, 30), evens(32, 34)];
    const page = (column: number, row: number) => ({ column, row });
    expect(footprintsOf(piece, shape, grid, cell, perPage)).toEqual([
      { pages: [page(0, 0)], columns: 1, rows: 1, offsets: offsets(near, above) },
      { pages: [page(0, 0), page(1, 0)], columns: 2, rows: 1, offsets: offsets(far, above) },
      { pages: [page(0, 0), page(0, 1)], columns: 1, rows: 2, offsets: offsets(near, below) },
      {
        pages: [page(0, 0), page(1, 0), page(0, 1), page(1, 1)],
        columns: 2,
        rows: 2,
        offsets: offsets(far, below),
      },
    ]);
  });

  it("leave out one that only a hollow or a corner of it lies over", () => {
    // A right angle whose two arms are 20 mm wide: from 100 mm on, the page across the corner shows none of it.
    const piece = toLay("l", [
      [0, 0],
      [180, 0],
      [180, 20],
      [20, 20],
      [20, 180],
      [0, 180],
    ]);
    const [shape] = shapesOf(piece, cell, 0).turns;
    if (shape === undefined) throw new Error("no shape");
    const found = footprintsOf(piece, shape, grid, cell, perPage);
    const at = (x: number, y: number) =>
      found
        .find((one) => one.offsets.some((offset) => offset.x === x && offset.y === y))
        ?.pages.map(({ column, row }) => [column, row]);
    expect(at(20, 20)).toEqual([
      [0, 0],
      [1, 0],
      [0, 1],
    ]);
    expect(at(4, 4)).toEqual([[0, 0]]);
    expect(at(4, 6)).toEqual([
      [0, 0],
      [0, 1],
    ]);
    expect(found.flatMap((one) => one.offsets)).toHaveLength(18 * 18);
  });
});

const candidate = (...sizes: readonly (readonly [number, number])[]) =>
  sizes.map(([width, height], index) => {
    const piece = rectangle(`p${index}`, width, height);
    const shapes = shapesOf(piece, cell, 0);
    const turns = shapes.turns.map((shape) => ({
      shape,
      footprints: footprintsOf(piece, shape, grid, cell, perPage),
    }));
    return { shapes, turns };
  });

describe("pieces on pages", () => {
  it("are told by how many pages they take, how much of the sheet, and how full the pages are", () => {
    expect(packPages(candidate([100, 50]), field, 5)).toMatchObject({ pages: 1, area: 180 * 180, fullness: 5000 ** 2 });
    // 7500 mm² on either of two pages.
    expect(packPages(candidate([300, 50]), field, 5)).toMatchObject({
      pages: 2,
      area: 2 * 180 * 180,
      fullness: 2 * 7500 ** 2,
    });
    const two = packPages(candidate([100, 50], [120, 60]), field, 5);
    expect(two).toMatchObject({ pages: 1, area: 180 * 180, fullness: 12_200 ** 2 });
  });

  it("fill a page before the next: 200 by 90 and by 110 the first, 160 by 200 the room that another leaves beside it", () => {
    const { pages, lying } = packPages(candidate([200, 90], [200, 110], [160, 200]), field, 20);
    expect(pages).toBe(2);
    expect(lying.map(({ shapes }) => shapes.key).toSorted()).toEqual(["p0", "p1", "p2"]);
  });
});

/** How far down shapes reach, and whether two of them lie on one cell. */
function lengthOf(lying: readonly Laid[], across: number): number {
  const taken = new Set<string>();
  let [count, length] = [0, 0];
  for (const { turn, x, y } of lying)
    for (let v = 0; v < turn.cells.height; v += 1)
      for (let u = 0; u < turn.cells.width; u += 1) {
        taken.add(`${x + u} ${y + v}`);
        count += 1;
        length = Math.max(length, y + v + 1);
        if (x < 0 || x + turn.cells.width > across) throw new Error("off the roll");
      }
  return taken.size === count ? length : Number.NaN;
}

describe("rectangles on a roll of 12 cells", () => {
  const shapes = (...sizes: readonly (readonly [number, number])[]) =>
    sizes.map(([width, height], index) => {
      const all = shapesOf(rectangle(`p${index}`, 5 * width, 5 * height), cell, 0);
      return { ...all, turns: all.turns.filter((turn) => turn.cells.width <= 12) };
    });

  it.each([
    ["one, turned to lie shorter", [[3, 7]], 3],
    ["one as wide as the roll", [[12, 2]], 2],
    ["one that is longer than the roll is wide", [[13, 4]], 13],
    [
      "two side by side",
      [
        [5, 4],
        [7, 4],
      ],
      4,
    ],
    [
      "three that fill it: 8 by 3, 4 by 3, 12 by 2",
      [
        [8, 3],
        [12, 2],
        [4, 3],
      ],
      5,
    ],
    [
      "five that fill it: 7 by 5, 5 by 2, 5 by 3, 6 by 4, 6 by 4",
      [
        [7, 5],
        [5, 2],
        [6, 4],
        [5, 3],
        [6, 4],
      ],
      9,
    ],
    [
      "six squares of 4",
      [
        [4, 4],
        [4, 4],
        [4, 4],
        [4, 4],
        [4, 4],
        [4, 4],
      ],
      8,
    ],
  ] as const)("%s", (_what, sizes, length) => {
    expect(lengthOf(packRoll(shapes(...sizes), { across: 12 }, 60), 12)).toBe(length);
  });

  it("lie from the upper left corner on", () => {
    expect(packRoll(shapes([5, 2]), { across: 12 }, 0)).toMatchObject([
      { x: 0, y: 0, turn: { width: 25, height: 10 } },
    ]);
    const places = packRoll(shapes([5, 2], [7, 2]), { across: 12 }, 0).map(({ turn, x, y }) => [
      x,
      x + turn.cells.width,
      y,
    ]);
    expect(places[0]?.[0]).toBe(0);
    expect(places[1]).toEqual([places[0]?.[1], 12, 0]);
  });

  it("lie alike each time, and keep their gap", () => {
    const spaced = [
      [20, 30],
      [25, 15],
      [10, 40],
    ].map(([width = 0, height = 0], index) => shapesOf(rectangle(`p${index}`, width, height), cell, 5));
    const once = packRoll(spaced, { across: 12 }, 30);
    expect(packRoll(spaced, { across: 12 }, 30)).toEqual(once);
    for (const [index, a] of once.entries())
      for (const b of once.slice(index + 1)) {
        const across = Math.max(b.x - a.x - a.turn.cells.width, a.x - b.x - b.turn.cells.width);
        const down = Math.max(b.y - a.y - a.turn.cells.height, a.y - b.y - b.turn.cells.height);
        expect(Math.max(across, down)).toBeGreaterThanOrEqual(1);
      }
  });
});
