/**
 * Truing the seam at a wide dart: redrawn smooth over the shut dart, its length kept by moving both mouth ends alike
 * along the line between them. So the legs stay as equal as they were, however much the seam has to bend.
 */
import { comeNear } from "../geometry/iterate";
import { seamLength } from "../girth/seamLength";
import { dartOf, type DartName, type Piece } from "../pattern/piece";
import { runBeside } from "../pattern/runBeside";
import { TRUING_ACCURACY } from "../tolerance";
import type { Mm } from "../units";
import { mouthPointAt } from "./dartFrame";
import { moveMouthEnd } from "./mouthEnd";
import { dartCorners } from "./moveMouth";
import { mouthOf, trueSeamAtDart } from "./trueSeam";

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
  const { seam, inner, outer } = dart;
  const { run, seamOutside, withRun } = runBeside(piece, ...mouthOf(piece, name), dart);
  const outside = seamOutside(seam);
  const settled = comeNear(trueSeamAtDart(run, name), {
    missOf: (trued) => outside + seamLength(trued, seam) - length,
    correct: (trued, longer) => {
      const corners = dartCorners(trued, name);
      const moved = moveMouthEnd(trued, inner, mouthPointAt(corners, "inner", longer / 2));
      return trueSeamAtDart(moveMouthEnd(moved, outer, mouthPointAt(corners, "outer", longer / 2)), name);
    },
    rounds: ROUNDS,
    accuracy: TRUING_ACCURACY,
  });
  return withRun(settled.value);
}
