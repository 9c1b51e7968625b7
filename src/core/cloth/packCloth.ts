/**
 * Lays shapes on a length of cloth, as short as they go: one after the other where its lower end comes to lie highest, in several
 * orders, then again and again with the order changed, what is hardly worse taken too for a while, the best kept. Shapes are rows
 * of runs of cells; of the cloth each cell knows the next one taken and the next one free, so that what is in the way is passed
 * over at once.
 */
import { coverOf, evenLines } from "../sheets/cover";
import { cellsOver } from "../sheets/shapes";
import { steadyChooser, type Chooser } from "../sheets/steadyChoice";
import { invariant } from "../result";
import { SAME_POINT } from "../tolerance";
import type { Mm } from "../units";
import { areaOf, type Copy, type Way } from "./copies";

/** Where each copy lies, in the order given; mm from the edge of the usable cloth and from its beginning. */
export interface Place {
  readonly way: Way;
  readonly x: Mm;
  readonly y: Mm;
}

export interface PackOptions {
  /** mm. What the cloth leaves across. */
  readonly usable: Mm;
  /** Cells looked at: what the search is given, whatever the machine. */
  readonly looks: number;
  /** mm. Short enough: the search stops there. */
  readonly goal: Mm;
  /** Shares of what it is given, from 0 to 1. */
  readonly progress: (share: number) => void;
  /** Another row of choices. */
  readonly seed: number;
}

/** mm. The side of a cell at first, and of what is found in the end: near enough that no length is lost to it. */
const CELL: Mm = 5;
const FINE: Mm = 2.5;
/** Halves, thirds and quarters of the cloth's width end on a cell. */
const DIVIDED = 12;
/** Share of the looks that go into the fine cells. */
const FINE_SHARE = 0.35;
/** How many laid before the last one are still good enough to go on from. */
const MEMORY = 24;

/** A way to lie, in cells. */
interface Shape {
  readonly way: Way;
  readonly columns: number;
  readonly rows: number;
  /** Its runs, first those of rows far apart: shapes that meet at all mostly meet in some of these. */
  readonly row: Int16Array;
  readonly from: Int16Array;
  readonly to: Int16Array;
}

interface Item {
  readonly index: number;
  readonly shapes: readonly Shape[];
  readonly area: number;
}

/** An item in its place in the order of laying; `only`: the one way it may lie, else whichever ends highest. */
interface Next {
  readonly item: Item;
  readonly only: number | null;
}

interface Lying {
  readonly shape: Shape;
  readonly x: number;
  readonly y: number;
}

interface Arrangement {
  readonly lying: readonly Lying[];
  /** mm. */
  readonly length: Mm;
  /** Which place in the order ends lowest. */
  readonly lowest: number;
  /** Less is better: the length, and of two as long that with more room at the end. */
  readonly cost: number;
}

export function packCloth(copies: readonly Copy[], options: PackOptions): readonly Place[] {
  const choose = steadyChooser();
  for (let skip = 0; skip < options.seed; skip++) choose(2);
  const coarse = new Cloth(options.usable, CELL);
  const items = itemsOn(copies, coarse);
  const looks = Math.ceil(options.looks * (1 - FINE_SHARE));
  const progress = (from: number, share: number) => (part: number) => options.progress(from + share * part);
  const found = search(startsOf(items), coarse, { ...options, looks, choose, progress: progress(0, 1 - FINE_SHARE) });
  if (found.best.length <= options.goal + SAME_POINT) return placesOf(found, coarse);
  const fine = new Cloth(options.usable, FINE);
  const fineItems = itemsOn(copies, fine);
  const order = found.order.map(({ item, only }) => ({ item: invariant(fineItems[item.index], "item"), only }));
  const finer = search([order], fine, {
    ...options,
    looks: options.looks - looks,
    choose,
    progress: progress(1 - FINE_SHARE, FINE_SHARE),
  });
  return finer.best.length < found.best.length ? placesOf(finer, fine) : placesOf(found, coarse);
}

interface Found {
  readonly order: readonly Next[];
  readonly best: Arrangement;
}

function placesOf({ order, best }: Found, { cellWidth, cellLength }: Cloth): readonly Place[] {
  const places: Place[] = [];
  order.forEach(({ item }, index) => {
    const { shape, x, y } = invariant(best.lying[index], "place");
    places[item.index] = { way: shape.way, x: x * cellWidth, y: y * cellLength };
  });
  return places;
}

function itemsOn(copies: readonly Copy[], cloth: Cloth): readonly Item[] {
  const known = new Map<Way, Shape>();
  const shapeOf = (way: Way): Shape => {
    const shape = known.get(way) ?? cloth.shapeOf(way);
    known.set(way, shape);
    return shape;
  };
  return copies.map(({ ways }, index) => ({
    index,
    shapes: ways.map(shapeOf),
    area: areaOf(invariant(ways[0], "way").ring),
  }));
}

