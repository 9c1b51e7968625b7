/** Words on the table, and keeping them apart. Positions in mm; sizes in screen pixels, so the scale is asked for. */
import type { Mm } from "../core/units";

export interface Label {
  readonly id: string;
  readonly x: Mm;
  readonly y: Mm;
  readonly lines: readonly string[];
  /** The printed size that it names, whole. */
  readonly size?: string;
  readonly anchor: "start" | "middle" | "end";
  readonly kind: "size" | "cut" | "dart" | "title" | "bustPoint" | "guess";
  /** A thin line from the label to what it speaks of. */
  readonly leader: { readonly x: Mm; readonly y: Mm } | null;
  /** Said instead where the pieces are small; absent: the first line alone. Empty: nothing. */
  readonly far?: readonly string[];
  /** Pixels that it stands below its place, whatever the zoom: clear of a line or a mark. */
  readonly below?: number;
  /** Lines that it may be moved down to find a free place. */
  readonly moves?: number;
  /** The alterations of the ledger it speaks of. */
  readonly alterations?: string;
}

/** Rough widths of letters and digits, and the height of a line, as shares of the text size. */
const LETTER = 0.53;
const CAPITAL = 0.62;
const BROAD = 0.88;
const LINE = 1.25;
/** Free room at each side, so that two sizes side by side do not read as one number. */
const ASIDE = 0.18;

const TEXT_PIXELS = 12;
const TITLE_PIXELS = 14;
const widthOf = (line: string): number =>
  Array.from(line).reduce(
    (width, letter) => width + (/[MW]/.test(letter) ? BROAD : /\p{Lu}/u.test(letter) ? CAPITAL : LETTER),
    0,
  );

/** The size of a label's writing, in pixels. */
export const textPixels = ({ kind }: Label): number => (kind === "title" ? TITLE_PIXELS : TEXT_PIXELS);

/** Whether two labels are drawn alike. */
export const isWrittenAlike = (a: Label, b: Label): boolean =>
  a === b ||
  (a.x === b.x &&
    a.y === b.y &&
    a.anchor === b.anchor &&
    a.kind === b.kind &&
    a.alterations === b.alterations &&
    a.leader?.x === b.leader?.x &&
    a.leader?.y === b.leader?.y &&
    a.lines.length === b.lines.length &&
    a.lines.every((line, index) => line === b.lines[index]));

interface Area {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function areaOf(label: Label, mmPerPixel: number): Area {
  const size = textPixels(label) * mmPerPixel;
  const width = (Math.max(...label.lines.map(widthOf)) + 2 * ASIDE) * size;
  const start = label.anchor === "start" ? label.x : label.anchor === "end" ? label.x - width : label.x - width / 2;
  const left = label.anchor === "start" ? start - ASIDE * size : label.anchor === "end" ? start + ASIDE * size : start;
  return {
    left,
    right: left + width,
    top: label.y - size,
    bottom: label.y + (label.lines.length - 1) * LINE * size + size * 0.3,
  };
}

const overlap = (a: Area, b: Area): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/**
 * Moves labels down until they are free of others, and leaves out those that find no free place.
 *
 * Earlier labels have the first right to their place.
 */
export function keepApart(all: readonly Label[], mmPerPixel: number): readonly Label[] {
  const kept: Label[] = [];
  const areas: Area[] = [];
  const step = LINE * TEXT_PIXELS * mmPerPixel;
  for (const label of all) {
    const lines = isFar(mmPerPixel) ? (label.far ?? label.lines.slice(0, 1)) : label.lines;
    if (lines.length === 0) continue;
    const y = label.y + (label.below ?? 0) * mmPerPixel;
    const moves =
      label.kind === "size" && isFar(mmPerPixel) ? 0 : (label.moves ?? (label.kind === "size" ? 0 : MOST_MOVES));
    for (let down = 0; down <= moves; down += 1) {
      const placed: Label = { ...label, lines, y: y + down * step };
      const area = areaOf(placed, mmPerPixel);
      if (areas.some((other) => overlap(area, other))) continue;
      kept.push(placed);
      areas.push(area);
      break;
    }
  }
  return kept;
}

const MOST_MOVES = 6;

/** For each place, how far the nearest other one is: so that what is touched at one does not reach over another. */
export const nearestApart = (places: readonly { readonly x: Mm; readonly y: Mm }[]): readonly Mm[] =>
  places.map((a, i) => Math.min(...places.map((b, j) => (i === j ? Infinity : Math.hypot(a.x - b.x, a.y - b.y)))));

/** Millimetres to a pixel above which the pieces are too small for more than a word. */
const FAR = 1.6;
const isFar = (mmPerPixel: number): boolean => mmPerPixel > FAR;
