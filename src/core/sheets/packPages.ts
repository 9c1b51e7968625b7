/**
 * Lays pieces on the grid of pages so that few pages are needed: one piece after the other where it needs the fewest new
 * pages, then again and again some pieces taken up and laid anew in another order, the better of both kept.
 */
import { CoreBug, invariant } from "../result";
import type { Mm } from "../units";
import { Clashes, pageBitsOf, type PageBits } from "./clashes";
import { STRIDE, type CellsPerPage, type Footprint } from "./footprints";
import type { PageGrid } from "./pageGrid";
import { cellsOver, type CellSize, type Laid, type Shape, type Shapes } from "./shapes";
import { shuffled, steadyChooser, type Chooser } from "./steadyChoice";

/** A piece with the footprints of each of its turns. */
export interface Candidate {
  readonly shapes: Shapes;
  readonly turns: readonly { readonly shape: Shape; readonly footprints: readonly Footprint[] }[];
}

export interface Field {
  readonly grid: PageGrid;
  readonly cell: CellSize;
  readonly perPage: CellsPerPage;
  /** Not less than the `leastColumns` of any piece. */
  readonly columns: number;
  /** At least one more for each piece than it reaches over, and one. */
  readonly rows: number;
}

/** One piece where it lies, and the pages that it needs there. */
interface Lying extends Laid {
  readonly candidate: Prepared;
  readonly pages: readonly number[];
}

/** One way to lay all pieces. */
export interface Arrangement {
  readonly lying: readonly Lying[];
  readonly pages: number;
  /** mm² of the sheet from its corner to the last used page. */
  readonly area: number;
  /** Sum of the squares of the pieces' share in each page: greater where some pages are full and others nearly empty. */
  readonly fullness: number;
}

/** Footprints with so many pages more than the least are left out: they hardly ever save a page, and cost half the time. */
const MORE_PAGES = 2;

/** One way for a turned piece to lie on the pages, at its place among all ways of the piece. */
interface Way {
  readonly at: number;
  readonly offsets: OffsetBits;
}

/** A turned piece with all its ways to lie on some pages, and their offsets together. */
interface Turned {
  readonly shape: Shape;
  readonly ways: Way[];
  all: OffsetBits;
}

/** Offsets as bits, and the first and the last word that has any. */
interface OffsetBits {
  readonly bits: Uint32Array;
  readonly first: number;
  readonly last: number;
}

/** All ways to lie on the same pages: what is new and what is free on them is the same, and is asked once. */
interface Pattern extends Omit<Footprint, "offsets"> {
  readonly turns: readonly Turned[];
}

/** A piece with its ways to lie, by the pages that they need. */
interface Prepared {
  readonly shapes: Shapes;
  readonly patterns: readonly Pattern[];
}

/** The most pages that a footprint of the candidate is kept with. */
const mostKept = ({ turns }: Candidate): number =>
  MORE_PAGES + Math.min(...turns.flatMap(({ footprints }) => footprints.map(({ pages }) => pages.length)));

/** Columns that a sheet has at the least: with fewer, no footprint of the candidate that is kept would go on it. */
export function leastColumns(candidate: Candidate): number {
  const most = mostKept(candidate);
  const kept = candidate.turns.flatMap(({ footprints }) => footprints.filter(({ pages }) => pages.length <= most));
  return Math.min(...kept.map(({ columns }) => columns));
}

/** The candidate without the footprints that waste pages. */
function prepared(candidate: Candidate, page: PageBits): Prepared {
  const { shapes, turns } = candidate;
  const most = mostKept(candidate);
  const patterns = new Map<string, Omit<Footprint, "offsets"> & { readonly turns: Turned[] }>();
  let at = 0;
  for (const { shape, footprints } of turns) {
    const own = new Map<string, Footprint["offsets"]>();
    for (const footprint of footprints) {
      const { pages, columns, rows, offsets } = footprint;
      if (pages.length > most) continue;
      const key = `${columns} ${rows} ${pages.map(({ column, row }) => `${column},${row}`).join(" ")}`;
      const pattern = patterns.get(key) ?? { pages, columns, rows, turns: [] };
      patterns.set(key, pattern);
      own.set(key, [...(own.get(key) ?? []), ...offsets]);
      if (pattern.turns.at(-1)?.shape !== shape) pattern.turns.push({ shape, ways: [], all: NONE });
      pattern.turns.at(-1)?.ways.push({ at, offsets: bitsOf(offsets, page) });
      at++;
    }
    for (const [key, offsets] of own) {
      const turned = patterns.get(key)?.turns.at(-1);
      if (turned !== undefined) turned.all = bitsOf(offsets, page);
    }
  }
  return { shapes, patterns: [...patterns.values()] };
}

