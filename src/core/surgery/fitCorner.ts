/** A corner placed so that both seams that meet at it come out as long as wanted; the controls beside it go with it. */
import { pointLike, type PiecePoint } from "../geometry/point";
import { moveMouthEnd } from "../dart/mouthEnd";
import { seamLength } from "../girth/seamLength";
import { linesBeside, withEndsAt } from "../pattern/linesBeside";
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

/** The corner as a solver moves it: what both seams are off by with it at a place, and the piece with it there. */
interface Movable {
  readonly missesAt: (at: PiecePoint) => readonly [Mm, Mm];
  readonly movedTo: (at: PiecePoint) => Piece;
}

/**
 * Newton's method on the two coordinates of the corner.
 *
 * @returns the piece with the corner moved; null where no place near by gives both lengths
 */
export function fitCorner(piece: Piece, corner: PointName, wanted: readonly [SeamWanted, SeamWanted]): Piece | null {
  const { missesAt, movedTo } = betweenLines(piece, corner, wanted) ?? betweenBends(piece, corner, wanted);
  const start = pointOf(piece, corner);
  let at = start;
  let growth: readonly [number, number, number, number] | null = null;
  for (let round = 0; round < ROUNDS; round += 1) {
    const [m1, m2] = missesAt(at);
    if (Math.max(Math.abs(m1), Math.abs(m2)) < SOLVER_ACCURACY) return at === start ? piece : movedTo(at);
    // What the seams grow by hardly changes from one round to the next: it serves for two.
    if (growth === null || round % 2 === 0) {
      const [x1, x2] = missesAt(pointLike(at, at.x + STEP, at.y));
      const [y1, y2] = missesAt(pointLike(at, at.x, at.y + STEP));
      growth = [(x1 - m1) / STEP, (y1 - m1) / STEP, (x2 - m2) / STEP, (y2 - m2) / STEP];
    }
    const next = solved(at, growth, m1, m2);
    if (next === null) return null;
    at = next;
  }
  return null;
}

/** A corner between two lines of one edge each: these alone are measured; null where they have bends. */
function betweenLines(
  piece: Piece,
  corner: PointName,
  [one, other]: readonly [SeamWanted, SeamWanted],
): Movable | null {
  const lines = linesBeside(piece, corner, corner);
  if (lines === null) return null;
  const { ofSeam, outside, withLines } = lines;
  const [out1, out2] = [outside(one.seam) - one.length, outside(other.seam) - other.length];
  return {
    missesAt: (at) => {
      const drawn = withEndsAt(lines, at, at);
      return [ofSeam(one.seam, drawn) + out1, ofSeam(other.seam, drawn) + out2];
    },
    movedTo: (at) => withLines(withEndsAt(lines, at, at)),
  };
}

function betweenBends(piece: Piece, corner: PointName, [one, other]: readonly [SeamWanted, SeamWanted]): Movable {
  const { run, seamOutside, withRun } = runBeside(piece, corner, corner);
  const [out1, out2] = [seamOutside(one.seam) - one.length, seamOutside(other.seam) - other.length];
  return {
    missesAt: (at) => {
      const drawn = moveMouthEnd(run, corner, at);
      return [seamLength(drawn, one.seam) + out1, seamLength(drawn, other.seam) + out2];
    },
    movedTo: (at) => withRun(moveMouthEnd(run, corner, at)),
  };
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
