/** The lines of a piece that are sewn: its seams with the caps of darts in them, and the legs of its darts. */
import { legsOf } from "../dart/bowedLegs";
import { dartCapOf } from "../dart/dartCap";
import {
  edgeLength,
  edgeParameterAtLength,
  edgePart,
  edgeReverse,
  lineEdge,
  type EdgeCurve,
} from "../geometry/edgeCurve";
import type { PiecePoint } from "../geometry/point";
import { pointOf, type DartName, type Piece, type PointName, type SeamName } from "../pattern/piece";
import { curveOf } from "../pattern/ring";
import type { Mm } from "../units";

export interface SewnLine {
  readonly curve: EdgeCurve<"piece">;
  readonly length: Mm;
  readonly seam: SeamName;
  /** Set on the cap across a dart's mouth, and on a dart's legs. */
  readonly dart: DartName | null;
  /** Named points at its two ends; null at the tip of a cap. */
  readonly from: PointName | null;
  readonly to: PointName | null;
}

/** The stitch line all round, cap after seam, in the order of the edges: closed. */
export function sewnRing(piece: Piece): readonly SewnLine[] {
  return piece.edges.flatMap((edge): SewnLine[] => {
    const { seam, from, to, mouthOf } = edge;
    if (mouthOf === null) return [lineOf(curveOf(piece, edge), { seam, from, to, dart: null })];
    const cap = dartCapOf(piece, mouthOf).halves.flat();
    const isAlong = piece.darts.find(({ name }) => name === mouthOf)?.inner === from;
    const way = isAlong ? cap : cap.map((curve) => edgeReverse(curve)).toReversed();
    return way.map((curve, index, all) =>
      lineOf(curve, { seam, dart: mouthOf, from: index === 0 ? from : null, to: index === all.length - 1 ? to : null }),
    );
  });
}

/** Both legs of each dart, from the mouth to the end; none of a dart that is gathered. */
export function sewnLegs(piece: Piece): readonly SewnLine[] {
  return piece.darts
    .filter(({ gathered }) => gathered !== true)
    .flatMap(({ name, seam, inner, outer, apex }): SewnLine[] => {
      const legs = legsOf(piece, name);
      return [
        lineOf(legs.inner.curve, { seam, dart: name, from: inner, to: apex }),
        lineOf(legs.outer.curve, { seam, dart: name, from: outer, to: apex }),
      ];
    });
}

/** Its bust, waist and hip lines where they run straight from point to point. */
export const levelLinesOf = (piece: Piece): readonly EdgeCurve<"piece">[] =>
  piece.levelLines.flatMap(({ along }) =>
    "points" in along ? chords(along.points.map((name) => pointOf(piece, name))) : [],
  );

const lineOf = (curve: EdgeCurve<"piece">, what: Omit<SewnLine, "curve" | "length">): SewnLine => ({
  ...what,
  curve,
  length: edgeLength(curve),
});

const chords = (points: readonly PiecePoint[]): EdgeCurve<"piece">[] =>
  points.flatMap((a, index) => {
    const b = points[index + 1];
    return b === undefined ? [] : [lineEdge(a, b)];
  });

/** A stretch of a line between two lengths from its start, mm. */
export function stretchOf(line: SewnLine, from: Mm, to: Mm): SewnLine {
  if (from <= 0 && to >= line.length) return line;
  const curve = edgePart(line.curve, edgeParameterAtLength(line.curve, from), edgeParameterAtLength(line.curve, to));
  return {
    ...line,
    curve,
    length: to - from,
    from: from <= 0 ? line.from : null,
    to: to >= line.length ? line.to : null,
  };
}
