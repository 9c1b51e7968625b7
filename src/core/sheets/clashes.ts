/**
 * Where a turned piece cannot lie beside those that lie already: worked out once for each two of them, so that a search asks
 * for all offsets of a page at a time and never looks at cells again.
 */
import type { BitRows } from "./bitRows";
import { clashOf, runsOf, type Clash, type Runs } from "./clash";
import { STRIDE, type CellsPerPage } from "./footprints";
import type { Laid, Shape } from "./shapes";

const WORD = 32;

/** Kept at a time: more than ten pieces have among them, and a few megabytes. */
const MOST_KEPT = 2048;

/** 32 bits of a row of words, from one that may lie before or after them. */
function bitsFrom(plane: Uint32Array, start: number, words: number, from: number): number {
  const word = from >> 5;
  const by = from & 31;
  const low = word >= 0 && word < words ? (plane[start + word] ?? 0) : 0;
  if (by === 0) return low;
  const high = word >= -1 && word + 1 < words ? (plane[start + word + 1] ?? 0) : 0;
  return (low >>> by) | (high << (WORD - by));
}

/** Offsets on a page as bits: so many words for each of its rows. */
export interface PageBits {
  readonly across: number;
  readonly down: number;
  readonly words: number;
}

export function pageBitsOf({ x, y }: CellsPerPage): PageBits {
  const across = Math.ceil(x / STRIDE);
  return { across, down: Math.ceil(y / STRIDE), words: Math.ceil(across / WORD) };
}

/** Cells of the sheet, each way. */
interface SheetCells {
  readonly width: number;
  readonly height: number;
}

export class Clashes {
  readonly #runs = new Map<BitRows, Runs>();
  readonly #perPage: CellsPerPage;
  readonly #page: PageBits;
  readonly #sheet: SheetCells;
  #kept = 0;
  #known = new Map<Shape, Map<Shape, Clash>>();

  constructor(perPage: CellsPerPage, sheet: SheetCells) {
    this.#perPage = perPage;
    this.#page = pageBitsOf(perPage);
    this.#sheet = sheet;
  }

  /**
   * The offsets on the page at (`column`, `row`) at which a turned piece would meet one of those that lie, or run off the
   * sheet, as bits.
   */
  on(lying: readonly Laid[], next: Shape, column: number, row: number): Uint32Array {
    const { across, down, words } = this.#page;
    const blocked = new Uint32Array(down * words);
    const [left, top] = [column * this.#perPage.x, row * this.#perPage.y];
    this.#blockOutside(
      blocked,
      this.#sheet.width - next.cells.width - left,
      this.#sheet.height - next.cells.height - top,
    );
    for (const { turn, x, y } of lying) {
      const [dx, dy] = [left - (x - turn.marginX), top - (y - turn.marginY)];
      const isFar =
        dx >= turn.kept.width ||
        dy >= turn.kept.height ||
        dx + STRIDE * (across - 1) <= -next.cells.width ||
        dy + STRIDE * (down - 1) <= -next.cells.height;
      if (isFar) continue;
      const clash = this.#clashOf(turn, next);
      const first = dx - clash.left;
      const at = Math.floor(first / STRIDE);
      const plane = clash.planes[first - at * STRIDE];
      if (plane === undefined) continue;
      for (let line = 0; line < down; line++) {
        const of = dy + STRIDE * line - clash.top;
        if (of < 0) continue;
        if (of >= clash.height) break;
        for (let word = 0; word < words; word++) {
          const bits = bitsFrom(plane, of * clash.words, clash.words, at + word * WORD);
          blocked[line * words + word] = (blocked[line * words + word] ?? 0) | bits;
        }
      }
    }
    return blocked;
  }

  /** @param mostX @param mostY cells from the page's corner that the piece may lie at */
  #blockOutside(blocked: Uint32Array, mostX: number, mostY: number): void {
    const { across, down, words } = this.#page;
    for (let line = 0; line < down; line++) {
      const isBelow = STRIDE * line > mostY;
      for (let at = isBelow ? 0 : Math.max(0, Math.floor(mostX / STRIDE) + 1); at < across; at++) {
        const word = line * words + (at >>> 5);
        blocked[word] = (blocked[word] ?? 0) | (1 << (at & 31));
      }
    }
  }

  #clashOf(laid: Shape, next: Shape): Clash {
    const known = this.#known.get(laid)?.get(next);
    if (known !== undefined) return known;
    if (this.#kept >= MOST_KEPT) {
      this.#known = new Map();
      this.#kept = 0;
    }
    const clash = clashOf(laid, next, this.#runsOf(laid.kept), this.#runsOf(next.cells));
    const ofLaid = this.#known.get(laid) ?? new Map<Shape, Clash>();
    this.#known.set(laid, ofLaid.set(next, clash));
    this.#kept++;
    return clash;
  }

  #runsOf(cells: BitRows): Runs {
    const runs = this.#runs.get(cells) ?? runsOf(cells);
    this.#runs.set(cells, runs);
    return runs;
  }
}
