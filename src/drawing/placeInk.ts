/** Ink moved from a piece to the sheet, and from the sheet to something smaller. */
import { edgeMap } from "../core/geometry/edgeCurve";
import {
  piecePoint,
  sheetPoint,
  type Frame,
  type PiecePoint,
  type Point,
  type SheetPoint,
} from "../core/geometry/point";
import type { Placement } from "../core/sheets/layout";
import { onSheet } from "../core/sheets/placing";
import { radians, type Mm } from "../core/units";
import type { Ink } from "./ink";

const mapped = <F extends Frame, G extends Frame>(
  ink: Ink<F>,
  at: (p: Point<F>) => Point<G>,
  turn: number,
  scale: number,
): Ink<G> =>
  ink.kind === "line"
    ? { ...ink, edges: ink.edges.map((edge) => edgeMap(edge, at)) }
    : { ...ink, at: at(ink.at), turn: radians(ink.turn + turn), size: ink.size * scale };

/** The ink of a piece, placed. */
export function placedInk(ink: readonly Ink<"piece">[], placement: Placement): readonly Ink<"sheet">[] {
  return ink.map((one) => mapped(one, (p: PiecePoint) => onSheet(placement, p), (placement.quarters * Math.PI) / 2, 1));
}

/** The same in small, moved. */
export function scaledInk(ink: readonly Ink<"sheet">[], scale: number, dx: Mm, dy: Mm): readonly Ink<"sheet">[] {
  return ink.map((one) => mapped(one, ({ x, y }: SheetPoint) => sheetPoint(x * scale + dx, y * scale + dy), 0, scale));
}

/** Lines as seen from the other side of the paper; writing is not turned over. */
export const mirroredInk = (ink: readonly Ink<"piece">[]): readonly Ink<"piece">[] =>
  ink.map((one) => mapped(one, ({ x, y }: PiecePoint) => piecePoint(-x, y), 0, 1));