const NONE: OffsetBits = { bits: new Uint32Array(), first: 0, last: -1 };

function bitsOf(offsets: Footprint["offsets"], { down, words }: PageBits): OffsetBits {
  const bits = new Uint32Array(down * words);
  for (const { x, y } of offsets) {
    const across = x / STRIDE;
    const word = (y / STRIDE) * words + (across >>> 5);
    bits[word] = (bits[word] ?? 0) | (1 << (across & 31));
  }
  return { bits, first: bits.findIndex((word) => word !== 0), last: bits.findLastIndex((word) => word !== 0) };
}

/** How a piece is put where several places need as many new pages. */
interface Habit {
  /** Fewest pages for the piece itself first, or the page with the least room first. */
  readonly whole: boolean;
  /** From the last offset on a page to the first. */
  readonly backwards: boolean;
}

const USUAL_HABIT: Habit = { whole: true, backwards: false };
const HABITS: readonly Habit[] = [
  USUAL_HABIT,
  { whole: false, backwards: false },
  { whole: true, backwards: true },
  { whole: false, backwards: true },
];

/** The pages that a piece would lie on, all but how it lies on them. */
interface Spot {
  readonly pattern: Pattern;
  /** Of the page that holds its corner. */
  readonly column: number;
  readonly row: number;
  /** What pieces leave free on its pages, mm²; an overlap counts on both of its pages. */
  readonly room: number;
}

/** The sheet while it is being filled. */
class Sheet {
  readonly lying: Lying[] = [];
  readonly #field: Field;
  readonly #page: PageBits;
  readonly #clashes: Clashes;
  /** How many pieces need each page, and how much of their area lies on it, mm². */
  readonly #users: Int32Array;
  readonly #filled: Float64Array;
  #rowsUsed = 0;
  #pagesUsed = 0;

  constructor(field: Field, clashes: Clashes) {
    this.#field = field;
    this.#page = pageBitsOf(field.perPage);
    this.#clashes = clashes;
    const { columns, rows } = field;
    this.#users = new Int32Array(columns * rows);
    this.#filled = new Float64Array(columns * rows);
  }

  put(piece: Lying): void {
    for (const page of piece.pages) {
      const users = this.#users[page] ?? 0;
      if (users === 0) this.#pagesUsed++;
      this.#users[page] = users + 1;
      this.#filled[page] = (this.#filled[page] ?? 0) + piece.candidate.shapes.area / piece.pages.length;
      this.#rowsUsed = Math.max(this.#rowsUsed, Math.floor(page / this.#field.columns) + 1);
    }
    this.lying.push(piece);
  }

  /**
   * Lays the piece where it needs the fewest new pages.
   *
   * @param most pages that the sheet may then have; false: it would need more, and nothing is laid
   */
  lay(candidate: Prepared, habit: Habit, most: number): boolean {
    return this.#layInRows(candidate, habit, most, 0, this.#rowsUsed);
  }

  /**
   * The same whatever it takes. A piece that reaches into the overlap below its last page may be in the way on the first row
   * that is not used yet: then there is the next.
   */
  layAnyhow(candidate: Prepared, habit: Habit): void {
    const below = this.#rowsUsed + 1;
    const isLaid = this.lay(candidate, habit, Infinity) || this.#layInRows(candidate, habit, Infinity, below, below);
    if (!isLaid) throw new CoreBug(`no place on the sheet: ${candidate.shapes.key}`);
  }

