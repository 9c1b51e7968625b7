/**
 * The two lines beside a corner of a piece, or beside the mouth of a dart, where each is one edge, as nearly all are. Solvers draw
 * and measure just these two, and nothing of the piece is made anew before they are done; `runBeside` is for lines with bends.
 */
import { edgeLength, type EdgeCurve } from "../geometry/edgeCurve";
import { shift, type PiecePoint } from "../geometry/point";
import { invariant } from "../result";
import type { Mm } from "../units";
import type { Edge, NamedPoint, Piece, PointName, SeamName } from "./piece";
import { placedAt, redrawn, withCurve } from "./redraw";
import { curveOf, edgeFrom, edgeTo } from "./ring";
import { stretchAt } from "./seamStretch";

type Line = EdgeCurve<"piece">;

/** The one that ends at the corner, or at the mouth, and the one that goes on from there. */
export interface Lines {
  readonly before: Line;
  readonly after: Line;
}

interface LinesBeside extends Lines {
  /** What the two lines have of a seam as they are drawn; mm, darts closed. */
  readonly ofSeam: (seam: SeamName, drawn: Lines) => Mm;
  /** What all else has of it. */
  readonly outside: (seam: SeamName) => Mm;
  /** The piece with the lines drawn anew in their place. */
  readonly withLines: (drawn: Lines) => Piece;
}

/**
 * @param first the corner met first, the way the edges go
 * @param last  the same, or the other end of a dart's mouth
 * @returns null where one of them has bends
 */
export function linesBeside(piece: Piece, first: PointName, last: PointName): LinesBeside | null {
  const [beforeIndex, afterIndex] = [edgeTo(piece, first), edgeFrom(piece, last)];
  if (beforeIndex === afterIndex || hasBends(piece, beforeIndex) || hasBends(piece, afterIndex)) return null;
  const into = invariant(piece.edges[beforeIndex], "edge");
  const outOf = invariant(piece.edges[afterIndex], "edge");
  return {
    before: curveOf(piece, into),
    after: curveOf(piece, outOf),
    ofSeam: (seam, { before, after }) =>
      (isSewnAs(into, seam) ? edgeLength(before) : 0) + (isSewnAs(outOf, seam) ? edgeLength(after) : 0),
    outside: (seam) => {
      let sum = 0;
      for (const edge of piece.edges)
        if (edge !== into && edge !== outOf && isSewnAs(edge, seam)) sum += edgeLength(curveOf(piece, edge));
      return sum;
    },
    withLines: ({ before, after }) => {
      const edges = [...piece.edges];
      edges[beforeIndex] = withCurve(into, before.curve);
      edges[afterIndex] = withCurve(outOf, after.curve);
      const points: Partial<Record<PointName, NamedPoint>> = { ...piece.points };
      points[first] = placedAt(invariant(points[first], first), before.b);
      points[last] = placedAt(invariant(points[last], last), after.a);
      return redrawn(piece, points, edges);
    },
  };
}

const hasBends = (piece: Piece, index: number): boolean => stretchAt(piece, index).length > 1;

const isSewnAs = ({ seam, mouthOf }: Edge, asked: SeamName): boolean => seam === asked && mouthOf === null;

/** The lines with the ends at the corner, or at the mouth, put elsewhere; the handles beside them go along. */
export const withEndsAt = ({ before, after }: Lines, first: PiecePoint, last: PiecePoint): Lines => ({
  before: {
    a: before.a,
    b: first,
    curve: before.curve && { c1: before.curve.c1, c2: goneAlong(before.curve.c2, before.b, first) },
  },
  after: {
    a: last,
    b: after.b,
    curve: after.curve && { c1: goneAlong(after.curve.c1, after.a, last), c2: after.curve.c2 },
  },
});

const goneAlong = (handle: PiecePoint, from: PiecePoint, to: PiecePoint): PiecePoint =>
  shift(handle, to.x - from.x, to.y - from.y);
