/** Path data of absolute M, L, C and Z alone, read back: one unbroken line. */
import { cubicEdge, lineEdge, type EdgeCurve } from "./edgeCurve";
import { pathSteps } from "./pathData";
import { pointLike, type Frame, type Point } from "./point";

export interface ReadPath<F extends Frame> {
  /** In order, each beginning where the one before ends; the last of a closed line ends where the first begins. */
  readonly edges: readonly EdgeCurve<F>[];
  readonly closed: boolean;
}

/**
 * Reads path data.
 *
 * @param model any point of the frame that the path lies in
 * @returns null where it is anything else than one M, then L and C, then a Z or none
 */
export function readPath<F extends Frame>(path: string, model: Point<F>): ReadPath<F> | null {
  const steps = pathSteps(path);
  const [start] = steps ?? [];
  if (steps === null || start === undefined) return null;
  const pointsOf = (numbers: readonly number[]): Point<F>[] =>
    numbers.flatMap((x, i) => (i % 2 === 0 ? [pointLike(model, x, numbers[i + 1] ?? 0)] : []));
  const edges: EdgeCurve<F>[] = [];
  const [first = model] = pointsOf(start.numbers);
  let last = first;
  for (const { letter, numbers } of steps.slice(1)) {
    const points = pointsOf(numbers);
    if (letter === "Z" && (last.x !== first.x || last.y !== first.y)) edges.push(lineEdge(last, first));
    if (letter === "L") {
      for (const point of points) {
        edges.push(lineEdge(last, point));
        last = point;
      }
    }
    if (letter === "C") {
      for (let i = 0; i < points.length; i += 3) {
        const [c1 = last, c2 = last, b = last] = points.slice(i, i + 3);
        edges.push(cubicEdge({ a: last, c1, c2, b }));
        last = b;
      }
    }
  }
  return { edges, closed: steps.at(-1)?.letter === "Z" };
}
