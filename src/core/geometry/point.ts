/**
 * Points, each in a named frame. The brand is required: a bare `{ x, y }` is no point, and two frames never mix.
 * In every frame x grows from the centre line to the side seam and y grows downward, as in SVG.
 */
import { radians, type Mm, type Radians } from "../units";

export type Frame = "piece" | "sheet" | "screen" | "file";

declare const frame: unique symbol;

export interface Point<F extends Frame> {
  readonly x: Mm;
  readonly y: Mm;
  readonly [frame]: F;
}

export type PiecePoint = Point<"piece">;
export type SheetPoint = Point<"sheet">;
/** Of a file that was read: in the file's own units, not mm. */
export type FilePoint = Point<"file">;

// The brand exists for the compiler alone, so each maker of points states its frame once, here.
export const piecePoint = (x: Mm, y: Mm): PiecePoint => ({ x, y }) as PiecePoint;
export const filePoint = (x: number, y: number): FilePoint => ({ x, y }) as FilePoint;
export const sheetPoint = (x: Mm, y: Mm): SheetPoint => ({ x, y }) as SheetPoint;
/** A point at (x, y) mm in the frame of `model`: how code that works in any frame makes its points. */
export const pointLike = <F extends Frame>(_model: Point<F>, x: Mm, y: Mm): Point<F> => ({ x, y }) as Point<F>;

export const distance = <F extends Frame>(a: Point<F>, b: Point<NoInfer<F>>): Mm =>
  Math.sqrt((b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y));

/** The point moved by (dx, dy) mm. */
export const shift = <F extends Frame>(p: Point<F>, dx: Mm, dy: Mm): Point<F> => pointLike(p, p.x + dx, p.y + dy);

/** The point a share of the way from a to b: 0 is a, 1 is b; outside 0..1 it lies beyond. */
export const between = <F extends Frame>(a: Point<F>, b: Point<NoInfer<F>>, share: number): Point<F> =>
  pointLike(a, a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share);

export const midpoint = <F extends Frame>(a: Point<F>, b: Point<NoInfer<F>>): Point<F> => between(a, b, 0.5);

/** Direction from a to b, in radians within (-π, π]. */
export const directionOf = <F extends Frame>(a: Point<F>, b: Point<NoInfer<F>>): Radians =>
  radians(Math.atan2(b.y - a.y, b.x - a.x));

/** The point at `length` mm from `from` in the given direction. */
export const polar = <F extends Frame>(from: Point<F>, direction: Radians, length: Mm): Point<F> =>
  pointLike(from, from.x + length * Math.cos(direction), from.y + length * Math.sin(direction));

/** The point turned about a centre; a positive angle turns +x towards +y. */
export function rotateAbout<F extends Frame>(p: Point<F>, centre: Point<NoInfer<F>>, angle: Radians): Point<F> {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const dx = p.x - centre.x;
  const dy = p.y - centre.y;
  return pointLike(p, centre.x + dx * c - dy * s, centre.y + dx * s + dy * c);
}

/** The angle at `corner` between the directions to a and to b, in radians within [0, π]. */
export function angleAt<F extends Frame>(corner: Point<F>, a: Point<NoInfer<F>>, b: Point<NoInfer<F>>): Radians {
  const ax = a.x - corner.x;
  const ay = a.y - corner.y;
  const bx = b.x - corner.x;
  const by = b.y - corner.y;
  return radians(Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)));
}

/** The same angle with its sign: positive where b lies on the +x-to-+y side of a. Within (-π, π]. */
export function turnBetween(from: Radians, to: Radians): Radians {
  const turn = Math.atan2(Math.sin(to - from), Math.cos(to - from));
  return radians(turn);
}
