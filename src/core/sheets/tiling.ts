/** The sheet parted into pages, and the marks that they are joined by. */
import { sheetPoint, type SheetPoint } from "../geometry/point";
import type { Mm } from "../units";
import { coverOf } from "./cover";
import type { JoinMark, Tile } from "./layout";
import { neededPages } from "./neededPages";
import { pagesOver, zoneLines, type PageGrid } from "./pageGrid";
import { pageName } from "./pageNames";
import { ringBounds } from "./placing";

/** mm. A side longer than this is joined by two marks: one alone leaves a long edge free to turn. Our own choice. */
const LONG_SIDE = 200;

export interface Tiling {
  readonly tiles: readonly Tile[];
  readonly columns: number;
  readonly rows: number;
  /** How many whole columns and rows before the first used one were left out. */
  readonly skipped: { readonly columns: number; readonly rows: number };
}

/** The pages that rings on the sheet need, all in x and y from 0 on; columns and rows before the first used ones go. */
export function tilesFor(rings: readonly (readonly SheetPoint[])[], grid: PageGrid): Tiling {
  const boxes = rings.map((ring) => ringBounds(ring));
  const acrossAll = pagesOver(grid.x, Math.max(...boxes.map(({ max }) => max.x)));
  const downAll = pagesOver(grid.y, Math.max(...boxes.map(({ max }) => max.y)));
  const across = { at: zoneLines(grid.x, acrossAll), even: null };
  const down = { at: zoneLines(grid.y, downAll), even: null };
  const touchedBy = rings.map((ring) => coverOf(ring, across, down));
  const needed = neededPages({ touchedBy, columns: acrossAll, rows: downAll });
  const used = [...needed.keys()].filter((page) => needed[page] === 1);
  const columnsUsed = used.map((page) => page % acrossAll);
  const rowsUsed = used.map((page) => Math.floor(page / acrossAll));
  const skipped = { columns: Math.min(...columnsUsed), rows: Math.min(...rowsUsed) };
  const tiles = used.map((page): Tile => {
    const column = (page % acrossAll) - skipped.columns;
    const row = Math.floor(page / acrossAll) - skipped.rows;
    return {
      column,
      row,
      name: pageName(column, row),
      x: column * grid.x.step,
      y: row * grid.y.step,
      width: grid.x.shown,
      height: grid.y.shown,
    };
  });
  return {
    tiles,
    columns: Math.max(...columnsUsed) - skipped.columns + 1,
    rows: Math.max(...rowsUsed) - skipped.rows + 1,
    skipped,
  };
}

/** The marks of every two pages that are there and lie side by side or one above the other. */
export function joinsOf(tiles: readonly Tile[]): readonly JoinMark[] {
  const byName = new Map(tiles.map((tile) => [tile.name, tile]));
  return tiles.flatMap((tile) => {
    const right = byName.get(pageName(tile.column + 1, tile.row));
    const below = byName.get(pageName(tile.column, tile.row + 1));
    const marks: JoinMark[] = [];
    if (right !== undefined) {
      const x = (right.x + tile.x + tile.width) / 2;
      for (const share of marksAlong(tile.height)) {
        marks.push({ at: sheetPoint(x, tile.y + share * tile.height), pages: [tile.name, right.name] });
      }
    }
    if (below !== undefined) {
      const y = (below.y + tile.y + tile.height) / 2;
      for (const share of marksAlong(tile.width)) {
        marks.push({ at: sheetPoint(tile.x + share * tile.width, y), pages: [tile.name, below.name] });
      }
    }
    return marks;
  });
}

const marksAlong = (side: Mm): readonly number[] => (side > LONG_SIDE ? [0.25, 0.75] : [0.5]);
