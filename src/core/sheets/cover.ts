/**
 * Which cells of a grid a ring touches. A cell counts as soon as some of the area lies in it, be it ever so little; what
 * only runs along its border (within SAME_POINT) does not count.
 */
import { invariant } from "../result";
import { SAME_POINT } from "../tolerance";
import type { Mm } from "../units";

interface Spot {
  readonly x: Mm;
  readonly y: Mm;
}

/** Cells between ascending lines: cell 0 from the first line to the second. Outside the lines there are none. */
export interface Lines {
  readonly at: readonly Mm[] | Float64Array;
  /** Whether the lines are evenly spaced from 0, which is quicker. mm; null: look them up. */
  readonly even: Mm | null;
}

/** `count` cells of `size` mm. */
export const evenLines = (count: number, size: Mm): Lines => ({
  at: Float64Array.from({ length: count + 1 }, (_, index) => index * size),
  even: size,
});

/** The cell that holds `value`, a value on a line belonging to the cell after it; -1 before the first line. */
function cellAt({ at, even }: Lines, value: Mm): number {
  if (even !== null) return Math.max(-1, Math.min(at.length - 1, Math.floor(value / even)));
  let cell = -1;
  while (cell + 1 < at.length && (at[cell + 1] ?? Infinity) <= value) cell++;
  return cell;
}

/** First and last cell between two values, both a hair inside, so that touching a line is not crossing it. */
function cellsBetween(lines: Lines, from: Mm, to: Mm): readonly [number, number] {
  const first = cellAt(lines, from + SAME_POINT);
  // A stretch along a line lies in neither cell; a shorter one within a cell in that cell.
  const last = cellAt(lines, to - SAME_POINT);
  return [Math.max(0, first), Math.min(lines.at.length - 2, last)];
}

/**
 * Marks (1) of the touched cells, row by row. What the ring goes round more than once is inside too.
 *
 * @source cells that the line runs through, and of the others those whose centre has a winding number other than 0
 */
export function coverOf(ring: readonly Spot[], columns: Lines, rows: Lines): Uint8Array {
  const width = columns.at.length - 1;
  const height = rows.at.length - 1;
  const marks = new Uint8Array(width * height);
  const centresY = centresOf(rows);
  const crossings: { x: Mm; turn: number }[][] = Array.from({ length: height }, () => []);
  ring.forEach((a, index) => {
    const b = invariant(ring[(index + 1) % ring.length], "point of a ring");
    const [low, high] = a.y <= b.y ? [a, b] : [b, a];
    const slope = high.y > low.y ? (high.x - low.x) / (high.y - low.y) : 0;
    const xAt = (y: Mm): Mm => low.x + (y - low.y) * slope;
    const [first, last] = cellsBetween(rows, low.y, high.y);
    for (let row = first; row <= last; row++) {
      const isLevel = high.y - low.y <= SAME_POINT;
      const p = isLevel ? low.x : xAt(Math.max(low.y, rows.at[row] ?? 0));
      const q = isLevel ? high.x : xAt(Math.min(high.y, rows.at[row + 1] ?? 0));
      const [from, to] = cellsBetween(columns, Math.min(p, q), Math.max(p, q));
      if (from <= to) marks.fill(1, row * width + from, row * width + to + 1);
    }
    const turn = low === a ? 1 : -1;
    for (let row = Math.max(0, cellAt(rows, low.y)); row < height; row++) {
      const y = centresY[row] ?? 0;
      if (y >= high.y) break;
      if (y >= low.y) crossings[row]?.push({ x: xAt(y), turn });
    }
  });
  fillInside(marks, centresOf(columns), crossings);
  return marks;
}

const centresOf = ({ at }: Lines): Float64Array =>
  Float64Array.from({ length: at.length - 1 }, (_, cell) => ((at[cell] ?? 0) + (at[cell + 1] ?? 0)) / 2);

function fillInside(
  marks: Uint8Array,
  centresX: Float64Array,
  crossings: readonly { readonly x: Mm; readonly turn: number }[][],
): void {
  const width = centresX.length;
  crossings.forEach((met, row) => {
    met.sort((p, q) => p.x - q.x);
    let winding = 0;
    let next = 0;
    for (let column = 0; column < width; column++) {
      const centre = centresX[column] ?? 0;
      for (; next < met.length; next++) {
        const crossing = invariant(met[next], "crossing");
        if (crossing.x > centre) break;
        winding += crossing.turn;
      }
      if (winding !== 0) marks[row * width + column] = 1;
      else if (next >= met.length) break;
    }
  });
}
