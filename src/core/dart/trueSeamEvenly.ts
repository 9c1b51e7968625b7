/**
 * Truing the seam at a wide dart: redrawn smooth over the shut dart, its length kept by moving both mouth ends alike
 * along the line between them. So the legs stay as equal as they were, however much the seam has to bend.
 */
import { edgeLength, type EdgeCurve } from "../geometry/edgeCurve";
import { comeNear } from "../geometry/iterate";
import { between, distance, shift, type PiecePoint } from "../geometry/point";
import { seamLength } from "../girth/seamLength";
import {
  dartOf,
  pointOf,
  type Dart,
  type DartName,
  type Edge,
  type NamedPoint,
  type Piece,
  type PointName,
} from "../pattern/piece";
import { placedAt, redrawn, withCurve, withPoint } from "../pattern/redraw";
import { curveOf } from "../pattern/ring";
import { runBeside } from "../pattern/runBeside";
import { invariant } from "../result";
import { TRUING_ACCURACY } from "../tolerance";
import type { Mm } from "../units";
import { mouthPointAt } from "./dartFrame";
import { moveMouthEnd } from "./mouthEnd";
import { dartCorners } from "./moveMouth";
import { mouthOf, trueLinesAt, trueSeamAtDart, turnAsDrawn, type LinesAtMouth } from "./trueSeam";

/** Rounds at the most; each leaves a small part of the error, more of it the wider the dart. */
const ROUNDS = 20;

/**
 * The seam smooth over the shut dart, and of a given sewn length.
 *
 * @param name   the dart; its legs should be equal
 * @param length of the whole seam on this piece, mouths left out; mm
 */
export function trueSeamEvenly(piece: Piece, name: DartName, length: Mm): Piece {
  const dart = dartOf(piece, name);
  const { run, seamOutside, withRun } = runBeside(piece, ...mouthOf(piece, name), dart);
  const wanted = length - seamOutside(dart.seam);
  const [before, mouth, after] = run.edges;
  const isPlain = run.edges.length === 3 && mouth?.curve === null && dart.bow === undefined;
  return withRun(
    isPlain && before !== undefined && after !== undefined
      ? withLinesTrued(run, dart, [before, mouth, after], wanted)
      : withRunTrued(run, dart, wanted),
  );
}

/** Straight legs between two lines of one edge each, as nearly all darts are: just these two lines are drawn and measured. */
function withLinesTrued(
  run: Piece,
  dart: Dart,
  [before, mouth, after]: readonly [Edge, Edge, Edge],
  wanted: Mm,
): Piece {
  const apex = pointOf(run, dart.apex);
  const asDrawn = turnAsDrawn(run, dart.name);
  const sewn = (edge: Edge, line: EdgeCurve<"piece">): Mm =>
    edge.seam === dart.seam && edge.mouthOf === null ? edgeLength(line) : 0;
  const start = { before: curveOf(run, before), after: curveOf(run, after) };
  const trued = comeNear(trueLinesAt(start, apex, asDrawn), {
    missOf: (lines) => sewn(before, lines.before) + sewn(after, lines.after) - wanted,
    correct: (lines, longer) => trueLinesAt(widened(lines, longer / 2), apex, asDrawn),
    rounds: ROUNDS,
    accuracy: TRUING_ACCURACY,
  }).value;
  const points = withPoint(run.points, mouth.from, placedAt(pointIn(run, mouth.from), trued.before.b));
  return redrawn(run, withPoint(points, mouth.to, placedAt(pointIn(run, mouth.to), trued.after.a)), [
    withCurve(before, trued.before.curve),
    mouth,
    withCurve(after, trued.after.curve),
  ]);
}

const pointIn = (run: Piece, name: PointName): NamedPoint => invariant(run.points[name], name);

/** A handle that goes along with its end. */
const goneAlong = (handle: PiecePoint, from: PiecePoint, to: PiecePoint): PiecePoint =>
  shift(handle, to.x - from.x, to.y - from.y);

/** Both mouth ends moved out along the line between them, the handles beside them with them. */
function widened({ before, after }: LinesAtMouth, by: Mm): LinesAtMouth {
  const width = distance(before.b, after.a);
  if (width === 0) return { before, after };
  const [first, second] = [between(before.b, after.a, -by / width), between(after.a, before.b, -by / width)];
  return {
    before: {
      a: before.a,
      b: first,
      curve: before.curve && { c1: before.curve.c1, c2: goneAlong(before.curve.c2, before.b, first) },
    },
    after: {
      a: second,
      b: after.b,
      curve: after.curve && { c1: goneAlong(after.curve.c1, after.a, second), c2: after.curve.c2 },
    },
  };
}

/** The same where the seam has bends beside the dart, or the legs are bowed. */
function withRunTrued(run: Piece, { name, seam, inner, outer }: Dart, wanted: Mm): Piece {
  return comeNear(trueSeamAtDart(run, name), {
    missOf: (trued) => seamLength(trued, seam) - wanted,
    correct: (trued, longer) => {
      const corners = dartCorners(trued, name);
      const moved = moveMouthEnd(trued, inner, mouthPointAt(corners, "inner", longer / 2));
      return trueSeamAtDart(moveMouthEnd(moved, outer, mouthPointAt(corners, "outer", longer / 2)), name);
    },
    rounds: ROUNDS,
    accuracy: TRUING_ACCURACY,
  }).value;
}
