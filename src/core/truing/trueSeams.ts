/** Truing of seams: legs of darts equal, seams smooth over shut darts and at the corners within them; lengths kept. */
import { edgeNearest, edgePointAt } from "../geometry/edgeCurve";
import { distance } from "../geometry/point";
import { turnAtDegrees, turnWithin } from "../girth/cornerAngle";
import { seamCornerAtDart, turnAsDrawn } from "../dart/trueSeam";
import { trueLegs } from "../dart/trueLegs";
import { trueSeamEvenly } from "../dart/trueSeamEvenly";
import { seamLength } from "../girth/seamLength";
import { piecesOf, withPiece, type PieceSet } from "../pattern/pieceSet";
import { pointOf, type Dart, type Piece, type PointName } from "../pattern/piece";
import { invariant } from "../result";
import { curveOf, edgeTo } from "../pattern/ring";
import { smoothedAt } from "../surgery/straightThrough";
import { JOINED_CORNER_DEGREES, SMOOTH_CORNER_DEGREES, WALKED_AGREEMENT } from "../tolerance";
import { degreesFrom, radians, type Mm } from "../units";
import type { Truing } from "./truing";

/** A gathered mouth is drawn up, not folded: there is nothing to true at it. */
const foldedDarts = (piece: Piece): readonly Dart[] => piece.darts.filter(({ gathered }) => gathered !== true);

const legOf = (piece: Piece, dart: Dart, end: "inner" | "outer"): Mm =>
  distance(pointOf(piece, dart.apex), pointOf(piece, dart[end]));

/** Both legs brought to their mean; the seam as long as before and smooth. */
export const equalLegs: Truing = (pieces, changes) =>
  eachPiece(pieces, (piece) =>
    foldedDarts(piece).reduce((done, dart) => {
      const difference = legOf(done, dart, "outer") - legOf(done, dart, "inner") - (dart.drawnLegs ?? 0);
      if (Math.abs(difference) <= WALKED_AGREEMENT) return done;
      changes.push({
        piece: piece.name,
        seam: dart.seam,
        what: "legsEqualled",
        point: dart.apex,
        amount: Math.abs(difference) / 2,
      });
      return trueSeamEvenly(trueLegs(done, dart.name).piece, dart.name, seamLength(done, dart.seam));
    }, piece),
  );

export const smoothDarts: Truing = (pieces, changes) =>
  eachPiece(pieces, (piece) =>
    foldedDarts(piece).reduce((done, dart) => {
      if (
        Math.abs(degreesFrom(radians(seamCornerAtDart(done, dart.name) - turnAsDrawn(done, dart.name)))) <=
        JOINED_CORNER_DEGREES
      )
        return done;
      const trued = trueSeamEvenly(done, dart.name, seamLength(done, dart.seam));
      changes.push({
        piece: piece.name,
        seam: dart.seam,
        what: "seamSmoothed",
        point: dart.apex,
        amount: seamMoved(done, trued),
      });
      return trued;
    }, piece),
  );

/** Corners within a seam: both edges share the turn, and each keeps its length. */
export const smoothSeams: Truing = (pieces, changes) =>
  eachPiece(pieces, (piece) =>
    cornersWithin(piece).reduce((done, corner) => {
      if (Math.abs(turnAtDegrees(done, corner) - turnWithin(done, corner)) <= SMOOTH_CORNER_DEGREES) return done;
      const trued = smoothedAt(done, corner);
      changes.push({
        piece: piece.name,
        seam: invariant(done.edges[edgeTo(done, corner)], "edge").seam,
        what: "seamSmoothed",
        point: corner,
        amount: seamMoved(done, trued),
      });
      return trued;
    }, piece),
  );

/** The corners at which a seam goes on as the same seam, with no dart between. */
function cornersWithin(piece: Piece): PointName[] {
  return piece.edges.flatMap((edge, index): PointName[] => {
    const before = piece.edges[(index + piece.edges.length - 1) % piece.edges.length];
    const isWithin =
      before !== undefined &&
      edge.seam !== "edge" &&
      before.seam === edge.seam &&
      before.mouthOf === null &&
      edge.mouthOf === null;
    return isWithin ? [edge.from] : [];
  });
}

/** Where along each edge it is looked how far it moved. */
const LOOKS = [0, 0.25, 0.5, 0.75, 1];

/** How far any edge moved at the most. */
function seamMoved(before: Piece, after: Piece): Mm {
  let most = 0;
  after.edges.forEach((edge, index) => {
    const old = before.edges[index];
    if (old === undefined || old === edge || edge.mouthOf !== null) return;
    const curve = curveOf(after, edge);
    for (const t of LOOKS) most = Math.max(most, edgeNearest(curve, edgePointAt(curveOf(before, old), t)).distance);
  });
  return most;
}

function eachPiece(pieces: PieceSet, trued: (piece: Piece) => Piece): PieceSet {
  let set = pieces;
  for (const piece of piecesOf(pieces)) {
    const done = trued(piece);
    if (done !== piece) set = withPiece(set, done);
  }
  return set;
}
