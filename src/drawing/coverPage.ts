/** The first page: what the sheet is, what to mind, how to join it, the test squares and a map of the pages. */
import { boundsOfPoints } from "../core/geometry/bounds";
import { sheetPoint, shift } from "../core/geometry/point";
import type { SheetLayout } from "../core/sheets/layout";
import { TEST_INCH } from "../core/sheets/testSquares";
import { radians, type Mm } from "../core/units";
import {
  BEFORE_KEY,
  doubtsTitle,
  lineKey,
  markKey,
  OLD_OVERLAY_LINES,
  OLD_OVERLAY_MARKS,
  OVERLAY_LINES,
  OVERLAY_MARKS,
  printedKey,
  type Paged,
} from "../words/sheets";
import { shortened, textWidth, wrapped } from "./fitLines";
import type { Ink, InkGroup, InkPage, InkRole } from "./ink";
import { sheetLine, sheetRect, sheetText } from "./inkShapes";
import { scaledInk } from "./placeInk";
import { sheetMap, type SheetPiece } from "./sheetPages";
import { testSquare } from "./testSquare";
import * as say from "../words/trueFile";

export interface CoverWords {
  readonly kind: string;
  readonly name: string;
  /** Pattern, sizes, day, pieces: a line each. */
  readonly about: readonly string[];
  /** Sentences for checks that do not hold. */
  readonly failing: readonly string[];
  readonly notes: readonly string[];
  readonly steps: readonly string[];
}

/** Which lines are explained besides those that every piece has. */
export interface CoverKey {
  readonly overlay: boolean;
  /** Of an overlay: it is laid on pieces as they were before. */
  readonly old?: true;
  readonly paged: Paged;
  readonly before: boolean;
  readonly printed: readonly { readonly label: string; readonly size: number }[];
}

/** 9 points: as small as is read on a table. */
const BODY: Mm = 3.2;
const LEADING: Mm = 4.1;
/** A map lower than this goes on a page of its own. */
const LEAST_MAP: Mm = 50;
/** Between the test squares and what stands beside them. */
const BESIDE: Mm = 6;

export interface CoverBox {
  readonly x: Mm;
  readonly y: Mm;
  readonly width: Mm;
  readonly height: Mm;
}

/** Writes downward in a box; where that is full it goes on at the top of the next page. */
class Flow {
  readonly pages: Ink<"sheet">[][] = [[]];
  y: Mm;

  constructor(readonly box: CoverBox) {
    this.y = box.y;
  }

  add(...ink: readonly Ink<"sheet">[]): void {
    this.pages.at(-1)?.push(...ink);
  }

  /** Sees to it that so much room is left on this page. */
  need(height: Mm): void {
    if (this.y + height <= this.box.y + this.box.height || this.y === this.box.y) return;
    this.pages.push([]);
    this.y = this.box.y;
  }

  write(text: string, options: { readonly size?: Mm; readonly bold?: boolean; readonly mark?: string } = {}): void {
    const { size = BODY, bold = false, mark } = options;
    const indent = mark === undefined ? 0 : 5;
    const leading = size === BODY ? LEADING : size * 1.25;
    wrapped(text, this.box.width - indent, size, bold).forEach((line, index) => {
      this.need(leading);
      this.y += leading;
      if (index === 0 && mark !== undefined)
        this.add(sheetText("note", this.box.x, this.y - leading * 0.25, mark, { size, bold: true }));
      this.add(sheetText("note", this.box.x + indent, this.y - leading * 0.25, line, { size, bold }));
    });
  }

  skip(by: Mm): void {
    this.y += by;
  }
}

/**
 * All of the first pages but the map, within a box; `end` is how far down the last of them comes, `room` what is left there
 * beside the squares.
 */
