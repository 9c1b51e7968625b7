/** A corner within a seam drawn smooth: the controls on its two sides turned equally until they lie in one line. */
import { directionOf, distance, polar, turnBetween, type PiecePoint } from "../geometry/point";
import { isBend, pointOf, type Edge, type Piece, type PointName } from "../pattern/piece";
import { turnWithin } from "../girth/cornerAngle";
import { redrawn, withCurve } from "../pattern/redraw";
import { invariant } from "../result";
import { radians, radiansFromDegrees, type Mm, type Radians } from "../units";
import { controlsOf, fitHandles } from "./fitHandles";
import { edgeFrom, edgeTo } from "../pattern/ring";
import { smoothStretchAt, stretchLength, withEndTurned } from "../pattern/seamStretch";

/** The piece with the seam running straight on through a corner, or as the pattern was drawn; both its edges share the turn. */
function straightThrough(piece: Piece, corner: PointName): Piece {
  const [into, out] = [edgeTo(piece, corner), edgeFrom(piece, corner)];
  const at = pointOf(piece, corner);
  const arriving = controlsOf(piece, invariant(piece.edges[into], "edge"));
  const leaving = controlsOf(piece, invariant(piece.edges[out], "edge"));
  const drawn = radiansFromDegrees(turnWithin(piece, corner));
  const turn = radians(turnBetween(directionOf(arriving.c2, at), directionOf(at, leaving.c1)) - drawn);
  if (turn === 0) return piece;
  return edgeTurned(edgeTurned(piece, into, "end", radians(turn / 2)), out, "start", radians(-turn / 2));
}

/** The piece with the direction of one edge (of its whole stretch) at its start or end turned; positive turns +x towards +y. */
export function edgeTurned(piece: Piece, index: number, end: "start" | "end", turn: Radians): Piece {
  if (turn === 0) return piece;
  const edge: Edge = invariant(piece.edges[index], "edge");
  const stretch = smoothStretchAt(piece, index);
  if (stretch.length > 1 && !isBend(end === "start" ? edge.from : edge.to))
    return withEndTurned(piece, stretch, end, turn);
  const handles = controlsOf(piece, edge);
  const curve =
    end === "start"
      ? { ...handles, c1: turnedAbout(pointOf(piece, edge.from), handles.c1, turn) }
      : { ...handles, c2: turnedAbout(pointOf(piece, edge.to), handles.c2, turn) };
  const edges = [...piece.edges];
  edges[index] = withCurve(edge, curve);
  return redrawn(piece, piece.points, edges);
}

const turnedAbout = (end: PiecePoint, control: PiecePoint, turn: Radians): PiecePoint =>
  polar(end, radians(directionOf(end, control) + turn), distance(end, control));

/** A corner within a seam drawn smooth; each of its two edges keeps its length where a curve that looks right can. */
export function smoothedAt(piece: Piece, corner: PointName): Piece {
  const [into, out] = [edgeTo(piece, corner), edgeFrom(piece, corner)];
  const lengthAt = (index: number): Mm => stretchLength(piece, smoothStretchAt(piece, index));
  return fitHandles(fitHandles(straightThrough(piece, corner), [into], lengthAt(into)), [out], lengthAt(out));
}
