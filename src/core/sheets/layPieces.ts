/** Lays pieces on one large sheet and parts it into pages, or lays them along a roll. */
import { ringArea } from "../geometry/ringArea";
import { fail, ok, type Result } from "../result";
import { MOST_PAGES, SAME_POINT } from "../tolerance";
import type { Mm } from "../units";
import type { PaperFormat } from "./formats";
import { footprintsOf } from "./footprints";
import type { LayoutFailure, Placement, SheetLayout, ToLay } from "./layout";
import { leastColumns, packPages, type Candidate } from "./packPages";
import { packRoll } from "./packRoll";
import { pageGridOf, pagesOver, type PageGrid, type Pitch } from "./pageGrid";
import { onSheet, ringBounds } from "./placing";
import { cellDividing, cellsOver, placementOf, shapesOf, type CellSize } from "./shapes";
import { joinsOf, tilesFor } from "./tiling";

export interface LayOptions {
  readonly format: PaperFormat;
  /** Left white on all sides of the paper. */
  readonly margin: Mm;
  /** Width of the strip that is printed on both of two neighbouring pages. */
  readonly overlap: Mm;
  /** Pieces lie at least this far apart. */
  readonly gap: Mm;
}

/** Columns that a sheet is given at the most, unless a piece needs more: six A4 pages make a metre. */
const USUAL_COLUMNS = 6;

/** Tries for ten pieces; more pieces get fewer, since each try takes longer. */
const PAGE_TRIES = 250;
const ROLL_TRIES = 40;
const TRIES_FOR = 10;
const triesFor = (tries: number, pieces: number): number => Math.ceil(tries * Math.min(1, TRIES_FOR / pieces));

/**
 * Where all pieces lie, in the order given, on as few pages (or as short a roll) as a fixed number of tries finds. Each is
 * turned by quarters at will and never turned over; no two come nearer than the gap. The same pieces always lie the same.
 *
 * Pages: all of a piece lies within the windows of the tiles given, and where it goes on beyond a window, so does the
 * sheet, on a page joined to that one by a side.
 *
 * @throws CoreBug for a ring of fewer than three points, or with one that is not finite
 */
export function layPieces(pieces: readonly ToLay[], options: LayOptions): Result<SheetLayout, LayoutFailure> {
  if (pieces.length === 0) return fail({ code: "sheet/nothing-to-lay" });
  const grid = pageGridOf(options.format, options.margin, options.overlap);
  if (!grid.ok) return grid;
  const { x, y } = grid.value;
  return y === null ? layOnRoll(pieces, x.shown, options.gap) : layOnPages(pieces, { x, y }, options.gap);
}

function layOnRoll(pieces: readonly ToLay[], width: Mm, gap: Mm): Result<SheetLayout, LayoutFailure> {
  const side = cellDividing(width);
  const cell = { width: side, height: side };
  const across = cellsOver(width, side);
  const shapes = pieces.map((piece) => {
    const all = shapesOf(piece, cell, gap);
    return { ...all, turns: all.turns.filter((turn) => turn.width <= width + SAME_POINT) };
  });
  const tooWide = pieces.find((_, index) => shapes[index]?.turns.length === 0);
  if (tooWide !== undefined) {
    const least = Math.min(...shapesOf(tooWide, cell, gap).turns.map((turn) => turn.width));
    return fail({ code: "sheet/piece-too-wide", key: tooWide.key, least, width });
  }
  const lying = packRoll(shapes, { across }, triesFor(ROLL_TRIES, pieces.length));
  const placements = inOrder(
    pieces,
    lying.map((laid) => placementOf(laid, cell)),
  );
  const height = Math.max(...lying.map(({ turn, y }) => y * side + turn.height));
  const tile = { column: 0, row: 0, name: "A1", x: 0, y: 0, width, height };
  return ok({ placements, width, height, tiles: [tile], joins: [], columns: 1, rows: 1 });
}

/** So many times MOST_PAGES at the least are refused before anything is laid: the search would take minutes. */
const FAR_TOO_MANY = 4;