export function coverInk(
  box: CoverBox,
  words: CoverWords,
  key: CoverKey,
): { readonly pages: readonly (readonly Ink<"sheet">[])[]; readonly end: Mm; readonly room: CoverBox | null } {
  const flow = new Flow(box);
  flow.write(words.kind);
  flow.write(words.name, { size: 7, bold: true });
  flow.skip(1);
  for (const line of words.about) flow.write(line);
  flow.skip(2);
  if (words.failing.length > 0) {
    flow.write(doubtsTitle(words.failing.length), { size: 4, bold: true });
    for (const sentence of words.failing) flow.write(sentence, { mark: "!" });
    flow.skip(2);
  }
  for (const note of words.notes) flow.write(note);
  flow.skip(2);
  words.steps.forEach((step, index) => flow.write(step, { mark: `${index + 1}` }));
  flow.skip(3);
  // The squares, and beside them what each line and mark means.
  const wide = box.width - TEST_INCH - BESIDE;
  const rows = keyRows(wide, key);
  const tall = Math.max(TEST_INCH, rows.length * LEADING) + 2;
  const isBeside = wide >= LEAST_KEY && tall <= box.height;
  flow.need(isBeside ? tall : TEST_INCH + 2);
  flow.add(...testSquare(box.x, flow.y));
  if (!isBeside) flow.skip(TEST_INCH + 3);
  const top = flow.y;
  const left = isBeside ? box.x + TEST_INCH + BESIDE : box.x;
  for (const row of isBeside ? rows : keyRows(box.width, key)) {
    if (!isBeside) flow.need(LEADING);
    flow.skip(LEADING);
    flow.add(...row(left, flow.y - LEADING * 0.25));
  }
  flow.y = isBeside ? Math.max(flow.y, top + TEST_INCH) : flow.y;
  const beside = { x: left, y: top + rows.length * LEADING + 2, width: wide, height: 0 };
  const room = isBeside ? { ...beside, height: top + TEST_INCH - beside.y } : null;
  return { pages: flow.pages, end: flow.y, room };
}

/** The key stands beside the squares where there is this much room for it, else below them. */
const LEAST_KEY: Mm = 50;
/** One sample of a line with its words. */
const SAMPLE: Mm = 13;
const COLUMN: Mm = 46;

type Row = (x: Mm, y: Mm) => readonly Ink<"sheet">[];

function keyRows(width: Mm, { overlay, old, paged, before, printed }: CoverKey): readonly Row[] {
  const lines: readonly { readonly role: InkRole; readonly words: string; readonly size?: number }[] = [
    ...(overlay ? (old === true ? OLD_OVERLAY_LINES : OVERLAY_LINES) : lineKey(paged)),
    ...(before ? [{ role: "before" as const, words: BEFORE_KEY }] : []),
    ...printed.map(({ label, size }) => ({ role: "printed" as const, words: printedKey(label), size })),
  ];
  const columns = Math.max(1, Math.floor(width / COLUMN));
  const rows = Array.from(
    { length: Math.ceil(lines.length / columns) },
    (_, row): Row =>
      (x, y) =>
        lines.slice(row * columns, (row + 1) * columns).flatMap(({ role, words, size }, column) => {
          const left = x + (column * width) / columns;
          const line = sheetLine(role, [sheetPoint(left, y - 1), sheetPoint(left + SAMPLE, y - 1)]);
          return [
            size === undefined ? line : { ...line, size },
            sheetText("note", left + SAMPLE + 2, y, shortened(words, width / columns - SAMPLE - 3, BODY), {
              size: BODY,
            }),
          ];
        }),
  );
  const ofOverlay = old === true ? OLD_OVERLAY_MARKS : OVERLAY_MARKS;
  const marks = (overlay ? ofOverlay : markKey(paged)).flatMap((sentence) => wrapped(sentence, width, BODY));
  return [
    ...rows,
    ...marks.map((text): Row => (x, y) => [sheetText("note", x, y, text, { size: BODY })]),
  ];
}

