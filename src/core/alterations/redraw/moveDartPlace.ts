/** Moving a whole dart along its seam, or bringing it nearer the centre by taking width off the centre-front seam. */
import type { DartPlaceAlteration } from "../../decisions/alteration";
import type { AlterationFailure } from "../outcome/alterationFailure";
import { moveMouthEnd } from "../../dart/mouthEnd";
import { edgeTangentAt } from "../../geometry/edgeCurve";
import { directionOf, distance, polar, shift, turnBetween } from "../../geometry/point";
import { fail, invariant, ok, type Result } from "../../result";
import { dartOf, pointOf, type Edge, type Piece, type PointName } from "../../pattern/piece";
import { curveOf, edgeFrom } from "../../pattern/ring";
import { stretchAt } from "../../pattern/seamStretch";
import { edgeTurned } from "../../surgery/straightThrough";
import { radians, radiansFromDegrees } from "../../units";
import { dartCorners, moveMouth } from "../../dart/moveMouth";

/** The piece with its dart moved, before legs and seam are trued and anything is given back. */
export function applyDartPlace(piece: Piece, alteration: DartPlaceAlteration): Result<Piece, AlterationFailure> {
  return alteration.how === "redraw" ? redraw(piece, alteration) : offCentreSeam(piece, alteration);
}

function redraw(piece: Piece, { dart: ref, by }: DartPlaceAlteration): Result<Piece, AlterationFailure> {
  const dart = dartOf(piece, ref.dart);
  const { apex, inner, outer } = dartCorners(piece, ref.dart);
  const mouth = moveMouth(piece, ref.dart, by, -by);
  if (!mouth.ok) return mouth;
  const width = distance(inner, outer);
  const to = shift(apex, ((inner.x - outer.x) / width) * by, ((inner.y - outer.y) / width) * by);
  return ok({
    ...mouth.value,
    points: { ...mouth.value.points, [dart.apex]: { ...invariant(piece.points[dart.apex], dart.apex), at: to } },
  });
}

const SQUARE = 90;

/** The neckline redrawn square to the centre seam (or as it was drawn to it), which now slants from the neck to the bust line. */
function squareNeck(piece: Piece): Piece {
  const neck = pointOf(piece, "centreNeck");
  const outward = radians(directionOf(neck, pointOf(piece, "centreBust")) - Math.PI / 2);
  const index = edgeFrom(piece, "centreNeck");
  const own = piece.drawnTurns?.centreNeck;
  if (own !== undefined || stretchAt(piece, index).length > 1) {
    const wanted = radians(outward + (own === undefined ? 0 : radiansFromDegrees(own - SQUARE)));
    const leaving = edgeTangentAt(curveOf(piece, invariant(piece.edges[index], "neck")), 0);
    return edgeTurned(piece, index, "start", radians(turnBetween(leaving, wanted)));
  }
  const edges = piece.edges.map((edge): Edge => {
    if (edge.from !== "centreNeck" || edge.curve === null) return edge;
    return { ...edge, curve: { ...edge.curve, c1: polar(neck, outward, distance(neck, edge.curve.c1)) } };
  });
  return { ...piece, edges };
}

/** Points of the centre-front seam that move in, those that a front has; the neck end stays, so the neckline keeps its length. */
const CENTRE_POINTS: readonly PointName[] = ["centreBust", "underBustCentre", "centreWaist"];

function offCentreSeam(piece: Piece, { dart: ref, by }: DartPlaceAlteration): Result<Piece, AlterationFailure> {
  if (piece.name !== "front" || ref.dart !== "waistDart") return fail({ code: "alteration/not-this-dart", dart: ref });
  const room = pointOf(piece, dartOf(piece, ref.dart).inner).x;
  // As far outwards as inwards: further out the seam cannot give back what is let in.
  if (Math.abs(by) >= room) return fail({ code: "alteration/off-the-seam", most: room });
  const own = CENTRE_POINTS.filter((name) => piece.points[name] !== undefined);
  const moved = own.reduce((p, name) => moveMouthEnd(p, name, shift(pointOf(p, name), by, 0)), piece);
  return ok(squareNeck({ ...moved, centreOnFold: false }));
}
