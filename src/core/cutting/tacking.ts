/** Rows of tacking that tell the halves of a toile apart once it is sewn: one on the wearer's left, two on her right. */
import type { Half } from "../decisions/alteration";
import { piecePoint, type PiecePoint } from "../geometry/point";
import { boundsOfPoints } from "../geometry/bounds";
import { isFreeWithin, type Lines } from "./room";
import type { Mm } from "../units";

/** A row, from above down along the straight grain. */
export type TackingRow = readonly [PiecePoint, PiecePoint];

const tackingCount = (half: Half): 1 | 2 => (half === "left" ? 1 : 2);

/** Lengths of a row, longest first, and what two rows stand apart, mm. */
const LENGTHS: readonly Mm[] = [50, 36, 24, 14];
const APART: Mm = 6;
/** Kept free about the rows, their name beside them included, mm; less where there is no room for it. */
const ROOMS: readonly Mm[] = [6, 3, 1];
/** How finely a place is looked for, mm. */
const TRIED: Mm = 6;

/**
 * The rows of a piece that is cut for one half: upright on it, clear of its other lines, as long as there is room for and as
 * near its grain line as can be. None where it has no room at all.
 */
export function tackingRows(
  half: Half,
  ring: readonly PiecePoint[],
  lines: Lines,
  near: PiecePoint,
): readonly TackingRow[] {
  const count = tackingCount(half);
  const width = (count - 1) * APART;
  const { min, max } = boundsOfPoints(ring);
  for (const room of ROOMS) {
    for (const length of LENGTHS) {
      let best: PiecePoint | null = null;
      let nearest = Infinity;
      for (const x of placesFrom(min.x + room, max.x - room - width)) {
        for (const y of placesFrom(min.y + room, max.y - room - length)) {
          const off = Math.hypot(x + width / 2 - near.x, y + length / 2 - near.y);
          if (off >= nearest) continue;
          const [x0, x1, y0, y1] = [x - room, x + width + room, y - room, y + length + room];
          const corners = [piecePoint(x0, y0), piecePoint(x1, y0), piecePoint(x1, y1), piecePoint(x0, y1)];
          if (isFreeWithin(corners, ring, lines)) [best, nearest] = [piecePoint(x, y), off];
        }
      }
      if (best === null) continue;
      const { x, y } = best;
      return Array.from({ length: count }, (_, row): TackingRow => [
        piecePoint(x + row * APART, y),
        piecePoint(x + row * APART, y + length),
      ]);
    }
  }
  return [];
}

const placesFrom = (from: Mm, to: Mm): readonly Mm[] =>
  Array.from({ length: Math.max(0, Math.floor((to - from) / TRIED) + 1) }, (_, index) => from + index * TRIED);
