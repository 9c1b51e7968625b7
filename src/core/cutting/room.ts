/** Room on a piece: where its grain line and its title go so that they cross none of its other lines. */
import { boundsOfPoints } from "../geometry/bounds";
import { piecePoint, type PiecePoint } from "../geometry/point";
import { segmentIntersections } from "../geometry/segment";
import type { Mm } from "../units";

/** Straight stretches that must not be written over. */
export type Lines = readonly (readonly PiecePoint[])[];

interface Box {
  readonly x0: Mm;
  readonly y0: Mm;
  readonly x1: Mm;
  readonly y1: Mm;
}

/** Shares of a piece's box where a grain line may stand, nearest the centre line first. */
const GRAIN_X = [0.13, 0.2, 0.27, 0.35, 0.43, 0.5, 0.58, 0.66, 0.75];
const GRAIN_Y = [
  [0.35, 0.85],
  [0.45, 0.85],
  [0.25, 0.65],
  [0.4, 0.7],
  [0.3, 0.5],
  [0.55, 0.75],
  [0.45, 0.6],
] as const;
/** Kept free about a grain line, mm. */
const GRAIN_ROOM: Mm = 7;

/** A grain line: upright, from above down, on the piece over its whole length and clear of its lines. */
export function grainLine(ring: readonly PiecePoint[], lines: Lines): readonly [PiecePoint, PiecePoint] {
  const { min, max } = boundsOfPoints(ring);
  const at = (x: number, y: number): PiecePoint => piecePoint(min.x + x * (max.x - min.x), min.y + y * (max.y - min.y));
  for (const room of [GRAIN_ROOM, GRAIN_ROOM / 3]) {
    for (const [top, bottom] of GRAIN_Y) {
      for (const x of GRAIN_X) {
        const [from, to] = [at(x, top), at(x, bottom)];
        if (isFree({ x0: from.x - room, y0: from.y, x1: from.x + room, y1: to.y }, ring, lines)) return [from, to];
      }
    }
  }
  return [at(0.5, 0.3), at(0.5, 0.7)];
}

/** Widths and heights of a title, largest first, mm; the later ones are for narrow pieces and are turned. */
const TITLES: readonly (readonly [Mm, Mm])[] = [
  [96, 46],
  [84, 42],
  [72, 38],
  [60, 34],
  [50, 30],
  [34, 110],
  [40, 26],
  [26, 90],
  [32, 20],
  [18, 80],
  [10, 90],
  [24, 14],
];
/** How far apart places for a title are tried, mm. */
const TRIED: Mm = 8;

/** Places from one end to the other, the middle among them; none where there is no room. */
function placesBetween(from: Mm, to: Mm): readonly Mm[] {
  if (to < from) return [];
  const each = Math.floor((to - from) / 2 / TRIED);
  return Array.from({ length: 2 * each + 1 }, (_, i) => (from + to) / 2 + (i - each) * TRIED);
}

export interface TitleBox {
  readonly centre: PiecePoint;
  readonly width: Mm;
  readonly height: Mm;
}

/** The largest free box, as near the middle of the piece as it can be. */
export function titleBox(ring: readonly PiecePoint[], lines: Lines): TitleBox {
  const { min, max } = boundsOfPoints(ring);
  const middle = piecePoint((min.x + max.x) / 2, (min.y + max.y) / 2);
  for (const [width, height] of TITLES) {
    let best: PiecePoint | null = null;
    let nearest = Infinity;
    for (const x of placesBetween(min.x + width / 2, max.x - width / 2)) {
      for (const y of placesBetween(min.y + height / 2, max.y - height / 2)) {
        const off = Math.hypot(x - middle.x, y - middle.y);
        const box = { x0: x - width / 2, y0: y - height / 2, x1: x + width / 2, y1: y + height / 2 };
        if (off < nearest && isFree(box, ring, lines)) [best, nearest] = [piecePoint(x, y), off];
      }
    }
    if (best !== null) return { centre: best, width, height };
  }
  return { centre: middle, width: 20, height: 12 };
}

/** Whether a box lies on the piece, and no line comes into it. */
function isFree({ x0, y0, x1, y1 }: Box, ring: readonly PiecePoint[], lines: Lines): boolean {
  const corners = [piecePoint(x0, y0), piecePoint(x1, y0), piecePoint(x1, y1), piecePoint(x0, y1)];
  if (!corners.every((corner) => isInRing(ring, corner))) return false;
  const enters = (a: PiecePoint, b: PiecePoint): boolean => {
    if (Math.max(a.x, b.x) < x0 || Math.min(a.x, b.x) > x1 || Math.max(a.y, b.y) < y0 || Math.min(a.y, b.y) > y1)
      return false;
    if (a.x >= x0 && a.x <= x1 && a.y >= y0 && a.y <= y1) return true;
    return corners.some(
      (corner, index) => segmentIntersections(a, b, corner, corners[(index + 1) % 4] ?? corner).length > 0,
    );
  };
  const crossed = (points: readonly PiecePoint[]): boolean =>
    points.some((b, index) => enters(points[index - 1] ?? b, b));
  return !crossed([...ring, ...ring.slice(0, 1)]) && !lines.some(crossed);
}

/**
 * Whether a point lies in a closed ring of straight stretches.
 *
 * @source crossing number of a level ray, half-open so that a corner counts once
 */
export function isInRing(ring: readonly PiecePoint[], p: PiecePoint): boolean {
  let inside = false;
  ring.forEach((b, index) => {
    const a = ring[(index + ring.length - 1) % ring.length] ?? b;
    if (a.y <= p.y !== b.y <= p.y && a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x) > p.x) inside = !inside;
  });
  return inside;
}
