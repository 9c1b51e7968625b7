/** What the corners of a pattern that is not ours are: noted once, so that truing keeps them and checks go by them. */
import { seamCornerAtDart } from "../dart/trueSeam";
import { turnAtDegrees } from "../girth/cornerAngle";
import { distance } from "../geometry/point";
import { pointOf, type Dart, type Piece, type PointName } from "../pattern/piece";
import { degreesFrom, type Mm } from "../units";

const legsOf = (piece: Piece, { apex, inner, outer }: Dart): Mm => {
  const end = pointOf(piece, apex);
  return distance(end, pointOf(piece, outer)) - distance(end, pointOf(piece, inner));
};

/** A piece as it was read, with the turns of its own outline noted; the ends of darts, where they turn, are the darts'. */
export function asDrawn(piece: Piece): Piece {
  const drawnTurns: Partial<Record<PointName, number>> = {};
  const mouths = new Set<PointName>(piece.darts.flatMap(({ inner, outer }) => [inner, outer]));
  for (const { from } of piece.edges) if (!mouths.has(from)) drawnTurns[from] = turnAtDegrees(piece, from);
  const darts = piece.darts.map((dart): Dart =>
    dart.gathered === true
      ? dart
      : { ...dart, drawnTurn: degreesFrom(seamCornerAtDart(piece, dart.name)), drawnLegs: legsOf(piece, dart) },
  );
  return { ...piece, drawnTurns, darts };
}
