/**
 * Parts as they lie on the cloth, to lay them by: mm of paper, on a sheet that an A4 page holds. Long cloth is shown in columns
 * side by side, each going on where the one before ends.
 */
import type { LengthUnit } from "../core/decisions/work";
import type { ClothLay, LaidPart } from "../core/cloth/cutting";
import { MM_PER_CM, MM_PER_INCH, type Mm } from "../core/units";
import {
  clothEdgeWords,
  copyWords,
  GOES_ON,
  howLaidWords,
  laidAtWords,
  layLegend,
  rulerWords,
  START_OF_CLOTH,
} from "../words/layDrawing";
import { textWidth } from "./fitLines";
import { line, words, type Figure, type FigureMark, type Spot } from "./figure";

/** One line of the list beside the drawing: by this a part is laid. */
interface LaidRow {
  /** On the drawing. */
  readonly number: number;
  readonly key: string;
  readonly name: string;
  readonly copy: number;
  /** In how many layers and which side up, where it has to be told; else empty. */
  readonly how: string;
  /** mm of cloth: from the fold or the left selvage, and from the beginning of the cloth, to its nearest corner. */
  readonly across: Mm;
  readonly along: Mm;
}

export interface LayDrawing {
  readonly figure: Figure;
  readonly rows: readonly LaidRow[];
  /** mm of paper for one of cloth. */
  readonly scale: number;
  readonly columns: number;
}

/** Within an A4 page with its margins, mm. */
const SHEET = { width: 180, height: 232 };
const MOST_COLUMNS = 4;
/** Rulers at the left and above each column, and between columns, mm. */
const RULER: Mm = 9;
const BETWEEN: Mm = 7;
const TYPE: Mm = 2.9;
const SMALL: Mm = 2.4;

/** How far from where it would be a column may end so that fewer parts are parted, as a share of its length. */
const GIVE = 0.12;
const GIVE_STEPS = 24;

/**
 * @param named what a part is called, by its key
 */
export function layDrawing(lay: ClothLay, named: (key: string) => string, unit: LengthUnit): LayDrawing {
  const wide = lay.onFold ? lay.width / 2 : lay.width;
  const long = Math.max(lay.length, 1);
  const { columns, scale } = fitted(wide, long);
  const ends = columnEnds(lay, long, columns);
  const order = lay.parts.toSorted((p, q) => p.y - q.y || p.x - q.x);
  const rows = order.map((part, index): LaidRow => ({
    number: index + 1,
    key: part.key,
    name: named(part.key),
    copy: part.copy,
    how: howLaidWords(lay.onFold, part),
    across: part.x,
    along: part.y,
  }));
  const marks = ends.flatMap((to, column): FigureMark[] => {
    const from = ends[column - 1] ?? 0;
    const place = { x: RULER + column * (wide * scale + BETWEEN + RULER), y: RULER - from * scale };
    const at = ({ x, y }: Spot): Spot => ({ x: place.x + x * scale, y: place.y + y * scale });
    return [
      ...clothMarks(lay, wide, from, to, at, column === ends.length - 1),
      ...rulerMarks(wide, from, to, at, unit),
      ...order.flatMap((part, index) => {
        const row = rows[index];
        return row === undefined ? [] : partMarks(part, row, from, to, at, scale, unit);
      }),
    ];
  });
  const longest = Math.max(...ends.map((to, column) => to - (ends[column - 1] ?? 0)));
  return {
    figure: {
      box: {
        x: 0,
        y: 0,
        width: columns * (wide * scale + RULER) + (columns - 1) * BETWEEN + RULER / 2,
        height: RULER + longest * scale + 10,
      },
      marks: [...marks, words(layLegend(lay.onFold, unit), { x: RULER, y: RULER + longest * scale + 8 }, SMALL)],
    },
    rows,
    scale,
    columns,
  };
}

