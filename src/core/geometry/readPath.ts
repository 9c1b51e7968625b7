/** Path data of absolute M, L, C and Z alone, read back: one unbroken line. */
import { cubicEdge, lineEdge, type EdgeCurve } from "./edgeCurve";
import { pointLike, type Frame, type Point } from "./point";

export interface ReadPath<F extends Frame> {
  /** In order, each beginning where the one before ends; the last of a closed line ends where the first begins. */
  readonly edges: readonly EdgeCurve<F>[];
  readonly closed: boolean;
}

const NUMBER = String.raw`-?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][-+]?\d+)?`;
const STEP = new RegExp(String.raw`([MLCZ])((?:[\s,]*${NUMBER})*)[\s,]*`, "y");
const NUMBERS = new RegExp(NUMBER, "g");
const COUNT: Readonly<Record<string, number>> = { M: 2, L: 2, C: 6, Z: 0 };

/**
 * Reads path data.
 *
 * @param model any point of the frame that the path lies in
 * @returns null where it is anything else than one M, then L and C, then a Z or none
 */
export function readPath<F extends Frame>(path: string, model: Point<F>): ReadPath<F> | null {
  const edges: EdgeCurve<F>[] = [];
  let first: Point<F> | null = null;
  let last: Point<F> | null = null;
  let closed = false;
  let at = 0;
  while (at < path.length) {
    STEP.lastIndex = at;
    const [found, letter = "", behind = ""] = STEP.exec(path) ?? [];
    if (found === undefined || closed) return null;
    at += found.length;
    const numbers = (behind.match(NUMBERS) ?? []).map(Number);
    const count = COUNT[letter] ?? 0;
    if (!numbers.every(Number.isFinite)) return null;
    if (letter === "Z") {
      if (numbers.length > 0 || first === null || last === null) return null;
      if (last.x !== first.x || last.y !== first.y) edges.push(lineEdge(last, first));
      closed = true;
      continue;
    }
    if (numbers.length === 0 || numbers.length % count !== 0) return null;
    const points: Point<F>[] = [];
    for (let i = 0; i < numbers.length; i += 2) points.push(pointLike(model, numbers[i] ?? 0, numbers[i + 1] ?? 0));
    if (letter === "M") {
      const [start] = points;
      if (first !== null || points.length !== 1 || start === undefined) return null;
      first = start;
      last = start;
    } else if (letter === "L") {
      for (const point of points) {
        if (last === null) return null;
        edges.push(lineEdge(last, point));
        last = point;
      }
    } else {
      for (let i = 0; i < points.length; i += 3) {
        const [c1, c2, b] = points.slice(i, i + 3);
        if (last === null || c1 === undefined || c2 === undefined || b === undefined) return null;
        edges.push(cubicEdge({ a: last, c1, c2, b }));
        last = b;
      }
    }
  }
  return first === null ? null : { edges, closed };
}
