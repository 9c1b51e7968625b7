/** Outlines as SVG path data. One unit is one mm of the outline's frame. */
import type { EdgeCurve } from "./edgeCurve";
import type { Mm } from "../units";
import type { Frame, Point } from "./point";

/** Steps per mm in path data: 0.01 mm is far below what a screen or a printer shows. */
const STEPS_PER_MM = 100;

/**
 * A closed outline as path data: a move, a line or curve per edge, and a close. Coordinates are rounded to 0.01 mm and
 * written without an exponent. Each edge is taken to start where the one before ends. No edges give an empty text.
 */
export const outlinePath = <F extends Frame>(edges: readonly EdgeCurve<F>[]): string =>
  edges.length === 0 ? "" : `${chainPath(edges)}Z`;

/** The same for edges that do not close. */
export function chainPath<F extends Frame>(edges: readonly EdgeCurve<F>[]): string {
  const first = edges[0];
  if (first === undefined) return "";
  let path = `M${written(first.a)}`;
  for (const { b, curve } of edges) {
    path += curve === null ? `L${written(b)}` : `C${written(curve.c1)} ${written(curve.c2)} ${written(b)}`;
  }
  return path;
}

const written = <F extends Frame>({ x, y }: Point<F>): string => `${decimal(x)} ${decimal(y)}`;

/** Hundredths as they are written after whole millimetres, without a nought at the end. */
const HUNDREDTHS: readonly string[] = Array.from({ length: STEPS_PER_MM }, (_, steps) =>
  String(steps / STEPS_PER_MM).slice(1),
);
/** Steps. Up to here whole numbers are written from a table of the engine's, many times as fast as fractions. */
const MOST_STEPS = 1e8;

function decimal(value: Mm): string {
  const steps = Math.round(value * STEPS_PER_MM);
  const size = Math.abs(steps);
  // A multiple of 0.01 rounded this way is the double nearest to its decimal text, which is what JavaScript prints; it turns to
  // exponents only from 1e21 on, and writes -0 as 0.
  if (!(steps < MOST_STEPS && steps > -MOST_STEPS)) return String(steps / STEPS_PER_MM);
  const whole = Math.trunc(size / STEPS_PER_MM);
  return `${steps < 0 ? "-" : ""}${whole}${HUNDREDTHS[size - whole * STEPS_PER_MM] ?? ""}`;
}
