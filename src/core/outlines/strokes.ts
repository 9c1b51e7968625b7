/** The lines of a file on the sheet: each unbroken line a stroke, in mm. */
import type { FileDrawing, LineLook } from "../decisions/fileDrawing";
import { edgeFlatten, edgeHullBounds, edgeLength, edgeMap, type EdgeCurve } from "../geometry/edgeCurve";
import { joinBounds, type Bounds } from "../geometry/bounds";
import { distance, filePoint, sheetPoint, type SheetPoint } from "../geometry/point";
import { readPath } from "../geometry/readPath";
import { JOINED_EXACTLY, OUTLINE_LOOKED_AT } from "../tolerance";
import type { Mm } from "../units";
import { thinned } from "./thinned";

export interface Stroke {
  /** "look:path" by their places in the drawing. */
  readonly key: string;
  /** In the order of the drawing. */
  readonly order: number;
  readonly look: LineLook;
  readonly edges: readonly EdgeCurve<"sheet">[];
  readonly closed: boolean;
  readonly a: SheetPoint;
  readonly b: SheetPoint;
  readonly length: Mm;
  readonly box: Bounds<"sheet">;
}

/** What is no line at all is left out: single places, numbers that no coordinate has. */
const FURTHEST: Mm = 1e6;

/** A place of the file on the sheet. */
export const onSheet =
  (mm: Mm) =>
  ({ x, y }: { readonly x: number; readonly y: number }): SheetPoint =>
    sheetPoint(x * mm, y * mm);

/**
 * Every line of the drawing, scaled.
 *
 * @param mm how long a unit of the file is
 */
export function strokesOf(drawing: FileDrawing, mm: Mm): readonly Stroke[] {
  const strokes: Stroke[] = [];
  const model = filePoint(0, 0);
  const place = onSheet(mm);
  drawing.lines.forEach(({ look, paths }, lookAt) => {
    paths.forEach((path, pathAt) => {
      const read = readPath(path, model);
      if (read === null) return;
      const drawn = read.edges.map((edge) => edgeMap(edge, place)).filter((edge) => edgeLength(edge) > 0);
      const edges = thinned(drawn);
      const stroke = strokeOf(`${lookAt}:${pathAt}`, strokes.length, look, edges, read.closed);
      if (stroke !== null) strokes.push(stroke);
    });
  });
  return strokes;
}

function strokeOf(
  key: string,
  order: number,
  look: LineLook,
  edges: readonly EdgeCurve<"sheet">[],
  isClosed: boolean,
): Stroke | null {
  const [first, last] = [edges[0], edges.at(-1)];
  if (first === undefined || last === undefined) return null;
  const box = edges.map((edge) => edgeHullBounds(edge)).reduce((one, other) => joinBounds(one, other));
  const isNear = [box.min.x, box.min.y, box.max.x, box.max.y].every((at) => Math.abs(at) < FURTHEST);
  if (!isNear) return null;
  const length = edges.reduce((sum, edge) => sum + edgeLength(edge), 0);
  // Drawn back to where it began, only without the word that it is closed.
  const closed = isClosed || (edges.length > 1 && distance(last.b, first.a) <= JOINED_EXACTLY && length > 1);
  return { key, order, look, edges, closed, a: first.a, b: last.b, length, box };
}

/** Points along a line that stay near enough to it for what is asked of its form; both ends among them. */
export const pointsAlong = (edges: readonly EdgeCurve<"sheet">[]): readonly SheetPoint[] =>
  edges.flatMap((edge, at) => edgeFlatten(edge, OUTLINE_LOOKED_AT).slice(at === 0 ? 0 : 1));
