/** Which stretches of a line lie off all of the lines that were printed in its place. */
import { edgeParameterAtLength, edgePointAt, type EdgeCurve } from "../geometry/edgeCurve";
import { distance, type PiecePoint } from "../geometry/point";
import { SAME_LINE, SHORTEST_CUT } from "../tolerance";
import type { Mm } from "../units";
import { nearestOfAll } from "./nearestOfAll";
import type { SewnLine } from "./sewnLines";

/** Lengths from the start of a line (or of a ring of lines), mm. Of a ring the second may be past its end. */
export interface Stretch {
  readonly from: Mm;
  readonly to: Mm;
}

/**
 * The stretches of a line whose points lie more than `SAME_LINE` from every printed line. No such point is missed: from
 * the middle of a stretch of length h the distance changes by h/2 at the most on either side, and what that leaves open is
 * halved, until it is shorter than `SHORTEST_CUT` and counts as changed.
 */
export function changedStretches(line: SewnLine, printed: readonly EdgeCurve<"piece">[]): readonly Stretch[] {
  if (printed.length === 0) return [{ from: 0, to: line.length }];
  if (printed.some((old) => isSameEdge(line.curve, old))) return [];
  const nearestOf = nearestOfAll(printed);
  const found: Stretch[] = [];
  const look = (from: Mm, to: Mm): void => {
    const half = (to - from) / 2;
    const off = nearestOf(pointAtLength(line, from + half))?.distance ?? Infinity;
    if (off + half <= SAME_LINE) return;
    if (off - half > SAME_LINE || to - from <= SHORTEST_CUT) {
      const last = found.at(-1);
      if (last !== undefined && last.to === from) found[found.length - 1] = { from: last.from, to };
      else found.push({ from, to });
      return;
    }
    look(from, from + half);
    look(from + half, to);
  };
  look(0, line.length);
  return found;
}

const pointAtLength = ({ curve }: SewnLine, length: Mm): PiecePoint =>
  edgePointAt(curve, edgeParameterAtLength(curve, length));

/** Points of two cubics at one parameter are no further apart than the furthest of their controls. */
function isSameEdge(a: EdgeCurve<"piece">, b: EdgeCurve<"piece">): boolean {
  if (distance(a.a, b.a) > SAME_LINE || distance(a.b, b.b) > SAME_LINE) return false;
  if (a.curve === null || b.curve === null) return a.curve === b.curve;
  return distance(a.curve.c1, b.curve.c1) <= SAME_LINE && distance(a.curve.c2, b.curve.c2) <= SAME_LINE;
}

/** Stretches of a ring of the given length, each run on by `by` at both ends, joined where they then meet. */
export function runOn(stretches: readonly Stretch[], by: Mm, total: Mm): readonly Stretch[] {
  const joined: { from: Mm; to: Mm }[] = [];
  for (const { from, to } of stretches.toSorted((a, b) => a.from - b.from)) {
    const last = joined.at(-1);
    if (last !== undefined && from - by <= last.to + by) last.to = Math.max(last.to, to);
    else joined.push({ from, to });
  }
  const [first, last] = [joined[0], joined.at(-1)];
  if (first === undefined || last === undefined) return [];
  if (first.from + total - by <= last.to + by) {
    // Round the ring's own start: the last stretch goes on into the first.
    if (joined.length === 1) return [{ from: first.from - by, to: first.from - by + total }];
    joined.shift();
    last.to = first.to + total;
  }
  return joined.map(({ from, to }) => ({ from: from - by, to: to + by }));
}
