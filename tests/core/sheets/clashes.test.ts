/** Where two pieces clash, cell by cell as anyone would look; and how seldom the search for a layout has to ask. */
import * as fc from "fast-check";
import { beforeEach, describe, expect, it, vi } from "vitest";
import { rowsFrom, type BitRows } from "../../../src/core/sheets/bitRows";
import { Clashes } from "../../../src/core/sheets/clashes";
import { FORMATS } from "../../../src/core/sheets/formats";
import { layPieces } from "../../../src/core/sheets/layPieces";
import type { Shape } from "../../../src/core/sheets/shapes";
import { toLay } from "./laid";

const counted = vi.hoisted(() => ({ clashes: 0 }));

vi.mock("../../../src/core/sheets/clash", async (original) => {
  const real = await original<typeof import("../../../src/core/sheets/clash")>();
  return {
    ...real,
    clashOf: (...of: Parameters<typeof real.clashOf>) => {
      counted.clashes += 1;
      return real.clashOf(...of);
    },
  };
});

beforeEach(() => {
  counted.clashes = 0;
});

const isMarked = ({ width, height, words, bits }: BitRows, x: number, y: number): boolean =>
  x >= 0 &&
  y >= 0 &&
  x < width &&
  y < height &&
  Math.floor((bits[y * words + Math.floor(x / 32)] ?? 0) / 2 ** (x % 32)) % 2 === 1;

const anyCells = fc
  .record({ width: fc.integer({ min: 1, max: 70 }), height: fc.integer({ min: 1, max: 12 }) })
  .chain(({ width, height }) =>
    fc
      .array(fc.constantFrom(0, 0, 1), { minLength: width * height, maxLength: width * height })
      .map((marks) => rowsFrom(Uint8Array.from(marks), width)),
  );

const shapeOf = (cells: BitRows, margin: number): Shape => ({
  quarters: 0,
  dx: 0,
  dy: 0,
  width: cells.width,
  height: cells.height,
  cells,
  kept: cells,
  marginX: margin,
  marginY: margin,
});

describe("the offsets at which a piece clashes with those that lie", () => {
  it("are those at which a cell of it lies on one of theirs, or off the sheet", () => {
    fc.assert(
      fc.property(
        anyCells,
        fc.array(
          fc.record({ cells: anyCells, x: fc.integer({ min: -4, max: 90 }), y: fc.integer({ min: -4, max: 40 }) }),
          {
            minLength: 1,
            maxLength: 3,
          },
        ),
        fc.record({ x: fc.integer({ min: 1, max: 80 }), y: fc.integer({ min: 1, max: 20 }) }),
        fc.record({ column: fc.integer({ min: 0, max: 2 }), row: fc.integer({ min: 0, max: 2 }) }),
        fc.integer({ min: 0, max: 2 }),
        (cells, laid, perPage, { column, row }, margin) => {
          const sheet = { width: 120, height: 50 };
          const lying = laid.map(({ cells: own, x, y }) => {
            const turn = shapeOf(own, margin);
            return { shapes: { key: "a", area: 1, turns: [turn] }, turn, x, y };
          });
          const next = shapeOf(cells, 0);
          const blocked = new Clashes(perPage, sheet).on(lying, next, column, row);
          const words = blocked.length / Math.ceil(perPage.y / 2);
          for (let dy = 0; dy < perPage.y; dy += 2) {
            for (let dx = 0; dx < perPage.x; dx += 2) {
              const [x, y] = [column * perPage.x + dx, row * perPage.y + dy];
              let meets = x + cells.width > sheet.width || y + cells.height > sheet.height;
              for (let v = 0; v < cells.height; v += 1)
                for (let u = 0; u < cells.width; u += 1)
                  meets ||=
                    isMarked(cells, u, v) &&
                    laid.some((one) => isMarked(one.cells, x + u - one.x + margin, y + v - one.y + margin));
              const word = blocked[(dy / 2) * words + Math.floor(dx / 64)] ?? 0;
              expect(Math.floor(word / 2 ** ((dx / 2) % 32)) % 2 === 1).toBe(meets);
            }
          }
        },
      ),
      { numRuns: 60 },
    );
  }, 240_000);
});

/** Nine pieces like those of a dress: a hollow at one corner, a slant at another. */
const NINE = Array.from({ length: 9 }, (_, at) => {
  const [width, height] = [180 + 35 * (at % 4), 620 - 50 * at];
  return toLay(`p${at}`, [
    [0, 0],
    [width - 60, 0],
    [width - 50, 70],
    [width, 110],
    [width - 8 * at, height],
    [0, height - 15],
  ]);
});

const MOST_ASKED = 28_500;

describe("laying nine pieces on Letter", () => {
  it("looks at no two turned pieces more than once, and at no sheet that takes more pages than one found", () => {
    const asked = vi.spyOn(Clashes.prototype, "on");
    const layout = layPieces(NINE, { format: FORMATS.Letter, margin: 10, overlap: 10, gap: 0 });
    expect(layout.ok).toBe(true);
    const calls = asked.mock.calls.length;
    asked.mockRestore();
    // As it is 28 148; where tries go on beyond the pages that were found, or a page is asked for each way to lie, more.
    expect(calls).toBeLessThan(MOST_ASKED);
    // Eight others in four turns for each of nine in four.
    expect(counted.clashes).toBeLessThanOrEqual(9 * 8 * 4 * 4);
    expect(counted.clashes).toBeGreaterThan(0);
  }, 240_000);
});
