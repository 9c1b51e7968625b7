/** A laid sheet as pages of paper: pieces cut at the window of each page, joining marks, names, and test squares. */
import type { SheetLayout, Tile, JoinMark } from "../core/sheets/layout";
import type { Mm } from "../core/units";
import { pageWords, joinWords } from "../words/sheets";
import type { Ink, InkGroup, InkPage } from "./ink";
import { sheetLine, sheetRect, sheetText } from "./inkShapes";
import { sheetPoint } from "../core/geometry/point";
import { shortened, textWidth } from "./fitLines";
import { dotsOf, inkWithin, testCorners, testSquarePlace, type Dot } from "./testSquare";

/** One piece on the sheet, ready to be drawn. */
export interface SheetPiece {
  readonly key: string;
  readonly label: string;
  readonly ink: readonly Ink<"sheet">[];
}

export interface SheetPagesOptions {
  readonly paper: { readonly width: Mm; readonly height: Mm };
  readonly margin: Mm;
  readonly overlap: Mm;
  /** Said on every page. */
  readonly name: string;
  /** Whether neighbouring pages are joined; without, each stands for itself. */
  readonly joined: boolean;
}

/** The pages of a tiled sheet, in the order of the layout. */
export function tiledPages(
  layout: SheetLayout,
  pieces: readonly SheetPiece[],
  options: SheetPagesOptions,
): readonly InkPage[] {
  const dots = pieces.flatMap(({ ink }) => ink.flatMap(dotsOf));
  return layout.tiles.map((tile, index) => tiledPage(tile, index, layout, pieces, dots, options));
}

function tiledPage(
  tile: Tile,
  index: number,
  layout: SheetLayout,
  pieces: readonly SheetPiece[],
  dots: readonly Dot[],
  { paper, margin, overlap, name, joined }: SheetPagesOptions,
): InkPage {
  const [dx, dy] = [margin - tile.x, margin - tile.y];
  const clip = { x: margin, y: margin, width: tile.width, height: tile.height };
  const group = (id: string, label: string, ink: readonly Ink<"sheet">[]): InkGroup => ({
    id,
    label,
    dx,
    dy,
    clip,
    ink,
  });
  const square = testSquarePlace(tile, dots);
  const squares = testCorners(square.x, square.y);
  return {
    name: tile.name,
    width: paper.width,
    height: paper.height,
    groups: [
      group("test-square", "Test squares", squares),
      group("window", "Edge of the page", windowInk(tile, layout, overlap, joined)),
      ...pieces.map(({ key, label, ink }) => group(key, label, ink)),
      group("joins", "Joining marks", layout.joins.filter(({ pages }) => pages.includes(tile.name)).flatMap(joinInk)),
      group(
        "page-name",
        "Name of the page",
        pageNameInk(
          tile,
          pageWords(index + 1, layout.tiles.length, name),
          [...dots, ...squares.flatMap(dotsOf)],
          overlap,
        ),
      ),
    ],
  };
}

/** Sizes of the name of a page and of what stands beside it, mm. */
const NAME: Mm = 8;
const BESIDE: Mm = 2.6;

/** The name of a page, large, in that corner of it where the least is drawn. */
function pageNameInk(tile: Tile, words: string, dots: readonly Dot[], overlap: Mm): readonly Ink<"sheet">[] {
  const name = textWidth(tile.name, NAME, true);
  const said = shortened(words, tile.width - overlap - name - 10, BESIDE);
  const width = name + 2 + textWidth(said, BESIDE);
  // Not in the strips that the next pages cover.
  const [left, right] = [tile.x + 3, tile.x + tile.width - overlap - width - 3];
  const [top, bottom] = [tile.y + 8.5, tile.y + tile.height - overlap - 3];
  const corners = [
    { x: left, y: top },
    { x: left, y: bottom },
    { x: right, y: top },
    { x: right, y: bottom },
  ];
  const drawn = corners.map(({ x, y }) => inkWithin({ x, y: y - NAME, width, height: NAME + 1 }, dots));
  const { x, y } = corners[drawn.indexOf(Math.min(...drawn))] ?? { x: tile.x, y: tile.y };
  return [
    sheetText("note", x, y, tile.name, { size: NAME, bold: true }),
    sheetText("note", x + name + 1, y, said, { size: BESIDE }),
  ];
}

/** The edge of the window: cut along it where a page lies at the left or above; where the next page comes to lie. */
function windowInk(tile: Tile, { tiles }: SheetLayout, overlap: Mm, joined: boolean): readonly Ink<"sheet">[] {
  const has = (columns: number, rows: number): boolean =>
    tiles.some(({ column, row }) => column === tile.column + columns && row === tile.row + rows);
  const [right, bottom] = [tile.x + tile.width, tile.y + tile.height];
  return [
    sheetRect("frame", tile.x, tile.y, tile.width, tile.height),
    ...(joined && has(1, 0)
      ? [sheetLine("overlap", [sheetPoint(right - overlap, tile.y), sheetPoint(right - overlap, bottom)])]
      : []),
    ...(joined && has(0, 1)
      ? [sheetLine("overlap", [sheetPoint(tile.x, bottom - overlap), sheetPoint(right, bottom - overlap)])]
      : []),
  ];
}

/** A mark that both pages carry at the same place of the sheet. */
function joinInk({ at, pages }: JoinMark): readonly Ink<"sheet">[] {
  // Written where the strip is long: above the mark between neighbours side by side, beside it between one above the other.
  const besides = pages[0].replace(/^\D+/u, "") === pages[1].replace(/^\D+/u, "");
  return [
    // A diamond, black in two of its quarters: like no mark on a piece, and it shows at once which way it is off.
    sheetLine(
      "join",
      [sheetPoint(at.x, at.y - 4), sheetPoint(at.x + 4, at.y), sheetPoint(at.x, at.y + 4), sheetPoint(at.x - 4, at.y)],
      true,
    ),
    { ...sheetLine("join", [at, sheetPoint(at.x, at.y - 4), sheetPoint(at.x + 4, at.y)], true), filled: true },
    { ...sheetLine("join", [at, sheetPoint(at.x, at.y + 4), sheetPoint(at.x - 4, at.y)], true), filled: true },
    besides
      ? sheetText("join", at.x, at.y - 5.4, joinWords(pages), { size: 2.2, anchor: "middle" })
      : sheetText("join", at.x + 5.4, at.y + 0.8, joinWords(pages), { size: 2.2 }),
  ];
}

/** The whole sheet in small, the borders of its pages and their names; in the sheet's own mm. */
export function sheetMap(
  layout: SheetLayout,
  outlines: readonly SheetPiece[],
  overlap: Mm,
  writing: Mm,
): readonly Ink<"sheet">[] {
  const tiled = layout.tiles.length > 1 || layout.columns > 1 || layout.rows > 1;
  return [
    ...layout.tiles.flatMap((tile) => [
      sheetRect("frame", tile.x, tile.y, tile.width - (tiled ? overlap : 0), tile.height - (tiled ? overlap : 0)),
      ...(tiled
        ? [sheetText("map", tile.x + writing * 0.3, tile.y + writing * 1.05, tile.name, { size: writing })]
        : []),
    ]),
    ...outlines.flatMap(({ ink }) => ink),
  ];
}