/** Largest first, longest first, widest first; what lies on the fold before all else, or among the others. */
function startsOf(items: readonly Item[]): readonly (readonly Next[])[] {
  const measures: readonly ((item: Item) => number)[] = [
    ({ area }) => area,
    ({ shapes }) => shapes[0]?.rows ?? 0,
    ({ shapes }) => shapes[0]?.columns ?? 0,
  ];
  const isAtFold = ({ shapes }: Item): boolean => shapes[0]?.way.atFold === true;
  const sorted = measures.map((by) => items.toSorted((p, q) => by(q) - by(p)));
  const foldFirst = sorted.map((one) => [...one.filter(isAtFold), ...one.filter((item) => !isAtFold(item))]);
  return [...sorted, ...(items.some(isAtFold) ? foldFirst : [])].map((one) => one.map((item) => ({ item, only: null })));
}

interface SearchOptions extends PackOptions {
  readonly choose: Chooser;
}

function search(starts: readonly (readonly Next[])[], cloth: Cloth, options: SearchOptions): Found {
  const { looks, goal, progress, choose } = options;
  let best: Found | null = null;
  const began = cloth.looks;
  for (const order of starts) {
    const laid = cloth.layAll(order, best?.best.length ?? Infinity);
    if (laid !== null && (best === null || laid.cost < best.best.cost)) best = { order, best: laid };
  }
  let found = invariant(best, "a first way to lie");
  let now = found;
  const memory = Array.from({ length: MEMORY }, () => found.best);
  let told = 0;
  for (let turn = 0; cloth.looks - began < looks && found.best.length > goal; turn++) {
    if (now.order.length < 2 && (now.order[0]?.item.shapes.length ?? 1) < 2) break;
    const order = changed(now, choose);
    const before = invariant(memory[turn % MEMORY], "memory");
    const worst = before.cost > now.best.cost ? before : now.best;
    const laid = cloth.layAll(order, worst.length);
    if (laid !== null && laid.cost <= worst.cost) now = { order, best: laid };
    if (now.best.cost < found.best.cost) found = now;
    memory[turn % MEMORY] = now.best;
    const share = (cloth.looks - began) / looks;
    if (share < told + TOLD_BY) continue;
    told = share;
    progress(Math.min(1, share));
  }
  progress(1);
  return found;
}

/** Share of what the search is given after which it tells how far it is. */
const TOLD_BY = 0.05;

/** One put elsewhere in the order, mostly what ends lowest put earlier, or two exchanged; how it may lie chosen anew. */
function changed({ order, best }: Found, choose: Chooser): readonly Next[] {
  const next = [...order];
  const manner = choose(4);
  const from = manner === 0 ? best.lowest : choose(next.length);
  const [one] = next.splice(from, 1);
  if (one === undefined) return order;
  const to = manner === 0 ? choose(Math.max(1, from)) : choose(next.length + 1);
  const ways = one.item.shapes.length;
  const only = ways < 2 || choose(2) === 0 ? null : choose(ways);
  const other = next[to];
  if (manner !== 1 || other === undefined) {
    next.splice(to, 0, { item: one.item, only });
    return next;
  }
  next[to] = { item: one.item, only };
  next.splice(from, 0, other);
  return next;
}

/** Cells of the cloth, and what is laid on them. */
class Cloth {
  readonly cellWidth: Mm;
  readonly cellLength: Mm;
  /** How many cells were looked at. */
  looks = 0;
  readonly #across: number;
  readonly #stride: number;
  #rows = 0;
  /** Of each cell the next one in its row that is taken, and that is free: itself, or one beyond. */
  #taken = new Int16Array();
  #free = new Int16Array();

  constructor(usable: Mm, cell: Mm) {
    this.#across = Math.max(1, DIVIDED * Math.floor(usable / cell / DIVIDED));
    this.#stride = this.#across + 1;
    this.cellWidth = usable / this.#across;
    this.cellLength = cell;
  }

