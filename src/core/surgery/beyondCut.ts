/**
 * A piece cut in two along a line, and what lies beyond the cut moved rigidly: slid straight, or turned about a hinge on
 * the seam line so that the cut opens or laps as a wedge. The two edges that were cut through are drawn again in one,
 * each control going with its own end; darts that the cut crosses lengthwise get their legs drawn and trued anew.
 */
import { edgeTangentAt, lineEdge, type EdgeCurve } from "../geometry/edgeCurve";
import { comeNear } from "../geometry/iterate";
import { isInOutline } from "../geometry/outline";
import { between, directionOf, distance, rotateAbout, turnBetween, type PiecePoint } from "../geometry/point";
import { moveRigidly, type Rigid } from "../geometry/rigid";
import { trueLegs } from "../dart/trueLegs";
import { mouthPointAt } from "../dart/dartFrame";
import { moveMouthEnd } from "../dart/mouthEnd";
import { dartCorners } from "../dart/moveMouth";
import { seamLength } from "../girth/seamLength";
import { invariant } from "../result";
import {
  pointNames,
  pointOf,
  type Dart,
  type Edge,
  type NamedPoint,
  type Piece,
  type PointName,
} from "../pattern/piece";
import { redrawn, withCurve } from "../pattern/redraw";
import { SAME_POINT, SOLVER_ACCURACY } from "../tolerance";
import { radians, type Mm, type Radians } from "../units";
import { cutAndMove, drawnFurther, partAt, type Operated } from "./cutAndMove";
import { curveOf, edgeFrom, edgeTo, insertPoint } from "../pattern/ring";
import {
  smoothStretchAt,
  stretchAt,
  withEndCarried,
  withEndTurned,
  type RingPlace,
  type Stretch,
} from "../pattern/seamStretch";

export type OutlinePlace = RingPlace;

export interface BeyondCut {
  /** Where the outline, going the way of its edges, passes the cut into the part that moves, and where it comes out. */
  readonly into: OutlinePlace;
  readonly outOf: OutlinePlace;
  /** Corners of the cut on the way from `outOf` back to `into`; none where it is straight. */
  readonly corners?: readonly PiecePoint[];
  readonly motion: Rigid<"piece">;
}

const INTO = ["cut1", "cut2"] as const;
const OUT_OF = ["cut3", "cut4"] as const;

/**
 * Moves what lies beyond a cut.
 *
 * @param piece any piece; both places must lie on different edges, none of them the mouth of a dart
 * @returns the piece with the same points and edges as before, and its trace. A dart with its end on one side of the cut
 *          and its mouth on the other keeps the sewn length of its seam; all other edges that were not cut keep theirs
 */
export function moveBeyondCut(piece: Piece, cut: BeyondCut): Operated {
  const { into, outOf, motion, corners = [] } = cut;
  const both = [
    { ...into, names: INTO },
    { ...outOf, names: OUT_OF },
  ].toSorted((a, b) => b.index - a.index);
  let ready = piece;
  // The later edge first, so that the index of the earlier one still holds.
  for (const { index, t, names } of both) ready = insertPoint(ready, index, t, names[0], "bust");
  const [first, last] = [pointOf(ready, INTO[0]), pointOf(ready, OUT_OF[0])];
  const [opensFirst, opensLast] = [isMoved(motion, first), isMoved(motion, last)];
  if (opensFirst) ready = partAt(ready, ...INTO, null);
  if (opensLast) ready = partAt(ready, ...OUT_OF, null);
  const from = opensFirst ? INTO[1] : INTO[0];
  const part = partOutline(ready, from, OUT_OF[0], corners);
  const carries = pointNames(ready).filter((name) => !isCorner(ready, name) && isInOutline(part, pointOf(ready, name)));
  const moved = cutAndMove(ready, [{ from, to: OUT_OF[0], inside: corners, carries, motion }], {
    cuts: [[first, ...corners.toReversed(), last]],
    hinges: [...(opensFirst ? [] : [first]), ...(opensLast ? [] : [last])],
  });
  const whole = drawnAnew(moved.piece, piece, motion, into.index, outOf.index);
  return drawnFurther(moved, trueCrossed(whole, piece));
}

const isMoved = (motion: Rigid<"piece">, p: PiecePoint): boolean => distance(moveRigidly(motion, p), p) > SAME_POINT;

const isCorner = (piece: Piece, name: PointName): boolean => piece.edges.some((edge) => edge.from === name);

/** The ring as before the cut: the edge into the part keeps its first control and moves its second, the other one vice versa. */
function drawnAnew(moved: Piece, before: Piece, motion: Rigid<"piece">, into: number, outOf: number): Piece {
  const isBeyond = (index: number): boolean =>
    into < outOf ? index > into && index < outOf : index > into || index < outOf;
  const edges = before.edges.map((edge, index): Edge => {
    if (edge.curve === null) return edge;
    const { c1, c2 } = edge.curve;
    const first = index === outOf || isBeyond(index);
    const second = index === into || isBeyond(index);
    if (!first && !second) return edge;
    return withCurve(edge, {
      c1: first ? moveRigidly(motion, c1) : c1,
      c2: second ? moveRigidly(motion, c2) : c2,
    });
  });
  const points: Partial<Record<PointName, NamedPoint>> = {};
  for (const name of pointNames(before)) points[name] = invariant(moved.points[name], name);
  const [cutInto, cutOutOf] = [stretchAt(before, into), stretchAt(before, outOf)];
  const whole = redrawn(moved, points, edges);
  // Cut twice, it is in three parts already.
  if (cutInto.includes(outOf)) return whole;
  return carriedOn(carriedOn(whole, before, cutInto, "end", motion), before, cutOutOf, "start", motion);
}

