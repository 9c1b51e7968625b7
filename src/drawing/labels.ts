/** Words on the table, and keeping them apart. Positions in mm; sizes in screen pixels, so the scale is asked for. */
import type { Mm } from "../core/units";

export interface Label {
  readonly id: string;
  readonly x: Mm;
  readonly y: Mm;
  readonly lines: readonly string[];
  readonly anchor: "start" | "middle" | "end";
  readonly kind: "size" | "cut" | "dart" | "title" | "bustPoint";
  /** A thin line from the label to what it speaks of. */
  readonly leader: { readonly x: Mm; readonly y: Mm } | null;
}

/** Rough width of a digit or letter, and height of a line, as shares of the text size. */
const LETTER = 0.53;
const LINE = 1.25;

export const TEXT_PIXELS = 12;

interface Area {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function areaOf(label: Label, mmPerPixel: number): Area {
  const size = TEXT_PIXELS * mmPerPixel;
  const width = Math.max(...label.lines.map((line) => line.length)) * LETTER * size;
  const left = label.anchor === "start" ? label.x : label.anchor === "end" ? label.x - width : label.x - width / 2;
  return { left, right: left + width, top: label.y - size, bottom: label.y + (label.lines.length - 1) * LINE * size + size * 0.3 };
}

const overlap = (a: Area, b: Area): boolean => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/**
 * Leaves out size labels that would lie on others, and moves the rest down until they are free.
 *
 * Earlier labels have the first right to their place.
 */
export function keepApart(all: readonly Label[], mmPerPixel: number): readonly Label[] {
  const labels = isFar(mmPerPixel) ? all.map((label) => ({ ...label, lines: label.lines.slice(0, 1) })) : all;
  const kept: Label[] = [];
  const areas: Area[] = [];
  for (const label of labels) {
    let placed = label;
    let area = areaOf(placed, mmPerPixel);
    let tries = 0;
    while (areas.some((other) => overlap(area, other))) {
      if (label.kind === "size" || tries === MOST_MOVES) break;
      placed = { ...placed, y: placed.y + LINE * TEXT_PIXELS * mmPerPixel };
      area = areaOf(placed, mmPerPixel);
      tries += 1;
    }
    if (areas.some((other) => overlap(area, other))) continue;
    kept.push(placed);
    areas.push(area);
  }
  return kept;
}

const MOST_MOVES = 6;

/** For each place, how far the nearest other one is: so that what is touched at one does not reach over another. */
export const nearestApart = (places: readonly { readonly x: Mm; readonly y: Mm }[]): readonly Mm[] =>
  places.map((a, i) => Math.min(...places.map((b, j) => (i === j ? Infinity : Math.hypot(a.x - b.x, a.y - b.y)))));

/** Millimetres to a pixel above which the pieces are too small for more than a word. */
const FAR = 1.6;
export const isFar = (mmPerPixel: number): boolean => mmPerPixel > FAR;
