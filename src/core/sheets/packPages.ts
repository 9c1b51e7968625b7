/**
 * Lays pieces on the grid of pages so that few pages are needed: one piece after the other where it needs the fewest new
 * pages, then again and again some pieces taken up and laid anew in another order, the better of both kept.
 */
import type { Mm } from "../units";
import { emptyRows, isFree, stamp, type BitRows } from "./bitRows";
import type { CellsPerPage, Footprint } from "./footprints";
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
  readonly columns: number;
  readonly rows: number;
}

/** One piece where it lies, and the pages that it needs there. */
interface Lying extends Laid {
  readonly candidate: Candidate;
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

/** The candidate without the footprints that waste pages. */
function thrifty({ shapes, turns }: Candidate): Candidate {
  const least = Math.min(...turns.flatMap(({ footprints }) => footprints.map(({ pages }) => pages.length)));
  return {
    shapes,
    turns: turns.map(({ shape, footprints }) => ({
      shape,
      footprints: footprints.filter(({ pages }) => pages.length <= least + MORE_PAGES),
    })),
  };
}

/** How a piece is put where several places need as many new pages. */
interface Habit {
  /** Fewest pages for the piece itself first, or the page with the least room first. */
  readonly whole: boolean;
  /** From the last offset on a page to the first. */
  readonly backwards: boolean;
}

const HABITS: readonly Habit[] = [
  { whole: true, backwards: false },
  { whole: false, backwards: false },
  { whole: true, backwards: true },
  { whole: false, backwards: true },
];

/** A turned piece on a page grid, all but its offset on the page chosen. */
interface Spot {
  readonly shape: Shape;
  readonly footprint: Footprint;
  /** Of the page that holds its corner. */
  readonly column: number;
  readonly row: number;
  /** What pieces leave free on its pages, mm²; an overlap counts on both of its pages. */
  room: number;
}

/** The sheet while it is being filled. */
class Sheet {
  readonly lying: Lying[] = [];
  readonly #field: Field;
  readonly #taken: BitRows;
  /** How many pieces need each page, and how much of their area lies on it, mm². */
  readonly #users: Int32Array;
  readonly #filled: Float64Array;
  #rowsUsed = 0;

  constructor(field: Field) {
    this.#field = field;
    const { grid, cell, columns, rows } = field;
    this.#taken = emptyRows(
      cellsOver((columns - 1) * grid.x.step + grid.x.shown, cell.width),
      cellsOver((rows - 1) * grid.y.step + grid.y.shown, cell.height),
    );
    this.#users = new Int32Array(columns * rows);
    this.#filled = new Float64Array(columns * rows);
  }

  put(piece: Lying): void {
    const { turn, x, y } = piece;
    stamp(this.#taken, turn.kept, x - turn.marginX, y - turn.marginY);
    for (const page of piece.pages) {
      this.#users[page] = (this.#users[page] ?? 0) + 1;
      this.#filled[page] = (this.#filled[page] ?? 0) + piece.candidate.shapes.area / piece.pages.length;
      this.#rowsUsed = Math.max(this.#rowsUsed, Math.floor(page / this.#field.columns) + 1);
    }
    this.lying.push(piece);
  }

  /** Lays the piece where it needs the fewest new pages. */
  lay(candidate: Candidate, habit: Habit): void {
    const { columns, rows } = this.#field;
    const spots: Spot[][] = [];
    for (const { shape, footprints } of candidate.turns) {
      for (const footprint of footprints) {
        const lastRow = Math.min(this.#rowsUsed, rows - footprint.rows);
        for (let row = 0; row <= lastRow; row++) {
          for (let column = 0; column + footprint.columns <= columns; column++) {
            const fresh = this.#freshPages(footprint, column, row);
            (spots[fresh] ??= []).push({ shape, footprint, column, row, room: 0 });
          }
        }
      }
    }
    for (const alike of spots) {
      const laid = alike === undefined ? null : this.#layInOneOf(candidate, alike, habit);
      if (laid === null) continue;
      this.put(laid);
      return;
    }
  }

  #freshPages({ pages }: Footprint, column: number, row: number): number {
    const { columns } = this.#field;
    const first = row * columns + column;
    let fresh = 0;
    for (const page of pages) {
      if (this.#users[first + page.row * columns + page.column] === 0) fresh++;
    }
    return fresh;
  }

  #roomAt({ pages }: Footprint, column: number, row: number): number {
    const { grid, columns } = this.#field;
    const first = row * columns + column;
    let room = pages.length * grid.x.shown * grid.y.shown;
    for (const page of pages) room -= this.#filled[first + page.row * columns + page.column] ?? 0;
    return room;
  }

  #layInOneOf(candidate: Candidate, spots: readonly Spot[], habit: Habit): Lying | null {
    for (const spot of spots) spot.room = this.#roomAt(spot.footprint, spot.column, spot.row);
    const roomy = spots.filter(({ room }) => room >= candidate.shapes.area);
    roomy.sort(
      (p, q) =>
        (habit.whole ? p.footprint.pages.length - q.footprint.pages.length : 0) ||
        p.room - q.room ||
        p.row - q.row ||
        p.column - q.column,
    );
    for (const spot of roomy) {
      const laid = this.#freeAt(candidate, spot, habit);
      if (laid !== null) return laid;
    }
    return null;
  }

