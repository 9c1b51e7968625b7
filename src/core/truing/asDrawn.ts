/** What the corners of a pattern that is not ours are: noted once, so that truing keeps them and checks go by them. */
import { seamCornerAtDart } from "../dart/trueSeam";
import { turnAtDegrees } from "../girth/cornerAngle";
import type { Dart, Piece, PointName } from "../pattern/piece";
import { degreesFrom } from "../units";

/** A piece as it was read, with the turns of its own outline noted; the ends of darts, where they turn, are the darts'. */
export function asDrawn(piece: Piece): Piece {
  const drawnTurns: Partial<Record<PointName, number>> = {};
  const mouths = new Set<PointName>(piece.darts.flatMap(({ inner, outer }) => [inner, outer]));
  for (const { from } of piece.edges) if (!mouths.has(from)) drawnTurns[from] = turnAtDegrees(piece, from);
  const darts = piece.darts.map((dart): Dart =>
    dart.gathered === true ? dart : { ...dart, drawnTurn: degreesFrom(seamCornerAtDart(piece, dart.name)) },
  );
  return { ...piece, drawnTurns, darts };
}