/** As many columns as show it largest. */
function fitted(wide: Mm, long: Mm): { readonly columns: number; readonly scale: number } {
  let best = { columns: 1, scale: 0 };
  for (let columns = 1; columns <= MOST_COLUMNS; columns += 1) {
    const across = (SHEET.width - columns * RULER - (columns - 1) * BETWEEN) / (columns * wide);
    const down = (SHEET.height - RULER) / ((long / columns) * (1 + (columns > 1 ? GIVE : 0)));
    const scale = Math.min(across, down);
    if (scale > best.scale) best = { columns, scale };
  }
  return best;
}

/** Where columns end along the cloth: as even as can be, and through as few parts. */
function columnEnds({ parts }: ClothLay, long: Mm, columns: number): readonly Mm[] {
  const spans = parts.map(({ ring }) => {
    const ys = ring.map(({ y }) => y);
    return [Math.min(...ys), Math.max(...ys)] as const;
  });
  const crossed = (y: Mm): number => spans.filter(([top, foot]) => top < y && foot > y).length;
  const each = long / columns;
  return Array.from({ length: columns }, (_, column) => {
    if (column === columns - 1) return long;
    const even = each * (column + 1);
    const tries = Array.from({ length: GIVE_STEPS + 1 }, (__, i) => even + (i / GIVE_STEPS - 0.5) * GIVE * each);
    return tries.toSorted((p, q) => crossed(p) - crossed(q) || Math.abs(p - even) - Math.abs(q - even))[0] ?? even;
  });
}

type At = (spot: Spot) => Spot;

const halfway = (p: Spot, q: Spot): Spot => ({ x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 });

function clothMarks(lay: ClothLay, wide: Mm, from: Mm, to: Mm, at: At, isLast: boolean): readonly FigureMark[] {
  const [a, b, c, d] = [at({ x: 0, y: from }), at({ x: wide, y: from }), at({ x: wide, y: to }), at({ x: 0, y: to })];
  const [leftWords, rightWords] = clothEdgeWords(lay.onFold);
  return [
    line("cloth", [a, b, c, d], true),
    line(lay.onFold ? "fold" : "selvage", [a, d]),
    line("selvage", [b, c]),
    line("measure", [a, b]),
    line(isLast ? "measure" : "stitch", [d, c]),
    words(leftWords, { x: a.x - 0.9, y: halfway(a, d).y }, SMALL, { anchor: "middle", degrees: -90 }),
    words(rightWords, { x: b.x + 0.9 + SMALL * 0.75, y: halfway(b, c).y }, SMALL, { anchor: "middle", degrees: -90 }),
    ...(from === 0 ? [words(START_OF_CLOTH, { x: a.x, y: a.y - 5.6 }, SMALL)] : []),
    ...(isLast ? [] : [words(GOES_ON, { x: halfway(c, d).x, y: c.y + 3.4 }, SMALL, { anchor: "middle" })]),
  ];
}

/** Steps of the rulers, in the wearer's unit: a mark at each, a number at each second one across and each fifth along. */
const STEP: Readonly<Record<LengthUnit, Mm>> = { cm: 10 * MM_PER_CM, in: 4 * MM_PER_INCH };

function rulerMarks(wide: Mm, from: Mm, to: Mm, at: At, unit: LengthUnit): readonly FigureMark[] {
  const step = STEP[unit];
  const across = Array.from({ length: Math.floor(wide / step) + 1 }, (_, i) => i * step);
  const first = Math.ceil(from / step);
  const along = Array.from({ length: Math.max(0, Math.floor(to / step) - first + 1) }, (_, i) => (first + i) * step);
  return [
    ...across.flatMap((x, i): FigureMark[] => {
      const { x: px, y: py } = at({ x, y: from });
      return [
        line("measure", [
          { x: px, y: py },
          { x: px, y: py - 1.4 },
        ]),
        ...(i % 2 === 0 && i > 0
          ? [words(rulerWords(x, unit), { x: px, y: py - 1.9 }, SMALL, { anchor: "middle" })]
          : []),
      ];
    }),
    ...along.flatMap((y): FigureMark[] => {
      const { x: px, y: py } = at({ x: 0, y });
      const isNamed = Math.round(y / step) % 2 === 0 && y > from;
      return [
        line("measure", [
          { x: px, y: py },
          { x: px - 1.4, y: py },
        ]),
        ...(isNamed
          ? [words(rulerWords(y, unit), { x: px - 3.6, y: py + SMALL * 0.35 }, SMALL, { anchor: "end" })]
          : []),
      ];
    }),
  ];
}

