/** Where two pieces clash, cell by cell as anyone would look. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rowsFrom, type BitRows } from "../../../src/core/sheets/bitRows";
import { Clashes } from "../../../src/core/sheets/clashes";
import type { Shape } from "../../../src/core/sheets/shapes";

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
