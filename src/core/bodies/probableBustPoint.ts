/**
 * Where the wearer's bust point probably lies on a front, where she has not measured it: from what she did measure. A
 * place to look at, never one to cut by.
 */
import { piecePoint, type PiecePoint } from "../geometry/point";
import type { MeasuredBody } from "../measures/tape";
import type { Mm } from "../units";
import { estimatesOf } from "./estimate";

export interface ProbableBustPoint {
  readonly centre: PiecePoint;
  /** Half widths of where nine of ten lie, across and down the piece. */
  readonly across: Mm;
  readonly down: Mm;
}

interface Spot {
  readonly value: Mm;
  readonly half: Mm;
}

/**
 * The probable bust point of a body on a front with this side neck point; null where both measures were taken, or nothing
 * was.
 */
export function probableBustPoint(sideNeck: PiecePoint, body: MeasuredBody, age?: number): ProbableBustPoint | null {
  if (body.bustPointWidth !== undefined && body.sideNeckToBustPoint !== undefined) return null;
  const estimates = estimatesOf(body, age);
  const spot = (name: "bustPointWidth" | "sideNeckToBustPoint"): Spot | null => {
    const taken = body[name];
    if (taken !== undefined) return { value: taken.value, half: 2 * taken.spread };
    const guess = estimates[name];
    return guess === undefined ? null : { value: guess.value, half: (guess.most - guess.least) / 2 };
  };
  const width = spot("bustPointWidth");
  const depth = spot("sideNeckToBustPoint");
  if (width === null || depth === null) return null;
  const centre = fromSideNeck(sideNeck, width.value, depth.value);
  return centre === null ? null : { centre, across: width.half / 2, down: depth.half };
}

/** The point half the width from the centre front, at its distance from the side neck point; null where it cannot be. */
export function fromSideNeck(sideNeck: PiecePoint, width: Mm, distance: Mm): PiecePoint | null {
  const x = width / 2;
  const down = distance ** 2 - (x - sideNeck.x) ** 2;
  return down <= 0 ? null : piecePoint(x, sideNeck.y + Math.sqrt(down));
}
