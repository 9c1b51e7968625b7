/**
 * Truing the seam at a dart: folded shut, the seam must run on without a corner. Both sides share the turn, as when the
 * dart is folded on paper and the seam redrawn through it.
 */
import { edgeTangentAt, type EdgeCurve } from "../geometry/edgeCurve";
import { comeNear } from "../geometry/iterate";
import { directionOf, distance, polar, turnBetween, type PiecePoint } from "../geometry/point";
import { CoreBug, invariant } from "../result";
import type { Lines } from "../pattern/linesBeside";
import { dartOf, pointOf, type DartName, type Edge, type Piece, type PointName } from "../pattern/piece";
import { redrawn, withCurve } from "../pattern/redraw";
import { seamLength } from "../girth/seamLength";
import { TRUING_ACCURACY } from "../tolerance";
import { radians, radiansFromDegrees, type Mm, type Radians } from "../units";
import { curveOf, edgeFrom, edgeTo } from "../pattern/ring";
import { smoothStretchAt, withEndTurned } from "../pattern/seamStretch";
import { legsOf } from "./bowedLegs";
import { moveMouth } from "./moveMouth";

type Line = EdgeCurve<"piece">;

/**
 * The corner left in the seam when the dart is sewn shut, signed, in radians: 0 is smooth.
 *
 * Legs of unequal length are judged by direction alone.
 */
export const seamCornerAtDart = (piece: Piece, name: DartName): Radians =>
  cornerBetween(piece, name, mouthSides(piece, name));

function cornerBetween(piece: Piece, name: DartName, { before, after, first, second }: MouthSides): Radians {
  const apex = pointOf(piece, dartOf(piece, name).apex);
  return cornerOver(
    curveOf(piece, before),
    curveOf(piece, after),
    legAtMouth(piece, name, first, apex),
    legAtMouth(piece, name, second, apex),
  );
}

/**
 * Sewing turns the second leg onto the first, and the line beyond it with it.
 *
 * @param first, second directions of the legs where they come to their mouth ends
 */
function cornerOver(before: Line, after: Line, first: Radians, second: Radians): Radians {
  const shut = turnBetween(second, first);
  return turnBetween(edgeTangentAt(before, 1), radians(edgeTangentAt(after, 0) + shut));
}

/** Direction of a leg where it comes to its mouth end. */
function legAtMouth(piece: Piece, name: DartName, end: PointName, apex: PiecePoint): Radians {
  const dart = dartOf(piece, name);
  if (dart.bow === undefined) return directionOf(apex, pointOf(piece, end));
  const legs = legsOf(piece, name);
  return radians(edgeTangentAt((end === dart.inner ? legs.inner : legs.outer).curve, 0) + Math.PI);
}

/** The seam redrawn so that it runs straight on through the shut dart; lengths change by well under a millimetre. */
export function trueSeamAtDart(piece: Piece, name: DartName): Piece {
  const sides = mouthSides(piece, name);
  const corner = radians(cornerBetween(piece, name, sides) - turnAsDrawn(piece, name));
  const { before, after, beforeIndex, afterIndex } = sides;
  const [into, outOf] = [smoothStretchAt(piece, beforeIndex), smoothStretchAt(piece, afterIndex)];
  const edges = [...piece.edges];
  if (into.length === 1) edges[beforeIndex] = turnedAtEnd(piece, before, "end", radians(corner / 2));
  if (outOf.length === 1) edges[afterIndex] = turnedAtEnd(piece, after, "start", radians(-corner / 2));
  const turned = redrawn(piece, piece.points, edges);
  const first = into.length === 1 ? turned : withEndTurned(turned, into, "end", radians(corner / 2));
  return outOf.length === 1 ? first : withEndTurned(first, outOf, "start", radians(-corner / 2));
}

/** The same truing of the two lines alone that a dart with straight legs lies between; see `trueSeamAtDart`. */
export function trueLinesAt({ before, after }: Lines, apex: PiecePoint, asDrawn: Radians): Lines {
  const [first, second] = [directionOf(apex, before.b), directionOf(apex, after.a)];
  const corner = cornerOver(before, after, first, second) - asDrawn;
  return {
    before: endTurned(before, "end", radians(corner / 2)),
    after: endTurned(after, "start", radians(-corner / 2)),
  };
}

/** Rounds in which the mouth is corrected; each leaves well under a tenth of the error. */
const ROUNDS = 8;

/**
 * The same truing with the sewn length of the seam kept: the mouth is made wider or narrower, by fractions of a
 * millimetre, by what redrawing added or took.
 */
export function trueSeamKeepingLength(piece: Piece, name: DartName, length: Mm): Piece {
  const { seam } = dartOf(piece, name);
  return comeNear(trueSeamAtDart(piece, name), {
    missOf: (trued) => seamLength(trued, seam) - length,
    correct: (trued, longer) => {
      const moved = moveMouth(trued, name, longer / 2, longer / 2);
      return moved.ok ? trueSeamAtDart(moved.value, name) : null;
    },
    rounds: ROUNDS,
    accuracy: TRUING_ACCURACY,
  }).value;
}

/** The corner that belongs there: none, but where the pattern itself has one. */
export const turnAsDrawn = (piece: Piece, name: DartName): Radians =>
  radiansFromDegrees(dartOf(piece, name).drawnTurn ?? 0);

/** The ends of a dart's mouth, the way the edges go. */
export function mouthOf(piece: Piece, name: DartName): readonly [PointName, PointName] {
  for (const { mouthOf: dart, from, to } of piece.edges) if (dart === name) return [from, to];
  throw new CoreBug(`${piece.name} has no mouth of ${name}`);
}

type MouthSides = ReturnType<typeof mouthSides>;

function mouthSides(piece: Piece, name: DartName) {
  const [first, second] = mouthOf(piece, name);
  const beforeIndex = edgeTo(piece, first);
  const afterIndex = edgeFrom(piece, second);
  return {
    beforeIndex,
    afterIndex,
    before: invariant(piece.edges[beforeIndex], "edge"),
    after: invariant(piece.edges[afterIndex], "edge"),
    first,
    second,
  };
}

const turnedAtEnd = (piece: Piece, edge: Edge, end: "start" | "end", turn: Radians): Edge =>
  turn === 0 ? edge : withCurve(edge, endTurned(curveOf(piece, edge), end, turn).curve);

function endTurned({ a, b, curve }: Line, end: "start" | "end", turn: Radians): Line {
  if (turn === 0) return { a, b, curve };
  const span = distance(a, b);
  const c1 = curve?.c1 ?? polar(a, directionOf(a, b), span / 3);
  const c2 = curve?.c2 ?? polar(b, directionOf(b, a), span / 3);
  return {
    a,
    b,
    curve:
      end === "start"
        ? { c1: polar(a, radians(directionOf(a, c1) + turn), distance(a, c1)), c2 }
        : { c1, c2: polar(b, radians(directionOf(b, c2) + turn), distance(b, c2)) },
  };
}