  shapeOf(way: Way): Shape {
    const columns = Math.min(this.#across, cellsOver(way.width, this.cellWidth));
    const rows = cellsOver(way.length, this.cellLength);
    const marks = coverOf(way.ring, evenLines(columns, this.cellWidth), evenLines(rows, this.cellLength));
    const runs: (readonly [number, number, number])[] = [];
    for (let step = FAR_APART, first = true; step >= 1; step /= 2, first = false) {
      for (let row = first ? 0 : step; row < rows; row += first ? step : 2 * step) {
        for (let x = 0; x < columns; x++) {
          if (marks[row * columns + x] !== 1) continue;
          const from = x;
          while (x < columns && marks[row * columns + x] === 1) x++;
          runs.push([row, from, x]);
        }
      }
    }
    return {
      way,
      columns,
      rows,
      row: Int16Array.from(runs, ([row]) => row),
      from: Int16Array.from(runs, ([, from]) => from),
      to: Int16Array.from(runs, ([, , to]) => to),
    };
  }

  /** null: longer than `most` mm. */
  layAll(order: readonly Next[], most: Mm): Arrangement | null {
    const rows =
      most === Infinity
        ? order.reduce((sum, { item }) => sum + Math.max(...item.shapes.map((shape) => shape.rows)), 0)
        : Math.ceil((most + SAME_POINT) / this.cellLength);
    this.#clear(rows);
    const begun = new Map<Shape, readonly [number, number]>();
    const lying: Lying[] = [];
    let [length, low, lowest] = [0, 0, 0];
    for (const { item, only } of order) {
      const shapes = only === null ? item.shapes : [invariant(item.shapes[only], "way")];
      let found: Lying | null = null;
      let end = rows;
      for (const shape of shapes) {
        const [y, x] = begun.get(shape) ?? [0, 0];
        const spot = this.#find(shape, x, y, end - shape.rows);
        if (spot === null) continue;
        // What lay in the way still does: another one just like it need not be tried any higher.
        begun.set(shape, [spot.y, spot.x]);
        if (found !== null && spot.y + shape.rows >= found.y + found.shape.rows) continue;
        found = spot;
        end = spot.y + shape.rows;
      }
      if (found === null) return null;
      this.#stamp(found);
      const ends = found.y * this.cellLength + found.shape.way.length;
      if (ends > most + SAME_POINT) return null;
      if (ends > length) lowest = lying.length;
      lying.push(found);
      length = Math.max(length, ends);
      low += ends;
    }
    return { lying, length, lowest, cost: length + (LOW_WEIGHT * low) / order.length };
  }

  #clear(rows: number): void {
    const cells = rows * this.#stride;
    if (this.#taken.length < cells) {
      this.#taken = new Int16Array(cells);
      this.#free = new Int16Array(cells);
    }
    this.#rows = rows;
    this.#taken.fill(this.#across, 0, cells);
    const row = Int16Array.from({ length: this.#stride }, (_, x) => x);
    for (let at = 0; at < cells; at += this.#stride) this.#free.set(row, at);
  }

  /** The highest place from (x, y) on whose first row is no lower than `last`, the leftmost of these. */
  #find(shape: Shape, x: number, y: number, last: number): Lying | null {
    const { row, from, to, columns, way } = shape;
    const [taken, free, stride] = [this.#taken, this.#free, this.#stride];
    const span = way.atFold ? 0 : this.#across - columns;
    const runs = row.length;
    const lowest = Math.min(last, this.#rows - shape.rows);
    let looks = 0;
    let left = x;
    for (let top = y; top <= lowest; top++, left = 0) {
      let passed = 0;
      let run = 0;
      while (passed < runs && left <= span) {
        const at = (top + (row[run] ?? 0)) * stride;
        const begin = from[run] ?? 0;
        const met = taken[at + left + begin] ?? 0;
        looks++;
        if (met < left + (to[run] ?? 0)) {
          left = (free[at + met] ?? 0) - begin;
          passed = 0;
        } else {
          passed++;
          run = run + 1 === runs ? 0 : run + 1;
        }
      }
      if (left <= span) {
        this.looks += looks;
        return { shape, x: left, y: top };
      }
    }
    this.looks += looks;
    return null;
  }

  #stamp({ shape: { row, from, to }, x, y }: Lying): void {
    const [taken, free, stride] = [this.#taken, this.#free, this.#stride];
    for (let run = 0; run < row.length; run++) {
      const at = (y + (row[run] ?? 0)) * stride;
      const [begin, end] = [at + x + (from[run] ?? 0), at + x + (to[run] ?? 0)];
      const beyond = free[end] ?? 0;
      for (let cell = begin; cell < end; cell++) {
        taken[cell] = cell - at;
        free[cell] = beyond;
      }
      for (let cell = begin - 1; cell >= at && (taken[cell] ?? 0) > begin - at; cell--) taken[cell] = begin - at;
      for (let cell = begin - 1; cell >= at && free[cell] === begin - at; cell--) free[cell] = beyond;
    }
  }
}

/** Rows from one that is asked first to the next. */
const FAR_APART = 16;
/** How much of the mean of all lower ends is counted with the length: less than can outweigh a cell of it in most lays. */
const LOW_WEIGHT = 0.02;