  #layInRows(candidate: Prepared, habit: Habit, most: number, firstRow: number, last: number): boolean {
    const { columns, rows } = this.#field;
    const spots: Spot[][] = [];
    for (const pattern of candidate.patterns) {
      const lastRow = Math.min(last, rows - pattern.rows);
      for (let row = firstRow; row <= lastRow; row++) {
        for (let column = 0; column + pattern.columns <= columns; column++) {
          const fresh = this.#freshPages(pattern, column, row);
          if (this.#pagesUsed + fresh > most) continue;
          const room = this.#roomAt(pattern, column, row);
          if (room >= candidate.shapes.area) (spots[fresh] ??= []).push({ pattern, column, row, room });
        }
      }
    }
    const blocked = new Map<Shape, Uint32Array[]>();
    for (const alike of spots) {
      const laid = alike === undefined ? null : this.#layInOneOf(candidate, alike, habit, blocked);
      if (laid === null) continue;
      this.put(laid);
      return true;
    }
    return false;
  }

  #freshPages({ pages }: Pattern, column: number, row: number): number {
    const { columns } = this.#field;
    const first = row * columns + column;
    let fresh = 0;
    for (const page of pages) {
      if (this.#users[first + page.row * columns + page.column] === 0) fresh++;
    }
    return fresh;
  }

