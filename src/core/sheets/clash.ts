/** Where two turned pieces meet, worked out from the runs of cells in their rows. */
import type { BitRows } from "./bitRows";
import { STRIDE } from "./footprints";
import type { Shape } from "./shapes";

const WORD = 32;

/** Runs of cells, row by row: `ends` holds first and last cell of each, `rows` where each row's begin in it. */
export interface Runs {
  readonly rows: Int32Array;
  readonly ends: Int32Array;
}

export function runsOf({ width, height, words, bits }: BitRows): Runs {
  const rows = new Int32Array(height + 1);
  const ends: number[] = [];
  for (let row = 0; row < height; row++) {
    let from = -1;
    for (let x = 0; x <= width; x++) {
      const isSet = x < width && (((bits[row * words + (x >>> 5)] ?? 0) >>> (x & 31)) & 1) === 1;
      if (isSet && from < 0) from = x;
      if (isSet || from < 0) continue;
      ends.push(from, x - 1);
      from = -1;
    }
    rows[row + 1] = ends.length;
  }
  return { rows, ends: Int32Array.from(ends) };
}

/**
 * The cells from the corner of what is kept about one piece to that of another at which the two meet. By row from `top` on;
 * the columns, from `left` on, are dealt out in turn to as many planes as offsets are cells apart.
 */
export interface Clash {
  readonly left: number;
  readonly top: number;
  readonly height: number;
  readonly words: number;
  readonly planes: readonly Uint32Array[];
}

export function clashOf(laid: Shape, next: Shape, kept: Runs, cells: Runs): Clash {
  const [left, top] = [1 - next.cells.width, 1 - next.cells.height];
  const height = laid.kept.height - top;
  const words = Math.ceil((laid.kept.width - left) / STRIDE / WORD);
  const planes = Array.from({ length: STRIDE }, () => new Uint32Array(height * words));
  for (let row = 0; row < height; row++) {
    const dy = row + top;
    let from = 0;
    let to = -1;
    const last = Math.min(laid.kept.height, dy + next.cells.height);
    for (let y = Math.max(0, dy); y < last; y++) {
      const endA = kept.rows[y + 1] ?? 0;
      const firstB = cells.rows[y - dy] ?? 0;
      const endB = cells.rows[y - dy + 1] ?? 0;
      for (let a = kept.rows[y] ?? 0; a < endA; a += 2) {
        for (let b = firstB; b < endB; b += 2) {
          const low = (kept.ends[a] ?? 0) - (cells.ends[b + 1] ?? 0) - left;
          const high = (kept.ends[a + 1] ?? 0) - (cells.ends[b] ?? 0) - left;
          if (from <= to && low <= to + 1 && high >= from - 1) {
            if (low < from) from = low;
            if (high > to) to = high;
          } else {
            if (from <= to) fill(planes, row * words, from, to);
            from = low;
            to = high;
          }
        }
      }
    }
    if (from <= to) fill(planes, row * words, from, to);
  }
  return { left, top, height, words, planes };
}

/** Marks the columns from one to another in a row of all planes. */
function fill(planes: readonly Uint32Array[], start: number, from: number, to: number): void {
  for (const [at, plane] of planes.entries()) {
    const first = Math.ceil((from - at) / STRIDE);
    const last = Math.floor((to - at) / STRIDE);
    if (first > last) continue;
    for (let word = first >>> 5; word <= last >>> 5; word++) {
      const low = word === first >>> 5 ? first & 31 : 0;
      const high = word === last >>> 5 ? last & 31 : 31;
      plane[start + word] = (plane[start + word] ?? 0) | ((-1 >>> (31 - high + low)) << low);
    }
  }
}
