/** A corner placed so that both seams that meet at it come out as long as wanted; the controls beside it go with it. */
import { pointLike, type PiecePoint } from "../geometry/point";
import { moveMouthEnd } from "../dart/mouthEnd";
import { seamLength } from "../girth/seamLength";
import { pointOf, type Piece, type PointName, type SeamName } from "../pattern/piece";
import { runBeside } from "../pattern/runBeside";
import { SEAMS_PARALLEL, SOLVER_ACCURACY } from "../tolerance";
import type { Mm } from "../units";

interface SeamWanted {
  readonly seam: SeamName;
  readonly length: Mm;
}

const ROUNDS = 12;
/** mm. The step over which the growth of a seam is measured. */
const STEP = 0.01;

/**
 * Newton's method on the two coordinates of the corner.
 *
 * @returns the piece with the corner moved; null where no place near by gives both lengths
 */
export function fitCorner(piece: Piece, corner: PointName, wanted: readonly [SeamWanted, SeamWanted]): Piece | null {
  const { run, seamOutside, withRun } = runBeside(piece, corner, corner);
  const [one, other] = wanted;
  const [out1, out2] = [seamOutside(one.seam) - one.length, seamOutside(other.seam) - other.length];
  const missesOf = (drawn: Piece): readonly [Mm, Mm] => [
    seamLength(drawn, one.seam) + out1,
    seamLength(drawn, other.seam) + out2,
  ];
  let at = pointOf(piece, corner);
  let growth: readonly [number, number, number, number] | null = null;
  for (let round = 0; round < ROUNDS; round += 1) {
    const drawn = moveMouthEnd(run, corner, at);
    const [m1, m2] = missesOf(drawn);
    if (Math.max(Math.abs(m1), Math.abs(m2)) < SOLVER_ACCURACY) return drawn === run ? piece : withRun(drawn);
    // What the seams grow by hardly changes from one round to the next: it serves for two.
    if (growth === null || round % 2 === 0) {
      const [x1, x2] = missesOf(moveMouthEnd(run, corner, pointLike(at, at.x + STEP, at.y)));
      const [y1, y2] = missesOf(moveMouthEnd(run, corner, pointLike(at, at.x, at.y + STEP)));
      growth = [(x1 - m1) / STEP, (y1 - m1) / STEP, (x2 - m2) / STEP, (y2 - m2) / STEP];
    }
    const next = solved(at, growth, m1, m2);
    if (next === null) return null;
    at = next;
  }
  return null;
}

/** Two linear equations by Cramer's rule; null where the seams run along each other. */
function solved(
  at: PiecePoint,
  [a, b, c, d]: readonly [number, number, number, number],
  m1: Mm,
  m2: Mm,
): PiecePoint | null {
  const determinant = a * d - b * c;
  if (Math.abs(determinant) < SEAMS_PARALLEL) return null;
  return pointLike(at, at.x - (m1 * d - m2 * b) / determinant, at.y - (m2 * a - m1 * c) / determinant);
}
