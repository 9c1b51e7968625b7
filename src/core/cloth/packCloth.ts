/**
 * Lays shapes on a length of cloth, as short as they go: one after the other where its lower end comes to lie highest, in several
 * orders, then again and again with the order changed, what is hardly worse taken too for a while, the best kept. Shapes are rows
 * of runs of cells; of the cloth each cell knows the next one taken and the next one free, so that what is in the way is passed
 * over at once.
 */
import { ringArea } from "../geometry/ringArea";
import { coverOf, evenLines } from "../sheets/cover";
import { cellsOver } from "../sheets/shapes";
import { shuffled, steadyChooser, type Chooser } from "../sheets/steadyChoice";
import { invariant } from "../result";
import { SAME_POINT } from "../tolerance";
import type { Mm } from "../units";
import type { Copy, Way } from "./rings";

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

/** mm. The sides of cells: coarse ones to try many orders on, fine ones so that hardly any length is lost in the end. */
const CELLS: readonly Mm[] = [10, 5, 2.5];
/** Share of the looks that each of them is given. */
const SHARES: readonly number[] = [0.45, 0.35, 0.2];
/** Halves, thirds and quarters of the cloth's width end on a cell. */
const DIVIDED = 12;
/** How many laid before the last one are still good enough to go on from. */
const MEMORY = 20;
/** From so many orders the search begins, each time from one shuffled; the best of all is gone on with in finer cells. */
const LIVES = 3;

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
  for (let skip = 0; skip < options.seed * 101; skip++) choose(2);
  let order: readonly Next[] | null = null;
  let best: { readonly length: Mm; readonly places: readonly Place[] } | null = null;
  let spent = 0;
  CELLS.forEach((cell, level) => {
    if (best !== null && best.length <= options.goal + SAME_POINT) return;
    const cloth = new Cloth(options.usable, cell);
    const items = itemsOn(copies, cloth);
    const share = SHARES[level] ?? 0;
    const from = spent;
    spent += share;
    const starts: readonly (readonly Next[])[] =
      order === null
        ? startsOf(items)
        : [order.map(({ item, only }) => ({ item: invariant(items[item.index], "item"), only }))];
    const progress = (part: number): void => options.progress(from + share * part);
    const found = search(starts, cloth, { ...options, looks: options.looks * share, choose, progress });
    order = found.order;
    if (best === null || found.best.length < best.length)
      best = { length: found.best.length, places: placesOf(found, cloth) };
  });
  options.progress(1);
  return invariant<{ readonly places: readonly Place[] }>(best, "a way to lie").places;
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
    area: ringArea(invariant(ways[0], "way").ring),
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
  return [...sorted, ...(items.some(isAtFold) ? foldFirst : [])].map((one) =>
    one.map((item) => ({ item, only: null })),
  );
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
  const lives = starts.length === 1 ? 1 : LIVES;
  let now = found;
  let memory = Array.from({ length: MEMORY }, () => found.best);
  let life = 1;
  let told = 0;
  for (
    let turn = 0;
    turn < MOST_TURNS && cloth.looks - began < looks && found.best.length > goal + SAME_POINT;
    turn++
  ) {
    if (now.order.length < 2 && (now.order[0]?.item.shapes.length ?? 1) < 2) break;
    if (life < lives && cloth.looks - began > (looks * life) / lives) {
      life++;
      now = startFrom(now.order, cloth, choose);
      const { best: first } = now;
      memory = Array.from({ length: MEMORY }, () => first);
    }
    const order = changed(now, choose);
    const before = invariant(memory[turn % MEMORY], "memory");
    const worst = before.cost > now.best.cost ? before : now.best;
    const laid = cloth.layAll(order, worst.length, now);
    if (laid !== null && laid.cost <= worst.cost) now = { order, best: laid };
    if (now.best.cost < found.best.cost) found = now;
    memory[turn % MEMORY] = now.best;
    const share = (cloth.looks - began) / looks;
    const stage = Math.floor(share * TIMES_TOLD);
    if (stage === told) continue;
    told = stage;
    progress(Math.min(1, share));
  }
  progress(1);
  return found;
}

function startFrom(before: readonly Next[], cloth: Cloth, choose: Chooser): Found {
  const order = shuffled(before, choose).map(({ item }): Next => ({ item, only: null }));
  return { order, best: invariant(cloth.layAll(order, Infinity), "a way to lie") };
}

