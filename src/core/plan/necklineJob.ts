/** What is to be done for a new neckline on one piece, told from the piece as it lies when all else is done. mm. */
import { edgeLength, edgePointAt } from "../geometry/edgeCurve";
import { distance } from "../geometry/point";
import { lineDistance } from "../geometry/segment";
import type { RedrawnNeckline } from "../neckline/redrawNeckline";
import type { PieceName, PointName } from "../pattern/piece";
import { isBend, pointOf, type Edge, type Piece } from "../pattern/piece";
import { isFrontPiece } from "../pattern/pieceGroups";
import type { PieceSet } from "../pattern/pieceSet";
import { curveOf } from "../pattern/ring";
import { READS_AS_NOTHING } from "../tolerance";
import type { Mm } from "../units";
import type { TissuePlace } from "./tissuePlaces";

/** A line of the new edge. */
export interface NecklineLine {
  readonly from: PointName;
  readonly to: PointName;
  readonly length: Mm;
  /** How far its middle lies off the straight line between its ends: positive into the piece, a hollow. 0: it is straight. */
  readonly hollow: Mm;
  /** It leaves the centre square to it. */
  readonly isSquare: boolean;
}

export interface NecklineJob {
  /** Corners of the edge, each from where a corner of the piece lies before. */
  readonly places: readonly TissuePlace[];
  readonly lines: readonly NecklineLine[];
  /** How far along the shoulder from where the neck ended before; 0: it ends where it did. */
  readonly wider: Mm;
  /** Of what the edge would gape, pinched out before it was drawn. */
  readonly pinched: Mm;
}

/** The job on a piece; null where its edge is left as it is. */
export function necklineJob(
  name: PieceName,
  fitted: PieceSet,
  drawn: PieceSet,
  { front }: RedrawnNeckline,
): NecklineJob | null {
  const [before, after] = [fitted[name], drawn[name]];
  if (before === undefined || after === undefined || before === after) return null;
  const lines = after.edges.filter(({ seam, mouthOf }) => seam === "neck" && mouthOf === null);
  const corners = new Set(lines.flatMap(({ from, to }) => [from, to]).filter((corner) => !isBend(corner)));
  const [was, is] = [before.points.sideNeck?.at, after.points.sideNeck?.at];
  return {
    places: [...corners].flatMap((corner) => placeOf(corner, before, after)),
    lines: lines.map((line) => told(after, line)),
    wider: was === undefined || is === undefined ? 0 : distance(was, is),
    pinched: isFrontPiece(name) ? front.pinched : 0,
  };
}

/** From where the corner lay; a new one from where the edge began before, or the seam that it now begins at. */
function placeOf(point: PointName, before: Piece, after: Piece): readonly TissuePlace[] {
  const begins = before.points.centreNeck === undefined ? "princessTop" : "centreNeck";
  const from = before.points[point] === undefined ? begins : point;
  const [was, is] = [pointOf(before, from), pointOf(after, point)];
  const [out, down] = [is.x - was.x, is.y - was.y];
  return point === from && Math.hypot(out, down) <= READS_AS_NOTHING ? [] : [{ point, from, out, down }];
}

function told(piece: Piece, edge: Edge): NecklineLine {
  const curve = curveOf(piece, edge);
  const middle = edge.curve === null ? 0 : lineDistance(edgePointAt(curve, 1 / 2), curve.a, curve.b);
  return {
    from: edge.from,
    to: edge.to,
    length: edgeLength(curve),
    // The outline runs clockwise: the piece lies at the right hand.
    hollow: middle,
    isSquare: edge.from === "centreNeck" && piece.drawnTurns?.centreNeck === undefined,
  };
}