/** What of a part lies in a column: outline, grain, and what it is, where its longest stretch along the grain lies. */
function partMarks(
  { ring }: LaidPart,
  row: LaidRow,
  from: Mm,
  to: Mm,
  at: At,
  scale: number,
  unit: LengthUnit,
): readonly FigureMark[] {
  const within = clipped(ring, from, to);
  if (within.length < 3) return [];
  const longest = longestUpright(within);
  if (longest === null) return [line("cutting", within.map(at), true)];
  const isHere = isMainColumn(ring, from, to);
  return [
    line("cutting", within.map(at), true),
    ...(isHere ? markedWithin(within, longest, row, at, scale, unit) : []),
  ];
}

/** The grain, broken where the name stands in its way. */
function markedWithin(
  ring: readonly Spot[],
  longest: Upright,
  row: LaidRow,
  at: At,
  scale: number,
  unit: LengthUnit,
): readonly FigureMark[] {
  const names = nameMarks(ring, longest, row, at, scale, unit);
  const middle = (longest.top + longest.foot) / 2;
  const isTurned = names.some((mark) => mark.kind === "words" && mark.degrees !== undefined);
  const taken = isTurned
    ? Math.max(...names.map((mark) => (mark.kind === "words" ? textWidth(mark.text, mark.size) : 0)))
    : names.length * TYPE * 1.25;
  return [...grainMarks(longest, middle, taken / 2 + 1, at), ...names];
}

/** Most of a part that goes over the end of a column lies in one of them; there it is named. */
function isMainColumn(ring: readonly Spot[], from: Mm, to: Mm): boolean {
  const ys = ring.map(({ y }) => y);
  const middle = (Math.min(...ys) + Math.max(...ys)) / 2;
  return middle >= from && middle <= to;
}

/** What of a ring lies where it is off by no less than nothing. */
const keep = (spots: readonly Spot[], off: (y: Mm) => Mm): readonly Spot[] =>
  spots.flatMap((p, i): Spot[] => {
    const q = spots[(i + 1) % spots.length] ?? p;
    const [a, b] = [off(p.y), off(q.y)];
    const cut = a * b < 0 ? [{ x: p.x + ((q.x - p.x) * a) / (a - b), y: p.y + ((q.y - p.y) * a) / (a - b) }] : [];
    return a >= 0 ? [p, ...cut] : cut;
  });

/**
 * A ring between two heights.
 *
 * @source clipping of a polygon by one half plane after the other (Sutherland and Hodgman)
 */
function clipped(ring: readonly Spot[], from: Mm, to: Mm): readonly Spot[] {
  return keep(
    keep(ring, (y) => y - from),
    (y) => to - y,
  );
}

interface Upright {
  readonly x: Mm;
  readonly top: Mm;
  readonly foot: Mm;
}

/** So many upright lines are tried over a part. */
const TRIED = 9;

/** The longest stretch of an upright line inside a ring. */
function longestUpright(ring: readonly Spot[]): Upright | null {
  const xs = ring.map(({ x }) => x);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  let best: Upright | null = null;
  for (let i = 1; i <= TRIED; i += 1) {
    const x = left + ((right - left) * i) / (TRIED + 1);
    const ys = ring
      .flatMap((p, index): Mm[] => {
        const q = ring[(index + 1) % ring.length] ?? p;
        return p.x <= x !== q.x <= x ? [p.y + ((q.y - p.y) * (x - p.x)) / (q.x - p.x)] : [];
      })
      .toSorted((a, b) => a - b);
    for (let k = 0; k + 1 < ys.length; k += 2) {
      const [top = 0, foot = 0] = [ys[k], ys[k + 1]];
      // Of about the same length the one nearest to the middle.
      const worth = foot - top - Math.abs(x - (left + right) / 2) * 0.6;
      if (best === null || worth > best.foot - best.top - Math.abs(best.x - (left + right) / 2) * 0.6)
        best = { x, top, foot };
    }
  }
  return best;
}

