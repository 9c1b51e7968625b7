/**
 * Blending a nest: every point takes its place across the piece from the fractional size of its own level, and its
 * height from the base size, so that lengths stay the base size's and the same fraction at a level is the same on every
 * piece. Control points follow the level of the point they belong to, so a seam between two levels stays one smooth
 * curve that keeps the base size's directions at its ends.
 */
import { piecePoint, type PiecePoint } from "../geometry/point";
import { invariant } from "../result";
import {
  pointNames,
  type Edge,
  type LevelName,
  type NamedPoint,
  type Piece,
  type PointName,
  type SeamName,
} from "../pattern/piece";

/** Fractional index into the nest at each level: 0 is the first size, 1.5 half-way from the second to the third. */
export type LevelSizes = Readonly<Record<LevelName, number>>;

/** The same size at every level but waist and hip. */
export const levelSizes = (baseSize: number, waist: number, hip: number): LevelSizes => ({
  neck: baseSize,
  shoulder: baseSize,
  underarm: baseSize,
  bust: baseSize,
  underBust: baseSize,
  waist,
  hip,
});

/** The two neighbours of a fractional index in a list, and the share between them; below 0 or above 1 past the ends. */
export function neighbours(size: number, count: number): { lower: number; share: number } {
  const lower = Math.min(Math.max(Math.floor(size), 0), Math.max(count - 2, 0));
  return { lower, share: size - lower };
}

/**
 * The piece blended from one nest.
 *
 * @param sizes the same piece in every printed size: same points, same edges, smallest first; at least one
 * @param at    the fractional size of each level; the base size's (`at.bust`) gives the heights
 * @param only  one seam to blend, where nothing else is asked; the result then has just that seam
 */
export function blendPiece(sizes: readonly Piece[], at: LevelSizes, only?: SeamName): Piece {
  const base = invariant(sizes[0], "a nest with a size");
  const wanted =
    only === undefined ? null : new Set(base.edges.flatMap((e) => (e.seam === only ? [e.from, e.to] : [])));
  const acrossAt = (level: LevelName, x: (piece: Piece) => number): number => interpolate(sizes, at[level], x);
  const heightOf = (y: (piece: Piece) => number): number => interpolate(sizes, at.bust, y);
  const points: Partial<Record<PointName, NamedPoint>> = {};
  for (const name of pointNames(base)) {
    if (wanted !== null && !wanted.has(name)) continue;
    const level = invariant(base.points[name], name).level;
    points[name] = {
      at: piecePoint(
        acrossAt(level, (p) => invariant(p.points[name], name).at.x),
        heightOf((p) => invariant(p.points[name], name).at.y),
      ),
      level,
    };
  }
  const edges = base.edges.flatMap((edge, index): Edge[] => {
    if (only !== undefined && edge.seam !== only) return [];
    if (edge.curve === null) return [edge];
    const control = (which: "c1" | "c2", level: LevelName): PiecePoint =>
      piecePoint(
        acrossAt(level, (p) => invariant(p.edges[index]?.curve, "curve")[which].x),
        heightOf((p) => invariant(p.edges[index]?.curve, "curve")[which].y),
      );
    const c1 = control("c1", invariant(base.points[edge.from], edge.from).level);
    const c2 = control("c2", invariant(base.points[edge.to], edge.to).level);
    return [{ ...edge, curve: { c1, c2 } }];
  });
  return { ...base, points, edges };
}

function interpolate(sizes: readonly Piece[], size: number, value: (piece: Piece) => number): number {
  const { lower, share } = neighbours(size, sizes.length);
  const low = value(invariant(sizes[lower], "size"));
  if (share === 0) return low;
  const high = value(invariant(sizes[Math.min(lower + 1, sizes.length - 1)], "size"));
  return low + (high - low) * share;
}
