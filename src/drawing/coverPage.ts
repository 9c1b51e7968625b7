/** The first page: what the sheet is, what to mind, how to join it, the test squares and a map of the pages. */
import type { SheetLayout } from "../core/sheets/layout";
import type { Mm } from "../core/units";
import { BEFORE_KEY, LINE_KEY, OVERLAY_LINES, NOTCH_KEY, doubtsTitle, moreDoubts, printedKey } from "../words/sheets";
import type { Ink, InkGroup, InkPage } from "./ink";
import { wrapped } from "./fitLines";
import { sheetLine, sheetText } from "./inkShapes";
import { sheetPoint } from "../core/geometry/point";
import { scaledInk } from "./placeInk";
import { sheetMap, type SheetPiece } from "./sheetPages";
import { TEST_INCH, testSquare } from "./testSquare";

export interface CoverWords {
  readonly kind: string;
  readonly name: string;
  /** Pattern, sizes, day: one line each. */
  readonly about: readonly string[];
  /** Sentences for checks that do not hold. */
  readonly failing: readonly string[];
  readonly notes: readonly string[];
  readonly steps: readonly string[];
}

/** Which lines are explained besides those that every piece has. */
export interface CoverKey {
  readonly overlay: boolean;
  readonly before: boolean;
  readonly printed: readonly { readonly label: string; readonly size: number }[];
}

const BODY: Mm = 3.1;
const LEADING: Mm = 4.1;
/** The map has at least this height; what is told above it is cut short before that. */
const LEAST_MAP: Mm = 52;

/** Writes downward; knows how far it has come. */
class Column {
  readonly ink: Ink<"sheet">[] = [];
  constructor(
    private readonly x: Mm,
    public y: Mm,
    private readonly width: Mm,
  ) {}

  write(text: string, options: { readonly size?: Mm; readonly bold?: boolean; readonly indent?: Mm } = {}): void {
    const { size = BODY, bold = false, indent = 0 } = options;
    for (const line of wrapped(text, this.width - indent, size, bold)) {
      this.y += size === BODY ? LEADING : size * 1.25;
      this.ink.push(sheetText("note", this.x + indent, this.y, line, { size, bold }));
    }
  }

  /** A sentence with a mark or a number before it. */
  item(mark: string, text: string): void {
    const top = this.y + LEADING;
    this.ink.push(sheetText("note", this.x, top, mark, { size: BODY, bold: true }));
    this.write(text, { indent: 5 });
  }

  skip(by: Mm): void {
    this.y += by;
  }
}

export interface CoverBox {
  readonly x: Mm;
  readonly y: Mm;
  readonly width: Mm;
  readonly height: Mm;
}

/** All of the first page but its map, within a box; `end` is how far down it comes. */
export function coverInk(box: CoverBox, words: CoverWords, key: CoverKey): { readonly ink: readonly Ink<"sheet">[]; readonly end: Mm } {
  const head = new Column(box.x, box.y, box.width);
  head.write(words.kind);
  head.skip(1);
  head.write(words.name, { size: 7, bold: true });
  head.skip(1.5);
  for (const line of words.about) head.write(line);
  head.skip(2);
  if (words.failing.length > 0) {
    const most = box.y + box.height - LEAST_MAP - TEST_INCH - 12;
    head.write(doubtsTitle(words.failing.length), { size: 4, bold: true });
    let told = 0;
    for (const sentence of words.failing) {
      const lines = wrapped(sentence, box.width - 5, BODY).length;
      if (head.y + (lines + 1) * LEADING > most) break;
      head.item("!", sentence);
      told += 1;
    }
    if (told < words.failing.length) head.item("!", moreDoubts(words.failing.length - told));
    head.skip(2);
  }
  for (const note of words.notes) head.write(note);
  const top = head.y + 5;
  const aside = new Column(box.x + TEST_INCH + 7, top - 1, box.width - TEST_INCH - 7);
  words.steps.forEach((step, index) => {
    aside.item(`${index + 1}`, step);
    aside.skip(0.8);
  });
  aside.skip(1.5);
  const lines = keyInk(aside, box.x + TEST_INCH + 7, key);
  if (!key.overlay) aside.write(NOTCH_KEY);
  return { ink: [...head.ink, ...testSquare(box.x, top), ...aside.ink, ...lines], end: Math.max(aside.y, top + TEST_INCH) };
}

function keyInk(aside: Column, x: Mm, { overlay, before, printed }: CoverKey): readonly Ink<"sheet">[] {
  const rows: { readonly ink: Partial<Ink<"sheet">> & { readonly role: Ink<"sheet">["role"]; readonly size?: number }; readonly words: string }[] = [
    ...(overlay ? OVERLAY_LINES : LINE_KEY).map(({ role, words }) => ({ ink: { role }, words })),
    ...(before ? [{ ink: { role: "before" as const }, words: BEFORE_KEY }] : []),
    ...printed.map(({ label, size }) => ({ ink: { role: "printed" as const, size }, words: printedKey(label) })),
  ];
  return rows.flatMap(({ ink, words }, index): Ink<"sheet">[] => {
    const column = index % 2;
    if (column === 0) aside.skip(LEADING);
    const left = x + column * 44;
    const line = sheetLine(ink.role, [sheetPoint(left, aside.y - 1), sheetPoint(left + 13, aside.y - 1)]);
    return [ink.size === undefined ? line : { ...line, size: ink.size }, sheetText("note", left + 15, aside.y, words, { size: 2.8 })];
  });
}

/** The map in small: as large as it can be within a box. */
export function mapInk(box: CoverBox, layout: SheetLayout, outlines: readonly SheetPiece[], overlap: Mm): readonly Ink<"sheet">[] {
  const scale = Math.min(box.width / layout.width, box.height / layout.height, 0.5);
  const dx = box.x + (box.width - layout.width * scale) / 2;
  return scaledInk(sheetMap(layout, outlines, overlap, Math.min(26, 3.4 / scale)), scale, dx, box.y);
}

const wholeGroup = (id: string, label: string, ink: readonly Ink<"sheet">[]): InkGroup => ({ id, label, dx: 0, dy: 0, clip: null, ink });

/** The first page of a tiled sheet. */
export function coverPage(
  paper: { readonly width: Mm; readonly height: Mm },
  margin: Mm,
  words: CoverWords,
  key: CoverKey,
  map: (box: CoverBox) => readonly Ink<"sheet">[],
): InkPage {
  const box = { x: margin, y: margin, width: paper.width - 2 * margin, height: paper.height - 2 * margin };
  const { ink, end } = coverInk(box, words, key);
  const room = { x: box.x, y: end + 6, width: box.width, height: box.y + box.height - end - 6 };
  return {
    name: "Map",
    ...paper,
    groups: [wholeGroup("about", words.kind, ink), wholeGroup("map", "Map of the pages", map(room))],
  };
}
