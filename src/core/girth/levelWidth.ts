/**
 * Flat-pattern measure: the width of a half piece at a level, less what darts take there. A dart that crosses the level
 * takes the straight distance between its legs.
 */
import { edgeCrossingsAtY, edgePointAt } from "../geometry/edgeCurve";
import { distance, piecePoint, type PiecePoint } from "../geometry/point";
import { segmentIntersections } from "../geometry/segment";
import { invariant } from "../result";
import { pointOf, type Dart, type LevelName, type Piece } from "../pattern/piece";
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
  const { points } = own.along;
  let sum = 0;
  for (let i = 1; i < points.length; i += 1) {
    const a = pointOf(piece, invariant(points[i - 1], "level point"));
    const b = pointOf(piece, invariant(points[i], "level point"));
    // After a small bust adjustment the outer part overlaps the inner one, and the line runs back across the overlap.
    sum += Math.sign(b.x - a.x) * distance(a, b) - chordsAcross(piece, a, b);
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
  return most - least - chordsAcross(piece, piecePoint(least, y), piecePoint(most, y));
}

/** What the darts take of the bust line of a piece, by the straight distance between their legs there; mm on the half. */
export function takenAtBust(piece: Piece): Mm {
  const line = piece.levelLines.find(({ level }) => level === "bust");
  if (line === undefined || "seam" in line.along) return 0;
  const { points } = line.along;
  return points
    .slice(1)
    .reduce(
      (sum, to, i) =>
        sum + chordsAcross(piece, pointOf(piece, invariant(points[i], "level point")), pointOf(piece, to)),
      0,
    );
}

/** A dart from the side or the centre lies along a level line, not across it: sewing it takes length there, not girth. */
function chordsAcross(piece: Piece, a: PiecePoint, b: PiecePoint): Mm {
  let sum = 0;
  for (const dart of piece.darts) {
    if (dart.seam !== "side" && dart.seam !== "centre") sum += chordOf(piece, dart, a, b);
  }
  return sum;
}

function chordOf(piece: Piece, dart: Dart, a: PiecePoint, b: PiecePoint): Mm {
  const apex = pointOf(piece, dart.apex);
  const atInner = segmentIntersections(apex, pointOf(piece, dart.inner), a, b)[0];
  const atOuter = segmentIntersections(apex, pointOf(piece, dart.outer), a, b)[0];
  if (atInner === undefined || atOuter === undefined) return 0;
  return distance(atInner.point, atOuter.point);
}