/** A stretch of several edges that was cut drawn anew as a whole, from as it was before. */
function carriedOn(moved: Piece, before: Piece, stretch: Stretch, end: "start" | "end", motion: Rigid<"piece">): Piece {
  if (stretch.length === 1) return moved;
  const drawn = withEndCarried(before, stretch, end, motion);
  const points = { ...moved.points };
  const edges = [...moved.edges];
  for (const index of stretch) {
    const edge = invariant(drawn.edges[index], "edge");
    edges[index] = edge;
    for (const name of [edge.from, edge.to]) points[name] = invariant(drawn.points[name], name);
  }
  return redrawn(moved, points, edges);
}

/** The outline of the part: its stretch of the ring, and the cut. */
function partOutline(
  piece: Piece,
  from: PointName,
  to: PointName,
  corners: readonly PiecePoint[],
): EdgeCurve<"piece">[] {
  const start = edgeFrom(piece, from);
  const count = ((edgeTo(piece, to) - start + piece.edges.length) % piece.edges.length) + 1;
  const ring = piece.edges.map((_, step) =>
    curveOf(piece, invariant(piece.edges[(start + step) % piece.edges.length], "edge")),
  );
  const cut = [pointOf(piece, to), ...corners, pointOf(piece, from)];
  return [
    ...ring.slice(0, count),
    ...cut.slice(1).map((corner, index) => lineEdge(invariant(cut[index], "corner"), corner)),
  ];
}

const isAsFarApart = (before: Piece, after: Piece, a: PointName, b: PointName): boolean =>
  Math.abs(distance(pointOf(before, a), pointOf(before, b)) - distance(pointOf(after, a), pointOf(after, b))) <
  SAME_POINT;

/** Darts whose legs changed: their legs made equal again, and their seams as smooth over them and as long as before. */
function trueCrossed(after: Piece, before: Piece): Piece {
  let piece = after;
  for (const dart of after.darts) if (isCrossed(before, after, dart)) piece = trueDartAgain(piece, before, dart);
  return piece;
}

const isCrossed = (before: Piece, after: Piece, { apex, inner, outer }: Dart): boolean =>
  !isAsFarApart(before, after, apex, inner) || !isAsFarApart(before, after, apex, outer);

/** Rounds in which the length of the seam settles; each leaves a small part of the error. */
const ROUNDS = 12;

/**
 * One dart trued: legs equal, the seam meeting each leg at the angle that it met it at before, and of a sewn length (as long
 * as it is, unless given).
 * A gathered mouth is drawn up, not folded: only the length is seen to.
 */
export function trueDartAgain(
  piece: Piece,
  before: Piece,
  dart: Dart,
  length: Mm = seamLength(piece, dart.seam),
): Piece {
  const { name, seam, gathered } = dart;
  const square = (drawn: Piece): Piece => (gathered === true ? drawn : squareToLegs(drawn, before, dart));
  return comeNear(gathered === true ? piece : square(trueLegs(piece, name).piece), {
    missOf: (trued) => seamLength(trued, seam) - length,
    correct: (trued, longer) => {
      const corners = dartCorners(trued, name);
      const moved = moveMouthEnd(trued, dart.inner, mouthPointAt(corners, "inner", longer / 2));
      return square(moveMouthEnd(moved, dart.outer, mouthPointAt(corners, "outer", longer / 2)));
    },
    rounds: ROUNDS,
    accuracy: SOLVER_ACCURACY,
  }).value;
}

/** The seam beside the mouth turned until it meets each leg as it did before. */
const squareToLegs = (piece: Piece, before: Piece, { apex, inner, outer }: Dart): Piece =>
  [inner, outer].reduce((drawn, end) => {
    const legs = turnBetween(
      directionOf(pointOf(before, apex), pointOf(before, end)),
      directionOf(pointOf(drawn, apex), pointOf(drawn, end)),
    );
    const seams = turnBetween(seamDirection(before, end), seamDirection(drawn, end));
    return turnSeamAt(drawn, end, radians(turnBetween(seams, legs)));
  }, piece);

/** The edge of the seam that ends or starts at a mouth end, and which of its ends that is. */
function seamBeside(piece: Piece, end: PointName): { index: number; edge: Edge; isEnd: boolean } {
  const into = edgeTo(piece, end);
  const edge = invariant(piece.edges[into], "edge");
  if (edge.mouthOf === null) return { index: into, edge, isEnd: true };
  const index = edgeFrom(piece, end);
  return { index, edge: invariant(piece.edges[index], "edge"), isEnd: false };
}

function seamDirection(piece: Piece, end: PointName): Radians {
  const { edge, isEnd } = seamBeside(piece, end);
  return edgeTangentAt(curveOf(piece, edge), isEnd ? 1 : 0);
}

function turnSeamAt(piece: Piece, end: PointName, turn: Radians): Piece {
  const { index, edge, isEnd } = seamBeside(piece, end);
  const [a, b] = [pointOf(piece, edge.from), pointOf(piece, edge.to)];
  const stretch = smoothStretchAt(piece, index);
  if (stretch.length > 1) return withEndTurned(piece, stretch, isEnd ? "end" : "start", turn);
  // A straight seam that met the legs as it should stays straight.
  if (edge.curve === null && distance(a, b) * Math.abs(turn) < SAME_POINT) return piece;
  const { c1, c2 } = edge.curve ?? { c1: between(a, b, 1 / 3), c2: between(a, b, 2 / 3) };
  const curve = isEnd ? { c1, c2: rotateAbout(c2, b, turn) } : { c1: rotateAbout(c1, a, turn), c2 };
  return redrawn(piece, piece.points, piece.edges.with(index, withCurve(edge, curve)));
}
