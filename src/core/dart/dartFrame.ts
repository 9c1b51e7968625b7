/**
 * A dart's own axes: along its axis towards the mouth, and across it towards the inner mouth end (which lies nearer the
 * centre line, or above for a side dart). All moves of a dart's end are stated in them.
 */
import { between, distance, midpoint, shift, type PiecePoint } from "../geometry/point";
import type { Mm } from "../units";

export interface DartCorners {
  readonly apex: PiecePoint;
  readonly inner: PiecePoint;
  readonly outer: PiecePoint;
}

export interface ApexOffset {
  /** Towards the mouth: positive makes the dart shorter. */
  readonly shorten: Mm;
  /** Across, towards the inner mouth end's side. */
  readonly across: Mm;
}

interface Axes {
  readonly along: { readonly x: number; readonly y: number };
  readonly across: { readonly x: number; readonly y: number };
  readonly length: Mm;
}

function axesOf({ apex, inner, outer }: DartCorners): Axes {
  const middle = midpoint(inner, outer);
  const length = distance(apex, middle);
  const along = length === 0 ? { x: 0, y: 1 } : { x: (middle.x - apex.x) / length, y: (middle.y - apex.y) / length };
  const square = { x: -along.y, y: along.x };
  const towardsInner = square.x * (inner.x - outer.x) + square.y * (inner.y - outer.y) >= 0;
  return { along, across: towardsInner ? square : { x: -square.x, y: -square.y }, length };
}

/** Length of the dart along its axis, apex to the middle of the mouth; mm. */
export const axisLength = (dart: DartCorners): Mm => axesOf(dart).length;

/** The dart's end after an offset in the dart's own axes. */
export function apexAfter(dart: DartCorners, offset: ApexOffset): PiecePoint {
  const { along, across } = axesOf(dart);
  return shift(
    dart.apex,
    along.x * offset.shorten + across.x * offset.across,
    along.y * offset.shorten + across.y * offset.across,
  );
}

/** The offset that brings the dart's end to a point: the inverse of `apexAfter`. */
export function apexOffset(dart: DartCorners, point: PiecePoint): ApexOffset {
  const { along, across } = axesOf(dart);
  const dx = point.x - dart.apex.x;
  const dy = point.y - dart.apex.y;
  return { shorten: dx * along.x + dy * along.y, across: dx * across.x + dy * across.y };
}

/** How far a point lies from a mouth end along the mouth line, positive away from the dart's middle; mm. */
export function mouthOffset({ inner, outer }: DartCorners, end: "inner" | "outer", point: PiecePoint): Mm {
  const from = end === "inner" ? inner : outer;
  const other = end === "inner" ? outer : inner;
  const width = distance(inner, outer);
  if (width === 0) return 0;
  return ((point.x - from.x) * (from.x - other.x) + (point.y - from.y) * (from.y - other.y)) / width;
}

/** The point on the mouth line at a distance from its end, positive away from the middle. */
export function mouthPointAt({ inner, outer }: DartCorners, end: "inner" | "outer", offset: Mm): PiecePoint {
  const from = end === "inner" ? inner : outer;
  const other = end === "inner" ? outer : inner;
  const width = distance(inner, outer);
  return width === 0 ? from : between(from, other, -offset / width);
}
