/** Lines of very many short straight stretches with as many as their form needs. */
import { lineEdge, type EdgeCurve } from "../geometry/edgeCurve";
import { directionOf, distance, turnBetween, type SheetPoint } from "../geometry/point";
import { LINE_THINNED } from "../tolerance";
import type { Radians } from "../units";

/** Lines of fewer edges are left as they are: curves are found again by how their stretches follow one another. */
const DENSE = 1200;

/**
 * The same line with fewer straight stretches, which leave the drawn ones by no more than LINE_THINNED; curves stay. A line of
 * up to DENSE edges comes back as it is.
 *
 * @source from each place as far on as one straight way passes all places between within the tolerance: Imai and Iri's sleeve,
 *         taken greedily
 */
export function thinned(edges: readonly EdgeCurve<"sheet">[]): readonly EdgeCurve<"sheet">[] {
  if (edges.length <= DENSE) return edges;
  const kept: EdgeCurve<"sheet">[] = [];
  let sleeve: Sleeve | null = null;
  let last: SheetPoint | null = null;
  const close = (): void => {
    if (sleeve !== null && last !== null) kept.push(lineEdge(sleeve.from, last));
    sleeve = null;
  };
  for (const edge of edges) {
    if (edge.curve !== null) {
      close();
      kept.push(edge);
      continue;
    }
    const longer: Sleeve | null = sleeve === null ? null : narrowed(sleeve, edge.b);
    if (longer === null) {
      close();
      sleeve = narrowed({ from: edge.a, reach: 0, way: null, left: 0, right: 0 }, edge.b);
    } else sleeve = longer;
    last = edge.b;
  }
  close();
  return kept;
}

/** The ways from a place that pass all places so far near enough: between `left` and `right` off `way`. */
interface Sleeve {
  readonly from: SheetPoint;
  /** How far the furthest place lies. */
  readonly reach: number;
  readonly way: Radians | null;
  readonly left: number;
  readonly right: number;
}

/** null: no straight way there passes the places between near enough, or the line turns back. */
function narrowed(sleeve: Sleeve, to: SheetPoint): Sleeve | null {
  const { from, reach, way } = sleeve;
  const off = distance(from, to);
  if (off < reach - LINE_THINNED) return null;
  if (off <= LINE_THINNED) return { ...sleeve, reach: Math.max(reach, off) };
  const here = directionOf(from, to);
  const half = Math.asin(LINE_THINNED / off);
  if (way === null) return { from, reach: off, way: here, left: -half, right: half };
  const turn = turnBetween(way, here);
  if (turn < sleeve.left || turn > sleeve.right) return null;
  return {
    ...sleeve,
    reach: Math.max(reach, off),
    left: Math.max(sleeve.left, turn - half),
    right: Math.min(sleeve.right, turn + half),
  };
}
