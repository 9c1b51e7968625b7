/**
 * Truing the seam at a wide dart: redrawn smooth over the shut dart, its length kept by moving both mouth ends alike
 * along the line between them. So the legs stay as equal as they were, however much the seam has to bend.
 */
import { comeNear } from "../geometry/iterate";
import { between, distance } from "../geometry/point";
import { seamLength } from "../girth/seamLength";
import { linesBeside, withEndsAt, type Lines } from "../pattern/linesBeside";
import { dartOf, pointOf, type Dart, type DartName, type Piece, type PointName } from "../pattern/piece";
import { runBeside } from "../pattern/runBeside";
import { TRUING_ACCURACY } from "../tolerance";
import type { Mm } from "../units";
import { mouthPointAt } from "./dartFrame";
import { moveMouthEnd } from "./mouthEnd";
import { dartCorners } from "./moveMouth";
import { mouthOf, trueLinesAt, trueSeamAtDart, turnAsDrawn } from "./trueSeam";

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
  const [first, last] = mouthOf(piece, name);
  const trued = dart.bow === undefined ? withLinesTrued(piece, dart, [first, last], length) : null;
  if (trued !== null) return trued;
  const { run, seamOutside, withRun } = runBeside(piece, first, last, dart);
  return withRun(withRunTrued(run, dart, length - seamOutside(dart.seam)));
}

/** Straight legs between two lines of one edge each, as nearly all darts are; null where the lines have bends. */
function withLinesTrued(piece: Piece, dart: Dart, mouth: readonly [PointName, PointName], length: Mm): Piece | null {
  const beside = linesBeside(piece, ...mouth);
  if (beside === null) return null;
  const apex = pointOf(piece, dart.apex);
  const asDrawn = turnAsDrawn(piece, dart.name);
  const wanted = length - beside.outside(dart.seam);
  const trued = comeNear(trueLinesAt(beside, apex, asDrawn), {
    missOf: (lines) => beside.ofSeam(dart.seam, lines) - wanted,
    correct: (lines, longer) => trueLinesAt(widened(lines, longer / 2), apex, asDrawn),
    rounds: ROUNDS,
    accuracy: TRUING_ACCURACY,
  }).value;
  return beside.withLines(trued);
}

/** Both mouth ends moved out along the line between them, the handles beside them with them. */
function widened(lines: Lines, by: Mm): Lines {
  const [a, b] = [lines.before.b, lines.after.a];
  const width = distance(a, b);
  return width === 0 ? lines : withEndsAt(lines, between(a, b, -by / width), between(b, a, -by / width));
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