  #freeAt(candidate: Candidate, { shape, footprint, column, row }: Spot, habit: Habit): Lying | null {
    const { perPage, columns } = this.#field;
    const { offsets } = footprint;
    for (let index = 0; index < offsets.length; index++) {
      const offset = offsets[habit.backwards ? offsets.length - 1 - index : index];
      if (offset === undefined) continue;
      const x = column * perPage.x + offset.x;
      const y = row * perPage.y + offset.y;
      if (x + shape.cells.width > this.#taken.width || y + shape.cells.height > this.#taken.height) continue;
      if (!isFree(this.#taken, shape.cells, x, y)) continue;
      const pages = footprint.pages.map((page) => (row + page.row) * columns + column + page.column);
      return { shapes: candidate.shapes, candidate, turn: shape, x, y, pages };
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

/** Fewer pages; then what can sooner be emptied. */
const isBetter = (p: Arrangement, q: Arrangement): boolean =>
  p.pages < q.pages || (p.pages === q.pages && p.fullness > q.fullness);
const isSmaller = (p: Arrangement, q: Arrangement): boolean =>
  p.pages < q.pages || (p.pages === q.pages && p.area < q.area);

const ORDERS: readonly ((p: Candidate, q: Candidate) => number)[] = [
  (p, q) => q.shapes.area - p.shapes.area,
  (p, q) => longest(q) - longest(p),
  (p, q) => boxOf(q) - boxOf(p),
];
const longest = ({ turns }: Candidate): Mm => Math.max(turns[0]?.shape.width ?? 0, turns[0]?.shape.height ?? 0);
const boxOf = ({ turns }: Candidate): number => (turns[0]?.shape.width ?? 0) * (turns[0]?.shape.height ?? 0);

/** The best way found within `tries` tries on `field`. Fewer pages first, then less area. */
export function packPages(all: readonly Candidate[], field: Field, tries: number): Arrangement {
  const choose = steadyChooser();
  const candidates = all.map((candidate) => thrifty(candidate));
  const starts = ORDERS.flatMap((order) =>
    HABITS.map((habit) => layAll([], candidates.toSorted(order), field, () => habit)),
  );
  const first = starts.reduce((best, next) => (isBetter(next, best) ? next : best));
  let now = first;
  let best = starts.reduce((smallest, next) => (isSmaller(next, smallest) ? next : smallest));
  for (let i = 0; i < tries; i++) {
    const next = laidAnew(now, field, choose);
    if (isSmaller(next, best)) best = next;
    if (next.pages < now.pages || (next.pages === now.pages && next.fullness >= now.fullness * 0.98)) now = next;
  }
  return best;
}

function layAll(
  staying: readonly Lying[],
  candidates: readonly Candidate[],
  field: Field,
  habitOf: () => Habit,
): Arrangement {
  const sheet = new Sheet(field);
  for (const piece of staying) sheet.put(piece);
  for (const candidate of candidates) sheet.lay(candidate, habitOf());
  return sheet.arrangement();
}

/** Takes up the pieces of one page and some others, and lays them anew. */
function laidAnew({ lying }: Arrangement, field: Field, choose: Chooser): Arrangement {
  const one = lying[choose(lying.length)];
  const page = one?.pages[choose(one.pages.length)] ?? 0;
  const up = new Set(lying.filter((piece) => piece === one || piece.pages.includes(page)));
  for (let more = choose(3); more > 0; more--) {
    const other = lying[choose(lying.length)];
    if (other !== undefined) up.add(other);
  }
  const staying = lying.filter((piece) => !up.has(piece));
  const again = shuffled([...up], choose).map(({ candidate }) => candidate);
  return layAll(staying, again, field, () => HABITS[choose(HABITS.length)] ?? { whole: true, backwards: false });
}
