/**
 * Lays pieces on a roll, as short as they go: one after the other where its lower end comes to lie highest, in several
 * orders, then again and again with the order changed, the better kept.
 */
import type { Mm } from "../units";
import { emptyRows, isFree, stamp } from "./bitRows";
import type { Laid, Shape, Shapes } from "./shapes";
import { steadyChooser, type Chooser } from "./steadyChoice";

/** Cells across the roll. Each piece has one turn at least that is no wider. */
export interface Roll {
  readonly across: number;
}

interface Arrangement {
  readonly lying: readonly Laid[];
  /** Cells down to the last piece's lower end. */
  readonly length: number;
  /** Sum of all lower ends: less where there is room at the end. */
  readonly low: number;
}

const ORDERS: readonly ((p: Shapes, q: Shapes) => number)[] = [
  (p, q) => q.area - p.area,
  (p, q) => longest(q) - longest(p),
  (p, q) => shortest(q) - shortest(p),
];
const longest = ({ turns }: Shapes): Mm => Math.max(turns[0]?.width ?? 0, turns[0]?.height ?? 0);
const shortest = ({ turns }: Shapes): Mm => Math.min(turns[0]?.width ?? 0, turns[0]?.height ?? 0);

const isShorter = (p: Arrangement, q: Arrangement): boolean =>
  p.length < q.length || (p.length === q.length && p.low < q.low);

/** Whichever way it ends highest; only upright; only lying. What ends highest by itself is often not the best for all. */
type Manner = "any" | "upright" | "lying";
const MANNERS: readonly Manner[] = ["any", "upright", "lying"];

/** A piece in its place in the order of laying, and how it may lie. */
interface Next {
  readonly shapes: Shapes;
  readonly turns: readonly Shape[];
}

function nextIn(shapes: Shapes, manner: Manner): Next {
  const turns = shapes.turns.filter(
    ({ width, height }) => manner === "any" || (manner === "upright") === height >= width,
  );
  return { shapes, turns: turns.length > 0 ? turns : shapes.turns };
}

/** The shortest way found within `tries` tries. */
export function packRoll(pieces: readonly Shapes[], roll: Roll, tries: number): readonly Laid[] {
  const choose = steadyChooser();
  const starts = MANNERS.flatMap((manner) =>
    ORDERS.map((sorting) => pieces.toSorted(sorting).map((shapes) => nextIn(shapes, manner))),
  );
  let order: readonly Next[] = [];
  let best: Arrangement | null = null;
  for (let i = 0; i < starts.length + tries; i++) {
    const next: readonly Next[] = starts[i] ?? changed(order, choose);
    const laid: Arrangement | null = layAll(next, roll, best?.length ?? Infinity);
    if (laid === null || (best !== null && isShorter(best, laid))) continue;
    best = laid;
    order = next;
  }
  return best?.lying ?? [];
}

/** One piece put elsewhere in the order, and how it may lie chosen anew. */
function changed(order: readonly Next[], choose: Chooser): readonly Next[] {
  const next = [...order];
  const [one] = next.splice(choose(next.length), 1);
  if (one !== undefined)
    next.splice(choose(next.length + 1), 0, nextIn(one.shapes, MANNERS[choose(MANNERS.length)] ?? "any"));
  return next;
}

/** null: longer than `most` cells. */
function layAll(order: readonly Next[], { across }: Roll, most: number): Arrangement | null {
  const down = order.reduce((sum, { turns }) => sum + Math.max(...turns.map((turn) => turn.kept.height)), 0);
  const taken = emptyRows(across, down);
  const lying: Laid[] = [];
  let length = 0;
  let low = 0;
  for (const { shapes, turns } of order) {
    let found: Laid | null = null;
    let end = Infinity;
    for (const turn of turns) {
      const spot = highest(taken, turn, end);
      if (spot === null) continue;
      found = { shapes, turn, ...spot };
      end = spot.y + turn.cells.height;
    }
    if (found === null || end > most) return null;
    stamp(taken, found.turn.kept, found.x - found.turn.marginX, found.y - found.turn.marginY);
    lying.push(found);
    length = Math.max(length, end);
    low += end;
  }
  return { lying, length, low };
}

/** The highest place of a shape whose lower end comes above `end`, the leftmost of these; null: none. */
function highest(taken: ReturnType<typeof emptyRows>, { cells }: Shape, end: number): { x: number; y: number } | null {
  const last = Math.min(taken.height - cells.height, end - cells.height - 1);
  for (let y = 0; y <= last; y++) {
    for (let x = 0; x + cells.width <= taken.width; x++) {
      if (isFree(taken, cells, x, y)) return { x, y };
    }
  }
  return null;
}
