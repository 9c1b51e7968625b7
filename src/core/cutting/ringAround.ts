/** One closed ring about several that overlap: the room that they take together, with some to spare. */
import { Clipper, EndType, FillRule, JoinType } from "clipper2-ts";
import { boundsOfPoints } from "../geometry/bounds";
import { piecePoint, type PiecePoint } from "../geometry/point";
import { invariant } from "../result";
import type { Mm } from "../units";

/** Digits behind the point to which rings are joined. */
const DIGITS = 4;

/** The outer boundary of all rings together, `spare` mm further out; where they do not hang together, the box that holds them. */
export function ringAround(rings: readonly (readonly PiecePoint[])[], spare: Mm): readonly PiecePoint[] {
  // Whichever way a ring goes, what it goes round counts: two that go opposite ways would leave out what both go round.
  const joined = Clipper.unionD(
    rings.map((ring) => {
      const path = ring.map(({ x, y }) => ({ x, y }));
      return Clipper.areaD(path) < 0 ? path.toReversed() : path;
    }),
    [],
    FillRule.NonZero,
    DIGITS,
  );
  const found = Clipper.inflatePathsD(joined, spare, JoinType.Miter, EndType.Polygon, 2, DIGITS).filter(
    (path) => Clipper.areaD(path) > 0,
  );
  if (found.length === 1) return invariant(found[0], "ring").map(({ x, y }) => piecePoint(x, y));
  const { min, max } = boundsOfPoints(rings.flat());
  return [
    piecePoint(min.x - spare, min.y - spare),
    piecePoint(max.x + spare, min.y - spare),
    piecePoint(max.x + spare, max.y + spare),
    piecePoint(min.x - spare, max.y + spare),
  ];
}