/** How often the search tells how far it is. */
const TIMES_TOLD = 20;
/** Orders tried at the most: where hardly anything is to be laid, each takes but a few looks. */
const MOST_TURNS = 100_000;

/**
 * One put elsewhere in the order: what ends lowest put earlier, any a little way or anywhere, or two exchanged; how it may lie
 * chosen anew.
 */
export function changed({ order, best }: Found, choose: Chooser): readonly Next[] {
  const manner = MANNERS[choose(MANNERS.length)] ?? "anywhere";
  const from = manner === "lowest" ? best.lowest : choose(order.length);
  const next = [...order];
  const [one] = next.splice(from, 1);
  if (one === undefined) return order;
  const to = placeFor(manner, from, next.length, choose);
  const ways = one.item.shapes.length;
  const moved: Next = { item: one.item, only: ways < 2 || choose(2) === 0 ? null : choose(ways) };
  const other = next[to];
  if (manner === "exchanged" && other !== undefined) {
    next[to] = moved;
    next.splice(from, 0, other);
  } else next.splice(to, 0, moved);
  return next;
}

/** Each as often as it stands here. */
const MANNERS = ["lowest", "exchanged", "anywhere", "anywhere", "near", "near"] as const;
const NEAR = 3;

function placeFor(manner: (typeof MANNERS)[number], from: number, most: number, choose: Chooser): number {
  if (manner === "lowest") return choose(Math.max(1, from));
  if (manner === "near") return Math.max(0, Math.min(most, from + choose(2 * NEAR + 1) - NEAR));
  return choose(most + 1);
}

/** Cells of the cloth, and what is laid on them. */
class Cloth {
  readonly cellWidth: Mm;
  readonly cellLength: Mm;
  /** How many cells were looked at. */
  looks = 0;
  readonly #across: number;
  readonly #stride: number;
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
    for (const row of farApartFirst(rows)) {
      let from = 0;
      for (let x = 0; x <= columns; x++) {
        if (x < columns && marks[row * columns + x] === 1) continue;
        if (x > from) runs.push([row, from, x]);
        from = x + 1;
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

  /**
   * null: longer than `most` mm.
   *
   * @param like what was laid before on this cloth: as far as the order is the same, so are the places
   */
  layAll(order: readonly Next[], most: Mm, like: Found | null = null): Arrangement | null {
    const rows =
      most === Infinity
        ? order.reduce((sum, { item }) => sum + Math.max(...item.shapes.map((shape) => shape.rows)), 0)
        : Math.ceil((most + SAME_POINT) / this.cellLength);
    this.#clear(rows);
    const begun = new Map<Shape, readonly [number, number]>();
    const lying: Lying[] = [];
    let [length, low, lowest] = [0, 0, 0];
    let isSame = like !== null;
    for (const next of order) {
      const { item, only } = next;
      const same = like?.order[lying.length];
      isSame &&= same?.item === item && same.only === only;
      const shapes = only === null ? item.shapes : [invariant(item.shapes[only], "way")];
      let found: Lying | null = isSame ? (like?.best.lying[lying.length] ?? null) : null;
      let end = found === null ? rows : 0;
      for (const shape of found === null ? shapes : []) {
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
      if (end === 0) begun.set(found.shape, [found.y, found.x]);
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
    this.looks += cells >> 5;
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
    let looks = 0;
    let left = x;
    for (let top = y; top <= last; top++, left = 0) {
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
      this.looks += (end - begin) >> 3;
      for (let cell = begin; cell < end; cell++) {
        taken[cell] = cell - at;
        free[cell] = beyond;
      }
      for (let cell = begin - 1; cell >= at && (taken[cell] ?? 0) > begin - at; cell--) taken[cell] = begin - at;
      for (let cell = begin - 1; cell >= at && free[cell] === begin - at; cell--) free[cell] = beyond;
    }
  }
}

/** Steps between rows: those asked first lie far apart, then what lies between. */
const STEPS: readonly number[] = [16, 8, 4, 2, 1];

const farApartFirst = (rows: number): ReadonlySet<number> =>
  new Set(STEPS.flatMap((step) => Array.from({ length: Math.ceil(rows / step) }, (_, index) => index * step)));

/** How much of the mean of all lower ends is counted with the length: so a lay with room at its end is gone on from. */
const LOW_WEIGHT = 0.2;
