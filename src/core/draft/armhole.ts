/**
 * The two curves of an armhole: from the shoulder down to where it comes in furthest, the touch, and on to the underarm.
 * The shares are common practice, no source; they were looked at from bust 700 to 1550.
 */
import { distance, piecePoint, polar, type PiecePoint } from "../geometry/point";
import { DOWN } from "../pattern/namedEdges";
import { radians, type Mm, type Radians } from "../units";

/** It runs square to the shoulder until it has come in by this share of the way, so that it never has to come out again. */
const SQUARE_FOR = 0.5;
const UPPER_AT_TOUCH = 1 / 3;
/** So the front passes its corner some 20 mm off once its dart is sewn at the side. */
const INTO_CORNER = 0.62;

/** Controls of the upper curve. `square` is the direction down from the shoulder, `arriving` the one at the touch. */
export function upperArmhole(
  tip: PiecePoint,
  square: Radians,
  touch: PiecePoint,
  arriving: Radians,
): [PiecePoint, PiecePoint] {
  const along: Mm = (SQUARE_FOR * (tip.x - touch.x)) / -Math.cos(square);
  const up = radians(arriving + Math.PI);
  return [polar(tip, square, along), polar(touch, up, UPPER_AT_TOUCH * distance(tip, touch))];
}

/**
 * Controls of the lower curve, which comes level into the underarm: each lies a share of the way to the corner where the
 * directions of its two ends meet.
 */
export function lowerArmhole(touch: PiecePoint, leaving: Radians, underarm: PiecePoint): [PiecePoint, PiecePoint] {
  const corner = piecePoint(touch.x - (underarm.y - touch.y) * Math.tan(leaving - DOWN), underarm.y);
  const towards = (from: PiecePoint): PiecePoint =>
    piecePoint(from.x + INTO_CORNER * (corner.x - from.x), from.y + INTO_CORNER * (corner.y - from.y));
  return [towards(touch), towards(underarm)];
}