/** The map in small: as large as it can be within a box. Names are kept readable. */
export function mapInk(
  box: CoverBox,
  layout: SheetLayout,
  outlines: readonly SheetPiece[],
  overlap: Mm,
): readonly Ink<"sheet">[] {
  const scale = Math.min(box.width / layout.width, box.height / layout.height, 0.5);
  const dx = box.x + (box.width - layout.width * scale) / 2;
  const small = (ink: readonly Ink<"sheet">[]): readonly Ink<"sheet">[] => scaledInk(ink, scale, dx, box.y);
  return [
    ...small(sheetMap(layout, [], overlap, Math.max(MAP_TYPE / scale, Math.min(26, 3.4 / scale)))),
    ...outlines.flatMap(({ ink }) => namedWithin(small(ink))),
  ];
}

/** Names on the map, mm (9 points). */
const MAP_TYPE: Mm = 3.2;

/** A piece of the map with its name as large as is read: along the piece where it is too narrow, in lines where it is short. */
function namedWithin(ink: readonly Ink<"sheet">[]): readonly Ink<"sheet">[] {
  const { min, max } = boundsOfPoints(
    ink.flatMap((one) => (one.kind === "line" ? one.edges.flatMap(({ a, b }) => [a, b]) : [])),
  );
  const [width, height] = [max.x - min.x, max.y - min.y];
  return ink.flatMap((one): readonly Ink<"sheet">[] => {
    if (one.kind === "line") return [one];
    const longest = Math.max(...one.text.split(" ").map((word) => textWidth(word, MAP_TYPE)));
    const isUpright = longest > width && height > width;
    const lines = wrapped(one.text, Math.max(longest, isUpright ? height : width), MAP_TYPE);
    const turn = isUpright ? -Math.PI / 2 : 0;
    return lines.map((text, index) => {
      const down = (index - (lines.length - 1) / 2) * MAP_TYPE * 1.15 + MAP_TYPE / 3;
      const at = isUpright ? shift(one.at, down, 0) : shift(one.at, 0, down);
      return { ...one, at, text, size: MAP_TYPE, turn: radians(turn) };
    });
  });
}

const wholeGroup = (id: string, label: string, ink: readonly Ink<"sheet">[]): InkGroup => ({
  id,
  label,
  dx: 0,
  dy: 0,
  clip: null,
  ink,
});

/** Words stay so far within the frame, mm. */
const WITHIN: Mm = 3;

/**
 * The first page of a tiled sheet, the map below what is said or beside its test squares; a second one where neither place
 * is large enough. Every page has the thin frame that tells whether the paper is large enough.
 */
export function coverPages(
  paper: { readonly width: Mm; readonly height: Mm },
  margin: Mm,
  words: CoverWords,
  key: CoverKey,
  map: (box: CoverBox) => readonly Ink<"sheet">[],
): readonly InkPage[] {
  const frame = sheetRect("frame", margin, margin, paper.width - 2 * margin, paper.height - 2 * margin);
  const inside = margin + WITHIN;
  const box = { x: inside, y: inside, width: paper.width - 2 * inside, height: paper.height - 2 * inside };
  const { pages, end, room: beside } = coverInk(box, words, key);
  const below = { ...box, y: end + 4, height: box.y + box.height - end - 4 };
  const room = [below, ...(beside === null ? [] : [beside])].find(({ height }) => height >= LEAST_MAP) ?? null;
  const mapGroup = wholeGroup("map", say.pagesMap, map(room ?? box));
  const framed = wholeGroup("frame", say.pageEdge, [frame]);
  const about = pages.map((ink, index): InkPage => ({
    name: index === 0 ? "About" : `About ${index + 1}`,
    ...paper,
    groups: [
      framed,
      wholeGroup("about", words.kind, ink),
      ...(room === null || index < pages.length - 1 ? [] : [mapGroup]),
    ],
  }));
  return room === null ? [...about, { name: "Map", ...paper, groups: [framed, mapGroup] }] : about;
}