/** Pages that the longest piece needs from end to end, however it lies. */
function pagesAtLeast(pieces: readonly ToLay[], { x, y }: PageGrid): number {
  return Math.max(
    ...pieces.map(({ ring }) => {
      const { min, max } = ringBounds(ring);
      const length = Math.max(max.x - min.x, max.y - min.y);
      return Math.min(pagesOver(x, length), pagesOver(y, length));
    }),
  );
}

/** Pages that several pieces would fill if they left nothing between them; one alone is laid in no time. */
const pagesFilled = (pieces: readonly ToLay[], { x, y }: PageGrid): number =>
  pieces.length === 1 ? 1 : Math.ceil(pieces.reduce((sum, { ring }) => sum + ringArea(ring), 0) / (x.shown * y.shown));

function layOnPages(pieces: readonly ToLay[], grid: PageGrid, gap: Mm): Result<SheetLayout, LayoutFailure> {
  const [longest, filled] = [pagesAtLeast(pieces, grid), pagesFilled(pieces, grid)];
  if (longest > FAR_TOO_MANY * MOST_PAGES || filled > MOST_PAGES)
    return fail({ code: "sheet/too-many-pages", pages: Math.max(longest, filled), most: MOST_PAGES });
  const cell: CellSize = { width: cellDividing(grid.x.step), height: cellDividing(grid.y.step) };
  const perPage = { x: Math.round(grid.x.step / cell.width), y: Math.round(grid.y.step / cell.height) };
  const candidates = pieces.map((piece): Candidate => {
    const shapes = shapesOf(piece, cell, gap);
    const turns = shapes.turns.map((shape) => ({ shape, footprints: footprintsOf(piece, shape, grid, cell, perPage) }));
    return { shapes, turns };
  });
  const columns = Math.max(
    USUAL_COLUMNS,
    ...candidates.flatMap((candidate) => [1 + leastPages(candidate, grid.x), leastColumns(candidate)]),
  );
  const rows = candidates.reduce((sum, candidate) => sum + 1 + mostPages(candidate, grid.y), 1);
  const { lying } = packPages(candidates, { grid, cell, perPage, columns, rows }, triesFor(PAGE_TRIES, pieces.length));
  const placements = inOrder(
    pieces,
    lying.map((laid) => placementOf(laid, cell)),
  );
  return tiled(pieces, placements, grid);
}

const leastPages = ({ shapes }: Candidate, pitch: Pitch): number =>
  Math.min(...shapes.turns.map(({ width }) => pagesOver(pitch, width)));
const mostPages = ({ shapes }: Candidate, pitch: Pitch): number =>
  Math.max(...shapes.turns.map(({ height }) => pagesOver(pitch, height)));

/** Parts the sheet, its corner moved to the first used column and row. */
function tiled(
  pieces: readonly ToLay[],
  placements: readonly Placement[],
  grid: PageGrid,
): Result<SheetLayout, LayoutFailure> {
  const rings = pieces.flatMap(({ ring }, index) => {
    const placement = placements[index];
    return placement === undefined ? [] : [ring.map((point) => onSheet(placement, point))];
  });
  const { tiles, columns, rows, skipped } = tilesFor(rings, grid);
  if (tiles.length > MOST_PAGES) return fail({ code: "sheet/too-many-pages", pages: tiles.length, most: MOST_PAGES });
  return ok({
    placements: placements.map((placement) => ({
      ...placement,
      dx: placement.dx - skipped.columns * grid.x.step,
      dy: placement.dy - skipped.rows * grid.y.step,
    })),
    width: (columns - 1) * grid.x.step + grid.x.shown,
    height: (rows - 1) * grid.y.step + grid.y.shown,
    tiles,
    joins: joinsOf(tiles),
    columns,
    rows,
  });
}

/** The placements in the order of the pieces. */
function inOrder(pieces: readonly ToLay[], placements: readonly Placement[]): readonly Placement[] {
  const byKey = new Map(placements.map((placement) => [placement.key, placement]));
  return pieces.flatMap(({ key }) => byKey.get(key) ?? []);
}
