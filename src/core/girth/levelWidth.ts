/**
 * Flat-pattern measure: the width of a half piece at a level, less what darts take there. A dart that crosses the level
 * takes what of the line lies between its legs, as straight lines from its end to its mouth.
 */
import { edgeCrossingsAtY, edgePointAt } from "../geometry/edgeCurve";
import { distance, midpoint, piecePoint, type PiecePoint } from "../geometry/point";
import { lineDistance } from "../geometry/segment";
import { homeOf } from "../pattern/dartNames";
import { invariant } from "../result";
import { pointOf, type Dart, type LevelName, type Piece, type PointName } from "../pattern/piece";
import type { Mm } from "../units";
import { curveOf } from "../pattern/ring";
import { seamLength } from "./seamLength";

/** Width of the half piece along its own level line, mm; null where the piece has no such line. */
export function levelWidth(piece: Piece, level: LevelName): Mm | null {
  const own = piece.levelLines.find((l) => l.level === level);
  if (level === "underBust" && own === undefined) {
    const centre = piece.points.underBustCentre;
    return centre === undefined ? null : widthAtHeight(piece, centre.at.y);
  }
  if (own === undefined) return null;
  if ("seam" in own.along) return seamLength(piece, own.along.seam);
  return alongLine(piece, own.along.points, (a, b) => clothBetween(piece, a, b));
}

/** A length of each straight stretch of a line from the centre to the side, added up; mm. */
function alongLine(piece: Piece, points: readonly PointName[], lengthOf: (a: PiecePoint, b: PiecePoint) => Mm): Mm {
  let sum = 0;
  for (let i = 1; i < points.length; i += 1) {
    const a = pointOf(piece, invariant(points[i - 1], "level point"));
    const b = pointOf(piece, invariant(points[i], "level point"));
    // After a small bust adjustment the outer part overlaps the inner one, and the line runs back across the overlap.
    sum += Math.sign(b.x - a.x) * lengthOf(a, b);
  }
  return sum;
}

/** Width at a height of the piece frame, from the first outline crossing to the last, less darts; mm. */
export function widthAtHeight(piece: Piece, y: Mm): Mm {
  let least = Infinity;
  let most = -Infinity;
  for (const edge of piece.edges) {
    const curve = curveOf(piece, edge);
    for (const t of edgeCrossingsAtY(curve, y)) {
      const { x } = edgePointAt(curve, t);
      least = Math.min(least, x);
      most = Math.max(most, x);
    }
  }
  if (most < least) return 0;
  return most - least - takenAcross(piece, piecePoint(least, y), piecePoint(most, y));
}

/** Width at the height of a point of the outline, from the first crossing as far as that point, less darts; mm. */
export function widthUpTo(piece: Piece, end: PiecePoint): Mm {
  let least = end.x;
  for (const edge of piece.edges) {
    const curve = curveOf(piece, edge);
    for (const t of edgeCrossingsAtY(curve, end.y)) least = Math.min(least, edgePointAt(curve, t).x);
  }
  return end.x - least - takenAcross(piece, piecePoint(least, end.y), end);
}

/** Cloth along a straight line of a piece, less what darts take of it; mm. */
export const clothBetween = (piece: Piece, a: PiecePoint, b: PiecePoint): Mm =>
  distance(a, b) - takenBetween(piece, a, b);

/** What the darts take of the bust line of a piece; mm on the half. */
export function takenAtBust(piece: Piece): Mm {
  const line = piece.levelLines.find(({ level }) => level === "bust");
  if (line === undefined || "seam" in line.along) return 0;
  return alongLine(piece, line.along.points, (a, b) => takenBetween(piece, a, b));
}

/** A dart from the side or the centre lies along a level line, not across it: sewing it takes length there, not girth. */
function takenBetween(piece: Piece, a: PiecePoint, b: PiecePoint): Mm {
  let sum = 0;
  for (const dart of piece.darts) {
    if (dart.seam !== "side" && dart.seam !== "centre") sum += lengthWithin(piece, dart, a, b);
  }
  return sum;
}

/** The same of a line across the whole piece below the bust, which a dart that rises aslant from the side lies across too. */
const takenAcross = (piece: Piece, a: PiecePoint, b: PiecePoint): Mm =>
  takenBetween(piece, a, b) +
  piece.darts
    .filter(({ name }) => homeOf(name) === "french")
    .reduce((sum, dart) => sum + takenAslant(piece, dart, a, b), 0);

/**
 * What a dart that rises aslant from the side takes of a line that it crosses; mm. Shut, it brings what lies below it nearer by
 * its width there, and of that the line gets what goes its own way: nothing where the dart lies along it, all where it stands
 * square to it. Nothing where its axis does not meet the line.
 *
 * @source two sides of a triangle in proportion, and the projection of one on a line
 */
function takenAslant(piece: Piece, { apex, inner, outer }: Dart, a: PiecePoint, b: PiecePoint): Mm {
  const [end, one, other] = [pointOf(piece, apex), pointOf(piece, inner), pointOf(piece, outer)];
  const middle = midpoint(one, other);
  const [atEnd, atMouth] = [lineDistance(end, a, b), lineDistance(middle, a, b)];
  if (atEnd * atMouth >= 0) return 0;
  const share = atEnd / (atEnd - atMouth);
  return (share * Math.abs((other.x - one.x) * (b.x - a.x) + (other.y - one.y) * (b.y - a.y))) / distance(a, b);
}

/**
 * How much of the straight line from a to b lies within a dart: between its legs and not beyond its mouth; mm.
 *
 * @source a convex outline keeps of a line what is on the inner side of each of its edges (Cyrus and Beck)
 */
function lengthWithin(piece: Piece, { apex, inner, outer }: Dart, a: PiecePoint, b: PiecePoint): Mm {
  const end = pointOf(piece, apex);
  const one = pointOf(piece, inner);
  const other = pointOf(piece, outer);
  const isClear =
    Math.max(a.y, b.y) < Math.min(end.y, one.y, other.y) || Math.min(a.y, b.y) > Math.max(end.y, one.y, other.y);
  if (isClear) return 0;
  let from = 0;
  let to = 1;
  let corner = end;
  let next = one;
  let third = other;
  for (let round = 0; round < 3; round += 1) {
    const side = Math.sign(lineDistance(third, corner, next));
    if (side === 0) return 0;
    const atA = side * lineDistance(a, corner, next);
    const atB = side * lineDistance(b, corner, next);
    if (atA < 0) from = Math.max(from, atA / (atA - atB));
    if (atB < 0) to = Math.min(to, atA / (atA - atB));
    const first = corner;
    corner = next;
    next = third;
    third = first;
  }
  return Math.max(0, to - from) * distance(a, b);
}