function grainMarks({ x, top, foot }: Upright, middle: Mm, clear: Mm, at: At): readonly FigureMark[] {
  const [from, to, mid] = [
    at({ x, y: top + (foot - top) * 0.12 }),
    at({ x, y: foot - (foot - top) * 0.12 }),
    at({ x, y: middle }),
  ];
  const head = Math.min(1.2, (to.y - from.y) / 5);
  if (mid.y - clear - from.y < head) return [];
  return [
    line("grain", [from, { x: mid.x, y: mid.y - clear }]),
    line("grain", [{ x: mid.x, y: mid.y + clear }, to]),
    line("grain", [{ x: from.x - head * 0.6, y: from.y + head }, from, { x: from.x + head * 0.6, y: from.y + head }]),
    line("grain", [{ x: to.x - head * 0.6, y: to.y - head }, to, { x: to.x + head * 0.6, y: to.y - head }]),
  ];
}

/** Its number, and its name and measures where there is room for them; turned along a narrow part. */
function nameMarks(
  ring: readonly Spot[],
  { x, top, foot }: Upright,
  { number, name, copy, how, across, along }: LaidRow,
  at: At,
  scale: number,
  unit: LengthUnit,
): readonly FigureMark[] {
  const [middleY, half] = [(top + foot) / 2, (TYPE * 1.25) / scale];
  const lines = [`${number} ${copyWords(name, copy)}`, laidAtWords(across, along, how, unit)];
  const need = Math.max(...lines.map((text) => textWidth(text, TYPE))) + 1;
  const run = runAt(ring, x, [middleY - half, middleY, middleY + half]);
  const upright = need < (run.to - run.from) * scale && 2 * half < foot - top;
  const long = (need / scale) * 0.5;
  const narrow = runAt(ring, x, [middleY - long, middleY, middleY + long]);
  const turned = !upright && need < (foot - top) * scale && 2 * half < narrow.to - narrow.from;
  const place = upright ? run : turned ? narrow : { from: x, to: x };
  const middle = at({ x: (place.from + place.to) / 2, y: middleY });
  if (!upright && !turned)
    return [words(String(number), { x: middle.x, y: middle.y + TYPE * 0.35 }, TYPE, { anchor: "middle", bold: true })];
  return lines.map((text, i) => {
    const down = (i - 0.5) * TYPE * 1.25 + TYPE * 0.35;
    return upright
      ? words(text, { x: middle.x, y: middle.y + down }, i === 0 ? TYPE : SMALL, {
          anchor: "middle",
          ...(i === 0 ? { bold: true as const } : {}),
        })
      : words(text, { x: middle.x + down, y: middle.y }, i === 0 ? TYPE : SMALL, {
          anchor: "middle",
          degrees: -90,
          ...(i === 0 ? { bold: true as const } : {}),
        });
  });
}

interface Run {
  readonly from: Mm;
  readonly to: Mm;
}

/** What of a ring lies about an upright line without a break, at all of some heights. */
function runAt(ring: readonly Spot[], x: Mm, heights: readonly Mm[]): Run {
  return heights.reduce<Run>(
    (run, y) => {
      const xs = ring.flatMap((p, i): Mm[] => {
        const q = ring[(i + 1) % ring.length] ?? p;
        return p.y <= y !== q.y <= y ? [p.x + ((q.x - p.x) * (y - p.y)) / (q.y - p.y)] : [];
      });
      return {
        from: Math.max(run.from, ...xs.filter((at) => at < x)),
        to: Math.min(run.to, ...xs.filter((at) => at > x)),
      };
    },
    { from: -Infinity, to: Infinity },
  );
}
