/** Which pages a turned piece would need, for every place that it can have relative to the grid of pages. */
import { SAME_POINT } from "../tolerance";
import type { Mm } from "../units";
import { coverOf, evenLines } from "./cover";
import { neededPages } from "./neededPages";
import { pagesOver, zoneLines, type PageGrid } from "./pageGrid";
import type { ToLay } from "./layout";
import { onSheet } from "./placing";
import { cellsOver, type CellSize, type Shape } from "./shapes";

/** mm. How finely the area is counted for this; the pages of the answer itself are found exactly. */
const FINE = 2;

/** Fine cells along the longest side at the most: keeps very large pieces quick. */
const MOST_FINE = 1000;

/** Cells. Offsets are tried this far apart: trying each takes four times as long and saves hardly a page. */
export const STRIDE = 2;

/** One way to lie on the pages: which ones, counted from the page of the shape's corner, and all offsets that give it. */
export interface Footprint {
  readonly pages: readonly { readonly column: number; readonly row: number }[];
  /** Columns and rows reached over. */
  readonly columns: number;
  readonly rows: number;
  /** Cells from the page's corner, row by row. */
  readonly offsets: readonly { readonly x: number; readonly y: number }[];
}

/** Cells in a step of the pages, each way. */
export interface CellsPerPage {
  readonly x: number;
  readonly y: number;
}

export function footprintsOf(
  piece: ToLay,
  shape: Shape,
  grid: PageGrid,
  cell: CellSize,
  perPage: CellsPerPage,
): readonly Footprint[] {
  const areas = new FineAreas(piece, shape);
  const found = new Map<
    string,
    { pages: Footprint["pages"]; columns: number; rows: number; offsets: { x: number; y: number }[] }
  >();
  const acrossBy = Array.from({ length: perPage.x }, (_, x) =>
    areas.slots(zoneLines(grid.x, pagesOver(grid.x, x * cell.width + shape.width)), x * cell.width, areas.columns),
  );
  for (let y = 0; y < perPage.y; y += STRIDE) {
    const lines = zoneLines(grid.y, pagesOver(grid.y, y * cell.height + shape.height));
    const down = areas.slots(lines, y * cell.height, areas.rows);
    for (let x = 0; x < perPage.x; x += STRIDE) {
      const across = acrossBy[x] ?? [];
      const touched = new Uint8Array(across.length * down.length);
      let zone = 0;
      for (const [top, bottom] of down) {
        for (const [left, right] of across) touched[zone++] = areas.any(left, top, right, bottom) ? 1 : 0;
      }
      const key = `${across.length} ${touched.join("")}`;
      const same = found.get(key);
      if (same !== undefined) {
        same.offsets.push({ x, y });
        continue;
      }
      const columns = (across.length + 1) / 2;
      const rows = (down.length + 1) / 2;
      const pages: { column: number; row: number }[] = [];
      neededPages({ touchedBy: [touched], columns, rows }).forEach((mark, page) => {
        if (mark === 1) pages.push({ column: page % columns, row: Math.floor(page / columns) });
      });
      found.set(key, { pages, columns, rows, offsets: [{ x, y }] });
    }
  }
  return [...found.values()];
}

/** How many fine cells of a shape are touched within any box: sums from the corner on, so that a box takes four look-ups. */
class FineAreas {
  readonly columns: number;
  readonly rows: number;
  readonly #fine: Mm;
  readonly #sums: Int32Array;

  constructor(piece: ToLay, shape: Shape) {
    this.#fine = Math.max(FINE, Math.max(shape.width, shape.height) / MOST_FINE);
    this.columns = cellsOver(shape.width, this.#fine);
    this.rows = cellsOver(shape.height, this.#fine);
    const ring = piece.ring.map((point) => onSheet(shape, point));
    const marks = coverOf(ring, evenLines(this.columns, this.#fine), evenLines(this.rows, this.#fine));
    const wide = this.columns + 1;
    const sums = new Int32Array(wide * (this.rows + 1));
    for (let row = 0; row < this.rows; row++) {
      let inRow = 0;
      for (let column = 0; column < this.columns; column++) {
        inRow += marks[row * this.columns + column] ?? 0;
        sums[(row + 1) * wide + column + 1] = (sums[row * wide + column + 1] ?? 0) + inRow;
      }
    }
    this.#sums = sums;
  }

  /** For each zone between two lines, the fine cells in it of a shape that begins at `from`. */
  slots(lines: readonly Mm[], from: Mm, most: number): readonly (readonly [number, number])[] {
    return lines.slice(1).map((line, index) => {
      const low = Math.floor(((lines[index] ?? 0) - from + SAME_POINT) / this.#fine);
      const high = Math.ceil((line - from - SAME_POINT) / this.#fine);
      return [Math.min(most, Math.max(0, low)), Math.min(most, Math.max(0, high))];
    });
  }

  any(left: number, top: number, right: number, bottom: number): boolean {
    if (right <= left || bottom <= top) return false;
    const wide = this.columns + 1;
    const at = (x: number, y: number): number => this.#sums[y * wide + x] ?? 0;
    return at(right, bottom) - at(left, bottom) - at(right, top) + at(left, top) > 0;
  }
}
