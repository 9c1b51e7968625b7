/** Room on a piece: where its grain line and its title go so that they cross none of its other lines. */
import { boundsOfPoints } from "../geometry/bounds";
import { piecePoint, type Frame, type PiecePoint, type Point } from "../geometry/point";
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
/** Kept free about a grain line and at its ends, mm. */
const GRAIN_ROOM: Mm = 7;
const GRAIN_END: Mm = 12;
/** How finely its ends are looked for, mm. */
const GRAIN_STEP: Mm = 4;
/** One nearer the centre line is taken for so much of the longest. */
const LONG_ENOUGH = 0.85;

/** A grain line: upright, from above down, on the piece over its whole length, clear of its lines, and as long as can be. */
export function grainLine(ring: readonly PiecePoint[], lines: Lines): readonly [PiecePoint, PiecePoint] {
  const { min, max } = boundsOfPoints(ring);
  const at = (x: number, y: number): PiecePoint => piecePoint(min.x + x * (max.x - min.x), min.y + y * (max.y - min.y));
  for (const room of [GRAIN_ROOM, GRAIN_ROOM / 3]) {
    const found = GRAIN_X.flatMap((share) => {
      const { x } = at(share, 0);
      const [from, to] = longestRun(min.y, max.y, (y0, y1) =>
        isFree({ x0: x - room, y0, x1: x + room, y1 }, ring, lines),
      );
      return to - from > 4 * GRAIN_END
        ? [[piecePoint(x, from + GRAIN_END), piecePoint(x, to - GRAIN_END)] as const]
        : [];
    });
    const longest = Math.max(...found.map(([from, to]) => to.y - from.y));
    const best = found.find(([from, to]) => to.y - from.y >= LONG_ENOUGH * longest);
    if (best !== undefined) return best;
  }
  return [at(0.5, 0.3), at(0.5, 0.7)];
}

/** The longest stretch between two ends all of whose short parts are free. */
function longestRun(from: Mm, to: Mm, isFreeBetween: (a: Mm, b: Mm) => boolean): readonly [Mm, Mm] {
  let [best, start]: [readonly [Mm, Mm], Mm] = [[from, from], from];
  for (let k = 0; from + (k + 1) * GRAIN_STEP <= to; k += 1) {
    const [a, b] = [from + k * GRAIN_STEP, from + (k + 1) * GRAIN_STEP];
    if (!isFreeBetween(a, b)) start = b;
    else if (b - start > best[1] - best[0]) best = [start, b];
  }
  return best;
}

/** Lengths and heights of a title, largest first, mm. */
const TITLES: readonly (readonly [along: Mm, across: Mm])[] = [
  [110, 46],
  [96, 46],
  [84, 42],
  [72, 38],
  [110, 30],
  [60, 34],
  [90, 26],
  [50, 30],
  [40, 26],
  [80, 18],
  [32, 20],
  [90, 10],
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

/** The largest free box, as near the middle of the piece as it can be: along the grain, as all that is written large. */
export function titleBox(ring: readonly PiecePoint[], lines: Lines): TitleBox {
  const { min, max } = boundsOfPoints(ring);
  const middle = piecePoint((min.x + max.x) / 2, (min.y + max.y) / 2);
  for (const [height, width] of TITLES) {
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
  return { centre: middle, width: 12, height: 20 };
}

/** Whether a box lies on the piece, and no line comes into it. */
const isFree = ({ x0, y0, x1, y1 }: Box, ring: readonly PiecePoint[], lines: Lines): boolean =>
  isFreeWithin([piecePoint(x0, y0), piecePoint(x1, y0), piecePoint(x1, y1), piecePoint(x0, y1)], ring, lines);

/** The same of a box that may be turned, by its corners in order. */
export function isFreeWithin(corners: readonly PiecePoint[], ring: readonly PiecePoint[], lines: Lines): boolean {
  if (!corners.every((corner) => isInRing(ring, corner))) return false;
  const { min, max } = boundsOfPoints(corners);
  const enters = (a: PiecePoint, b: PiecePoint): boolean => {
    if (Math.max(a.x, b.x) < min.x || Math.min(a.x, b.x) > max.x) return false;
    if (Math.max(a.y, b.y) < min.y || Math.min(a.y, b.y) > max.y) return false;
    if (isInRing(corners, a)) return true;
    return corners.some(
      (corner, index) => segmentIntersections(a, b, corner, corners[(index + 1) % corners.length] ?? corner).length > 0,
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
export function isInRing<F extends Frame>(ring: readonly Point<F>[], p: Point<NoInfer<F>>): boolean {
  let inside = false;
  ring.forEach((b, index) => {
    const a = ring[(index + ring.length - 1) % ring.length] ?? b;
    if (a.y <= p.y !== b.y <= p.y && a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x) > p.x) inside = !inside;
  });
  return inside;
}
