/** A laid sheet as pages of paper: pieces cut at the window of each page, joining marks, names, and test squares. */
import type { SheetLayout, Tile, JoinMark } from "../core/sheets/layout";
import type { Mm } from "../core/units";
import { pageWords, joinWords } from "../words/sheets";
import type { Ink, InkGroup, InkPage } from "./ink";
import { sheetLine, sheetRect, sheetText } from "./inkShapes";
import { sheetPoint, type SheetPoint } from "../core/geometry/point";
import { shortened, textWidth } from "./fitLines";
import { dotsOf, inkWithin, testMarks, type Dot } from "./testSquare";
import * as say from "../words/trueFile";

/** One piece on the sheet, ready to be drawn. */
export interface SheetPiece {
  readonly key: string;
  readonly label: string;
  readonly ink: readonly Ink<"sheet">[];
  /** What it consists of, where a file of drawings keeps that apart: together all of its ink. */
  readonly parts?: readonly Omit<SheetPiece, "parts">[];
}

export interface SheetPagesOptions {
  readonly paper: { readonly width: Mm; readonly height: Mm };
  readonly margin: Mm;
  readonly overlap: Mm;
  /** Said on every page: the work, and whose it is where that is said. */
  readonly name: string;
  readonly wearer?: string | undefined;
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
  { paper, margin, overlap, name, wearer, joined }: SheetPagesOptions,
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
  // Strips are cut out whole: what stands in one is taken for its own.
  const kept = joined ? [] : pieces.map(({ ink }) => ringOf(ink));
  const joins = layout.joins.filter(({ pages }) => pages.includes(tile.name)).flatMap(joinInk);
  const squares = testMarks(tile, [...dots, ...joins.flatMap(dotsOf)], kept);
  return {
    name: tile.name,
    width: paper.width,
    height: paper.height,
    groups: [
      group("test-square", say.testSquares, squares),
      // Not cut off at the window: its line is the window's edge, and has to be seen whole.
      { ...group("window", say.pageEdge, windowInk(tile, layout, overlap, joined)), clip: null },
      ...pieces.map(({ key, label, ink }) => group(key, label, ink)),
      group("joins", say.joiningMarks, joins),
      group(
        "page-name",
        say.pageName,
        pageNameInk(
          tile,
          pageWords(index + 1, layout.tiles.length, name, wearer),
          [...dots, ...squares.flatMap(dotsOf)],
          joins.flatMap(dotsOf),
          overlap,
        ),
      ),
    ],
  };
}

/** Sizes of the name of a page and of what stands beside it, mm. */
const NAME: Mm = 8;
const BESIDE: Mm = 3.2;

/** The ring that a strip is cut out along; none of what has no such ring. */
function ringOf(ink: readonly Ink<"sheet">[]): readonly SheetPoint[] {
  const ring = ink.find((one) => one.kind === "line" && one.role === "frame" && one.closed);
  return ring?.kind === "line" ? ring.edges.map(({ a }) => a) : [];
}

/** How far a name steps aside of joining marks: they stand in the strips that two pages share, 4 mm about the middle of it. */
const ASIDE: Mm = 10;

/** The name of a page, large, clear of its joining marks, where else the least is drawn. */
function pageNameInk(
  tile: Tile,
  words: string,
  dots: readonly Dot[],
  joins: readonly Dot[],
  overlap: Mm,
): readonly Ink<"sheet">[] {
  const name = textWidth(tile.name, NAME, true);
  const all = shortened(words, tile.width - overlap - name - 2 * ASIDE - 10, BESIDE);
  const placesOf = (said: string) => {
    const width = name + 2 + textWidth(said, BESIDE);
    // Not in the strips that the next pages cover.
    const [left, right] = [tile.x + 3, tile.x + tile.width - overlap - width - 3];
    const [top, bottom] = [tile.y + 8.5, tile.y + tile.height - overlap - 3];
    return [left, left + ASIDE, (left + right) / 2, right - ASIDE, right].flatMap((x) =>
      [top, top + ASIDE, bottom - ASIDE, bottom].map((y) => ({
        x,
        y,
        said,
        box: { x: x - 1, y: y - NAME, width: width + 2, height: NAME + 2 },
      })),
    );
  };
  // Where so many words find no place clear of the marks, fewer do.
  const places = [all, shortened(all, (tile.width - overlap) / 2 - name - ASIDE, BESIDE)]
    .map((said) => placesOf(said).filter(({ box }) => inkWithin(box, joins) === 0))
    .find((clear) => clear.length > 0);
  const drawn = (places ?? []).map(({ box }) => inkWithin(box, dots));
  const best = places?.[drawn.indexOf(Math.min(...drawn))] ?? { x: tile.x + 3, y: tile.y + 8.5, said: "" };
  return [
    sheetText("note", best.x, best.y, tile.name, { size: NAME, bold: true }),
    sheetText("note", best.x + name + 1, best.y, best.said, { size: BESIDE }),
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
  // Written along the strip: upwards from the mark between neighbours side by side, beside it between one above the other.
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
      ? sheetText("join", at.x + BESIDE / 3, at.y - 5.4, joinWords(pages), { size: BESIDE, turn: -Math.PI / 2 })
      : sheetText("join", at.x + 5.4, at.y + BESIDE / 3, joinWords(pages), { size: BESIDE }),
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
  // A page runs as far as the next one begins, and where there is none to its own edge.
  const has = ({ column, row }: Tile, across: number, down: number): boolean =>
    layout.tiles.some((other) => other.column === column + across && other.row === row + down);
  return [
    ...layout.tiles.flatMap((tile) => [
      sheetRect(
        "frame",
        tile.x,
        tile.y,
        tile.width - (has(tile, 1, 0) ? overlap : 0),
        tile.height - (has(tile, 0, 1) ? overlap : 0),
      ),
      ...(tiled
        ? [sheetText("map", tile.x + writing * 0.3, tile.y + writing * 1.05, tile.name, { size: writing })]
        : []),
    ]),
    ...outlines.flatMap(({ ink }) => ink),
  ];
}
