/** What an upper edge will stand off the body by. mm, radians. */
import { angleAt, directionOf, distance, turnBetween, type PiecePoint } from "../geometry/point";
import { pointOf, type Piece } from "../pattern/piece";
import type { PieceSet } from "../pattern/pieceSet";
import { LINES_PARALLEL } from "../tolerance";
import { radians, type Mm, type Radians } from "../units";

/** Beyond that the darts of a piece take up more than a bust is. */
const MOST_SHAPED: Radians = radians(Math.PI / 2);

/**
 * How much less than flat the cloth is about the bust point: the angles of all darts that serve it, legs drawn on to it, and what
 * a princess seam takes up.
 */
export function shapedAbout(piece: Piece, { sideFront }: PieceSet): Radians {
  const bust = piece.points.bustPoint?.at;
  if (bust === undefined) return radians(0);
  const darts = piece.darts
    .filter(({ aimsAt }) => aimsAt === "bustPoint")
    .reduce((sum, { inner, outer }) => sum + angleAt(bust, pointOf(piece, inner), pointOf(piece, outer)), 0);
  const whole = darts + (piece.points.princessBust === undefined ? 0 : openedBySeam(piece, sideFront));
  return radians(Math.min(MOST_SHAPED, Math.max(0, whole)));
}

/** What is missing from a whole turn where both pieces lie with their princess seams at one bust point. */
function openedBySeam(centreFront: Piece, sideFront: Piece | undefined): number {
  if (sideFront === undefined) return 0;
  const own = [centreFront, sideFront].map((piece) =>
    cornerBelow(
      pointOf(piece, "princessBust"),
      pointOf(piece, "princessTop"),
      pointOf(piece, "princessWaist"),
      piece === centreFront,
    ),
  );
  return 2 * Math.PI - own.reduce((sum, corner) => sum + corner, 0);
}

/** The angle of a piece at its bust point, from the top of its seam to the foot, on the side where the cloth is. */
function cornerBelow(bust: PiecePoint, top: PiecePoint, waist: PiecePoint, isCentre: boolean): number {
  const turn = turnBetween(directionOf(bust, top), directionOf(bust, waist));
  // Going up, then down on the side of the centre, the direction turns anticlockwise.
  const own = isCentre ? -turn : turn;
  return own < 0 ? own + 2 * Math.PI : own;
}

/** Directions in which a line is looked at from the bust point. */
const LOOKS = 24;

/** How far a line is from a point in a direction: in the one nearest to it that meets the line. */
function radiusAt(line: readonly PiecePoint[], bust: PiecePoint, way: Radians): Mm {
  let best = { off: Infinity, radius: 0 };
  for (let at = 1; at < line.length; at += 1) {
    const [a, b] = [line[at - 1], line[at]];
    if (a === undefined || b === undefined) continue;
    const [from, whole] = [directionOf(bust, a), turnBetween(directionOf(bust, a), directionOf(bust, b))];
    const turn = turnBetween(from, way);
    const isBetween = Math.abs(turn) <= Math.abs(whole) && turn * whole >= 0;
    if (isBetween) return crossedAt(bust, way, a, b);
    const [offA, offB] = [Math.abs(turn), Math.abs(turnBetween(directionOf(bust, b), way))];
    if (offA < best.off) best = { off: offA, radius: distance(bust, a) };
    if (offB < best.off) best = { off: offB, radius: distance(bust, b) };
  }
  return best.radius;
}

/** How far from a point, in a direction, the line through two others is met. */
function crossedAt(from: PiecePoint, way: Radians, a: PiecePoint, b: PiecePoint): Mm {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const cross = Math.cos(way) * dy - Math.sin(way) * dx;
  if (Math.abs(cross) < LINES_PARALLEL) return Math.min(distance(from, a), distance(from, b));
  return ((a.x - from.x) * dy - (a.y - from.y) * dx) / cross;
}

/**
 * The gape of a new edge over the bust, on the half.
 *
 * Sewn, a front is nearly a cone about its bust point: a stretch of edge that comes nearer by d takes up less of what the darts
 * shape, by d times their angle for a whole turn, and of that by as much of a turn as it spans. Above the bust the body is hollow
 * and no cone: by that much the edge stands away. None where it comes no nearer than the pattern's own; where it runs lower at the
 * centre, the corner of the pattern's own counts.
 *
 * @param own   the pattern's edge as a line of places, from the centre on
 * @param drawn the new one
 * @source arc = angle × radius; it comes near common practice, no source: 6 to 13 mm where a neckline is cut low over the bust
 */
export function gapeOver(
  bust: PiecePoint,
  shaped: Radians,
  own: readonly PiecePoint[],
  drawn: readonly PiecePoint[],
): Mm {
  const [first, last] = [drawn[0], drawn.at(-1)];
  if (first === undefined || last === undefined) return 0;
  const from = directionOf(bust, first);
  const spanned = turnBetween(from, directionOf(bust, last));
  let sum = 0;
  for (let look = 0; look < LOOKS; look += 1) {
    const way = radians(from + (spanned * (look + 0.5)) / LOOKS);
    sum += Math.max(0, radiusAt(own, bust, way) - radiusAt(drawn, bust, way));
  }
  return (shaped * Math.abs(spanned) * sum) / (LOOKS * 2 * Math.PI);
}
