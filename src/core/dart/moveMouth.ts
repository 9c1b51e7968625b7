/** Moving the mouth ends of a dart along its seam. */
import type { MouthFailure } from "./mouthFailure";
import { edgeLength, edgeParameterAtLength, edgeSplit } from "../geometry/edgeCurve";
import { distance } from "../geometry/point";
import { fail, invariant, ok, type Result } from "../result";
import { mouthPointAt } from "./dartFrame";
import { moveMouthEnd } from "./mouthEnd";
import { dartOf, pointOf, type DartName, type Edge, type Piece, type PointName } from "../pattern/piece";
import { placedAt, redrawn, withCurve, withEnds, withoutPoint, withPoint } from "../pattern/redraw";
import { NARROWEST_DART, SHORTEST_EDGE } from "../tolerance";
import type { Mm } from "../units";
import { curveOf, edgeFrom, edgeTo } from "../pattern/ring";
import { placeAlong, stretchAt, stretchLength, type Stretch } from "../pattern/seamStretch";

type MouthEnd = "inner" | "outer";

/**
 * Moves both mouth ends: outward they slide along the sewn seam, inward along the straight mouth.
 *
 * @param inner how far the inner end moves away from the dart's middle (negative: towards it), mm
 * @param outer the same for the outer end, mm
 */
export function moveMouth(piece: Piece, name: DartName, inner: Mm, outer: Mm): Result<Piece, MouthFailure> {
  const corners = dartCorners(piece, name);
  const would = distance(corners.inner, corners.outer) + inner + outer;
  if (would < NARROWEST_DART) return fail({ code: "alteration/dart-vanishes", smallest: NARROWEST_DART, would });
  const first = slide(piece, name, "inner", inner);
  return first.ok ? slide(first.value, name, "outer", outer, corners) : first;
}

export function dartCorners(piece: Piece, name: DartName) {
  const dart = dartOf(piece, name);
  return {
    apex: pointOf(piece, dart.apex),
    inner: pointOf(piece, dart.inner),
    outer: pointOf(piece, dart.outer),
  };
}

function slide(
  piece: Piece,
  name: DartName,
  end: MouthEnd,
  amount: Mm,
  corners = dartCorners(piece, name),
): Result<Piece, MouthFailure> {
  if (amount === 0) return ok(piece);
  const point = dartOf(piece, name)[end];
  if (amount < 0) return ok(moveMouthEnd(piece, point, mouthPointAt(corners, end, amount)));
  const into = edgeTo(piece, point);
  const arrives = invariant(piece.edges[into], "edge").mouthOf === null;
  const index = arrives ? into : edgeFrom(piece, point);
  const stretch = stretchAt(piece, index);
  if (stretch.length > 1) return slideAlong(piece, stretch, point, arrives, amount);
  const edge = invariant(piece.edges[index], "edge");
  const curve = curveOf(piece, edge);
  const length = edgeLength(curve);
  if (amount > length - SHORTEST_EDGE)
    return fail({ code: "alteration/off-the-seam", most: Math.max(0, length - SHORTEST_EDGE) });
  const [before, after] = edgeSplit(curve, edgeParameterAtLength(curve, arrives ? length - amount : amount));
  const kept = arrives ? before : after;
  const edges = [...piece.edges];
  edges[index] = withCurve(edge, kept.curve);
  const moved = placedAt(invariant(piece.points[point], point), arrives ? kept.b : kept.a);
  return ok(redrawn(piece, withPoint(piece.points, point, moved), edges));
}

/** The same over bends: those that are passed go. */
function slideAlong(
  piece: Piece,
  stretch: Stretch,
  point: PointName,
  arrives: boolean,
  amount: Mm,
): Result<Piece, MouthFailure> {
  const length = stretchLength(piece, stretch);
  if (amount > length - SHORTEST_EDGE)
    return fail({ code: "alteration/off-the-seam", most: Math.max(0, length - SHORTEST_EDGE) });
  const { index, t } = placeAlong(piece, stretch, arrives ? length - amount : amount);
  const at = stretch.indexOf(index);
  const [before, after] = edgeSplit(curveOf(piece, invariant(piece.edges[index], "edge")), t);
  const kept = arrives ? before : after;
  const gone = arrives ? stretch.slice(at + 1) : stretch.slice(0, at);
  const moved = placedAt(invariant(piece.points[point], point), arrives ? kept.b : kept.a);
  const passed = gone.map((i): PointName => {
    const edge = invariant(piece.edges[i], "edge");
    return arrives ? edge.from : edge.to;
  });
  const points = withoutPoint(withPoint(piece.points, point, moved), passed);
  const edges = piece.edges.flatMap((edge, i): Edge[] =>
    gone.includes(i)
      ? []
      : i === index
        ? [withEnds(edge, arrives ? edge.from : point, arrives ? point : edge.to, kept.curve)]
        : [edge],
  );
  return ok(redrawn(piece, points, edges));
}
