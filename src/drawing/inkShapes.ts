/** Plain shapes on a sheet as ink. */
import { lineEdge, type EdgeCurve } from "../core/geometry/edgeCurve";
import { sheetPoint, shift, type Frame, type Point, type SheetPoint } from "../core/geometry/point";
import { invariant } from "../core/result";
import { radians, type Mm } from "../core/units";
import type { InkLine, InkRole, InkText } from "./ink";

export const sheetLine = (role: InkRole, points: readonly SheetPoint[], closed = false): InkLine<"sheet"> => {
  const edges: EdgeCurve<"sheet">[] = points
    .slice(1)
    .map((to, index) => lineEdge(invariant(points[index], "point"), to));
  const [first, last] = [points[0], points.at(-1)];
  if (closed && first !== undefined && last !== undefined) edges.push(lineEdge(last, first));
  return { kind: "line", role, edges, closed };
};

export const sheetRect = (role: InkRole, x: Mm, y: Mm, width: Mm, height: Mm): InkLine<"sheet"> =>
  sheetLine(
    role,
    [sheetPoint(x, y), sheetPoint(x + width, y), sheetPoint(x + width, y + height), sheetPoint(x, y + height)],
    true,
  );

/** Kappa: a quarter of a circle as one cubic, off by less than 0.03 % of the radius. */
const KAPPA = 0.5523;

/** A circle as four curves, in any frame. */
export function circleEdges<F extends Frame>(centre: Point<F>, radius: Mm): readonly EdgeCurve<F>[] {
  const at = (u: number, v: number): Point<F> => shift(centre, u * radius, v * radius);
  const quarter = (ax: number, ay: number, bx: number, by: number): EdgeCurve<F> => ({
    a: at(ax, ay),
    b: at(bx, by),
    curve: { c1: at(ax + KAPPA * bx, ay + KAPPA * by), c2: at(bx + KAPPA * ax, by + KAPPA * ay) },
  });
  return [quarter(1, 0, 0, 1), quarter(0, 1, -1, 0), quarter(-1, 0, 0, -1), quarter(0, -1, 1, 0)];
}

export const sheetText = (
  role: InkRole,
  x: Mm,
  y: Mm,
  text: string,
  options: {
    readonly size: Mm;
    readonly anchor?: InkText<"sheet">["anchor"];
    readonly bold?: boolean;
    readonly turn?: number;
  },
): InkText<"sheet"> => ({
  kind: "text",
  role,
  at: sheetPoint(x, y),
  anchor: options.anchor ?? "start",
  text,
  size: options.size,
  turn: radians(options.turn ?? 0),
  ...(options.bold === true ? { bold: true as const } : {}),
});
