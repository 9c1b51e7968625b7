/** Small helpers that the drafts share: named points, edges, and cubics set by their end directions. */
import { distance, piecePoint, polar, type PiecePoint } from "../geometry/point";
import type { DartName, Edge, LevelName, NamedPoint, PointName, SeamName } from "./piece";
import { radians, radiansFromDegrees, type Mm, type Radians } from "../units";

export type Points = Partial<Record<PointName, NamedPoint>>;

export const named = (x: Mm, y: Mm, level: LevelName): NamedPoint => ({ at: piecePoint(x, y), level });

export const straight = (from: PointName, to: PointName, seam: SeamName): Edge => ({
  from,
  to,
  seam,
  curve: null,
  mouthOf: null,
});

export const mouth = (from: PointName, to: PointName, seam: SeamName, dart: DartName): Edge => ({
  from,
  to,
  seam,
  curve: null,
  mouthOf: dart,
});

export const curved = (from: PointName, to: PointName, seam: SeamName, c1: PiecePoint, c2: PiecePoint): Edge => ({
  from,
  to,
  seam,
  curve: { c1, c2 },
  mouthOf: null,
});

/**
 * Controls of a cubic that leaves `a` in one direction and comes into `b` in another, each control a share of the
 * straight distance away from its end.
 */
export function controls(
  a: PiecePoint,
  leaving: Radians,
  b: PiecePoint,
  arriving: Radians,
  share = 1 / 3,
  shareAtEnd = share,
): [PiecePoint, PiecePoint] {
  const span = distance(a, b);
  return [polar(a, leaving, span * share), polar(b, radians(arriving + Math.PI), span * shareAtEnd)];
}

/** Directions on the piece. */
export const OUTWARD: Radians = radians(0);
export const DOWN: Radians = radiansFromDegrees(90);
export const INWARD: Radians = radiansFromDegrees(180);

/** How far the waist sits below its line at the side, so that it meets the slanting side seam squarely. */
export const SIDE_WAIST_DROP: Mm = 5;

/** The direction a side seam leaves its upper level and reaches its lower one, from the slope of the straight between. */
export const SIDE_LEAVING = 0.4;
export const SIDE_ARRIVING = 1.35;