  #roomAt({ pages }: Pattern, column: number, row: number): number {
    const { grid, columns } = this.#field;
    const first = row * columns + column;
    let room = pages.length * grid.x.shown * grid.y.shown;
    for (const page of pages) room -= this.#filled[first + page.row * columns + page.column] ?? 0;
    return room;
  }

  /** @param blocked for each turned piece, by page, the offsets at which it cannot lie as the sheet is now */
  #layInOneOf(
    candidate: Prepared,
    spots: readonly Spot[],
    { whole, backwards }: Habit,
    blocked: Map<Shape, Uint32Array[]>,
  ): Lying | null {
    const { columns, perPage } = this.#field;
    const order = (p: Spot, q: Spot): number =>
      (whole ? p.pattern.pages.length - q.pattern.pages.length : 0) ||
      p.room - q.room ||
      p.row - q.row ||
      p.column - q.column;
    // Where nothing tells spots apart, the ways to lie on them are tried as they come.
    const groups: Spot[][] = [];
    for (const spot of spots.toSorted(order)) {
      const before = groups.at(-1);
      if (before?.[0] !== undefined && order(before[0], spot) === 0) before.push(spot);
      else groups.push([spot]);
    }
    for (const alike of groups) {
      const { column, row } = invariant(alike[0], "spot");
      const page = row * columns + column;
      const free: { pattern: Pattern; shape: Shape; way: Way; taken: Uint32Array }[] = [];
      for (const { pattern } of alike) {
        for (const { shape, ways, all } of pattern.turns) {
          const ofShape = blocked.get(shape) ?? [];
          blocked.set(shape, ofShape);
          const taken = (ofShape[page] ??= this.#clashes.on(this.lying, shape, column, row));
          if (freeOffset(all, taken, this.#page, backwards) === null) continue;
          for (const way of ways) free.push({ pattern, shape, way, taken });
        }
      }
      free.sort((p, q) => p.way.at - q.way.at);
      for (const { pattern, shape, way, taken } of free) {
        const offset = freeOffset(way.offsets, taken, this.#page, backwards);
        if (offset === null) continue;
        return {
          shapes: candidate.shapes,
          candidate,
          turn: shape,
          x: column * perPage.x + offset.x,
          y: row * perPage.y + offset.y,
          pages: pattern.pages.map((needed) => page + needed.row * columns + needed.column),
        };
      }
    }
    return null;
  }

  arrangement(): Arrangement {
    const { columns, grid } = this.#field;
    let pages = 0;
    let fullness = 0;
    let lastColumn = 0;
    this.#users.forEach((users, page) => {
      if (users === 0) return;
      pages++;
      fullness += (this.#filled[page] ?? 0) ** 2;
      lastColumn = Math.max(lastColumn, page % columns);
    });
    const area = (lastColumn + 1) * this.#rowsUsed * grid.x.step * grid.y.step;
    return { lying: this.lying, pages, area, fullness };
  }
}

/** The first of the offsets that is not blocked, or the last; null: none. */
function freeOffset(
  { bits, first, last }: OffsetBits,
  blocked: Uint32Array,
  { words }: PageBits,
  backwards: boolean,
): { readonly x: number; readonly y: number } | null {
  for (let i = first; i <= last; i++) {
    const at = backwards ? last - (i - first) : i;
    const free = (bits[at] ?? 0) & ~(blocked[at] ?? 0);
    if (free === 0) continue;
    const bit = 31 - Math.clz32(backwards ? free : free & -free);
    return { x: ((at % words) * 32 + bit) * STRIDE, y: Math.floor(at / words) * STRIDE };
  }
  return null;
}

/** Fewer pages; then what can sooner be emptied. */
const isBetter = (p: Arrangement, q: Arrangement): boolean =>
  p.pages < q.pages || (p.pages === q.pages && p.fullness > q.fullness);
const isSmaller = (p: Arrangement, q: Arrangement): boolean =>
  p.pages < q.pages || (p.pages === q.pages && p.area < q.area);

const ORDERS: readonly ((p: Prepared, q: Prepared) => number)[] = [
  (p, q) => q.shapes.area - p.shapes.area,
  (p, q) => longest(q) - longest(p),
  (p, q) => boxOf(q) - boxOf(p),
];
const longest = ({ shapes: { turns } }: Prepared): Mm => Math.max(turns[0]?.width ?? 0, turns[0]?.height ?? 0);
const boxOf = ({ shapes: { turns } }: Prepared): number => (turns[0]?.width ?? 0) * (turns[0]?.height ?? 0);

/**
 * The best way found within `tries` tries on `field`. Fewer pages first, then less area.
 *
 * @throws CoreBug where a field is too small for one of the pieces
 */
export function packPages(all: readonly Candidate[], field: Field, tries: number): Arrangement {
  const choose = steadyChooser();
  const { grid, cell, perPage, columns, rows } = field;
  const page = pageBitsOf(perPage);
  const candidates = all.map((candidate) => prepared(candidate, page));
  const clashes = new Clashes(perPage, {
    width: cellsOver((columns - 1) * grid.x.step + grid.x.shown, cell.width),
    height: cellsOver((rows - 1) * grid.y.step + grid.y.shown, cell.height),
  });
  const starts = ORDERS.flatMap((order) => {
    const sorted = candidates.toSorted(order);
    return HABITS.map((habit) => laidAll(sorted, habit, new Sheet(field, clashes)));
  });
  const first = starts.reduce((best, next) => (isBetter(next, best) ? next : best));
  let now = first;
  let best = starts.reduce((smallest, next) => (isSmaller(next, smallest) ? next : smallest));
  for (let i = 0; i < tries; i++) {
    const next = laidAnew(now, new Sheet(field, clashes), choose);
    if (next === null) continue;
    if (isSmaller(next, best)) best = next;
    if (next.pages < now.pages || (next.pages === now.pages && next.fullness >= now.fullness * 0.98)) now = next;
  }
  return best;
}

function laidAll(candidates: readonly Prepared[], habit: Habit, sheet: Sheet): Arrangement {
  for (const candidate of candidates) sheet.layAnyhow(candidate, habit);
  return sheet.arrangement();
}

/**
 * Takes up the pieces of one page and some others, and lays them anew. Null as soon as it would take more pages: neither is
 * it better then than what was found, nor gone on from.
 */
function laidAnew({ lying, pages }: Arrangement, sheet: Sheet, choose: Chooser): Arrangement | null {
  const one = lying[choose(lying.length)];
  const page = one?.pages[choose(one.pages.length)] ?? 0;
  const up = new Set(lying.filter((piece) => piece === one || piece.pages.includes(page)));
  for (let more = choose(3); more > 0; more--) {
    const other = lying[choose(lying.length)];
    if (other !== undefined) up.add(other);
  }
  const again = shuffled([...up], choose).map(({ candidate }) => ({
    candidate,
    habit: HABITS[choose(HABITS.length)] ?? USUAL_HABIT,
  }));
  for (const piece of lying) if (!up.has(piece)) sheet.put(piece);
  for (const { candidate, habit } of again) if (!sheet.lay(candidate, habit, pages)) return null;
  return sheet.arrangement();
}
