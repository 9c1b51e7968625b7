/** Where a dart ends: the usual stop short of the bust point, and placing an end on the dart's axis. */
import { directionOf, distance, midpoint, polar, turnBetween, type PiecePoint } from "../geometry/point";
import { homeOf } from "../pattern/dartNames";
import { dartOf, pointOf, type DartName, type Piece } from "../pattern/piece";
import { SHORTEST_DART } from "../tolerance";
import { radians, type Mm } from "../units";
import { mouthMiddle } from "../pattern/ring";
import { redrawn, withPoint } from "../pattern/redraw";
import { linesBeside, withEndsAt } from "../pattern/linesBeside";
import { runBeside } from "../pattern/runBeside";
import { moveMouthEnd } from "./mouthEnd";
import { evenLegs } from "./trueLegs";
import { mouthOf } from "./trueSeam";

export interface Stop {
  readonly least: Mm;
  readonly most: Mm;
}

/**
 * How far short of the bust point a dart usually ends.
 *
 * @source common practice, no source: darts from the waist or the under-bust 15 to 25 mm, all others 20 to 40 mm, the more the
 *         fuller
 */
export const usualStop = (name: DartName): Stop =>
  comesFromBelow(name) ? { least: 15, most: 25 } : { least: 20, most: 40 };

function comesFromBelow(name: DartName): boolean {
  const home = homeOf(name);
  return home === "waist" || home === "underBust";
}

/** mm of cup difference for each further millimetre of stop, from a side dart of 30 mm at a difference of 50 mm. */
const DIFFERENCE_FOR_ONE = 5;

/** The stop that the planner draws, by the cup difference; within the usual range. */
export function drawnStop(name: DartName, cupDifference: Mm): Mm {
  const { least, most } = usualStop(name);
  if (comesFromBelow(name)) return (least + most) / 2;
  const stop = (least + most) / 2 + (cupDifference - 50) / DIFFERENCE_FOR_ONE;
  return Math.min(most, Math.max(least, stop));
}

/** Rounds in which end and legs settle; each leaves a small part of what the one before moved the middle of the mouth by. */
const ROUNDS = 30;

/**
 * Ends a dart the given distance short of the bust point on the line from the middle of its mouth to the bust point, as it is
 * redrawn on paper: the dart points at the bust point, and its legs are brought to one length. Never nearer the mouth than
 * the shortest dart that can be sewn.
 *
 * @param across how far beside the dart's axis the bust point is to lie, as `readDartEnd` has it; mm
 */
export function aimDart(piece: Piece, name: DartName, bustPoint: PiecePoint, stop: Mm, across: Mm = 0): Piece {
  const dart = dartOf(piece, name);
  const { inner, outer, apex } = dart;
  if (piece.points[inner] === undefined || piece.points[outer] === undefined) return piece;
  // Where the corners go they go by themselves; the seam beside them is drawn on to them in the end.
  let at = { apex: pointOf(piece, apex), inner: pointOf(piece, inner), outer: pointOf(piece, outer) };
  const moves: (typeof at)[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const middle = midpoint(at.inner, at.outer);
    const aim = across === 0 ? bustPoint : besideOf(middle, at.inner, bustPoint, across);
    const length = Math.max(SHORTEST_DART, distance(middle, aim) - stop);
    const end = polar(middle, directionOf(middle, aim), length);
    const even = evenLegs(end, at.inner, at.outer, dart.drawnLegs);
    at = { apex: end, inner: even.inner, outer: even.outer };
    moves.push(at);
    if (even.half === 0) break;
  }
  const mouth = mouthOf(piece, name);
  const lines = linesBeside(piece, ...mouth);
  const ended = (drawn: Piece): Piece =>
    redrawn(drawn, withPoint(drawn.points, apex, { at: at.apex, level: "bust" }), drawn.edges);
  // A single cubic goes along with its ends, a line of several round by round.
  if (lines !== null) {
    const [first, last] = mouth[0] === inner ? [at.inner, at.outer] : [at.outer, at.inner];
    return ended(lines.withLines(withEndsAt(lines, first, last)));
  }
  const { run, withRun } = runBeside(piece, ...mouth, dart);
  let aimed = run;
  for (const to of moves) aimed = moveMouthEnd(moveMouthEnd(aimed, inner, to.inner), outer, to.outer);
  return ended(withRun(aimed));
}

/**
 * Where a dart's axis passes abreast of the bust point, if that is to lie beside it by so much.
 *
 * @source a right-angled triangle: mouth to bust point is its longest side
 */
function besideOf(middle: PiecePoint, inner: PiecePoint, bustPoint: PiecePoint, across: Mm): PiecePoint {
  const far = distance(middle, bustPoint);
  const beside = Math.max(-far, Math.min(far, across));
  const towards = directionOf(middle, bustPoint);
  // Positive across: the bust point lies on the inner end's side, so the axis is turned away from it.
  const turnToInner = Math.sign(turnBetween(towards, directionOf(middle, inner))) || 1;
  const axis = radians(towards - turnToInner * Math.asin(far === 0 ? 0 : beside / far));
  return polar(middle, axis, Math.sqrt(far ** 2 - beside ** 2));
}

/**
 * Ends a dart on its own axis, square to the middle of its mouth, so that its legs are equal, the given distance short
 * of where the bust point lies abreast of the axis. Never nearer the mouth than the shortest dart that can be sewn.
 */
export function endDart(piece: Piece, name: DartName, bustPoint: PiecePoint, stop: Mm): Piece {
  const dart = dartOf(piece, name);
  const inner = piece.points[dart.inner];
  const outer = piece.points[dart.outer];
  if (inner === undefined || outer === undefined) return piece;
  const middle = mouthMiddle(piece, dart.inner, dart.outer);
  const across = directionOf(inner.at, outer.at);
  // Of the two square directions, the one that leads towards the bust point.
  const square = radians(across + Math.PI / 2);
  const reach = (bustPoint.x - middle.x) * Math.cos(square) + (bustPoint.y - middle.y) * Math.sin(square);
  const length = Math.max(SHORTEST_DART, Math.abs(reach) - stop);
  const apex = polar(middle, reach < 0 ? radians(square + Math.PI) : square, length);
  return redrawn(piece, withPoint(piece.points, dart.apex, { at: apex, level: "bust" }), piece.edges);
}
