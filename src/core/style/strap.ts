/** Straps: how wide, where they leave a cup or a back, and the piece itself. */
import type { StrapStyle } from "../decisions/pattern";
import { directionOf, distance, polar, type PiecePoint } from "../geometry/point";
import type { Piece } from "../pattern/piece";
import { named, straight } from "../pattern/namedEdges";
import { radians, type Mm, type Radians } from "../units";

/** Finished widths: a narrow strap, and one that hides what is worn under it (common practice, no source). */
const WIDTHS: Readonly<Record<StrapStyle, Mm>> = { thin: 12, wide: 40 };

/** A strap gives when worn and is cut this much shorter than its way over the shoulder (common practice: 10 to 20 mm). */
const TAKE_UP: Mm = 15;

export const strapWidth = (style: StrapStyle): Mm => WIDTHS[style];

/** Where a strap is sewn on: a seam square to the strap's own way to the shoulder. */
export interface StrapEnd {
  /** Nearer the centre, and nearer the armhole. */
  readonly inner: PiecePoint;
  readonly outer: PiecePoint;
  /** Direction of the strap, upwards. */
  readonly towards: Radians;
  /** From the middle of the seam to the shoulder seam. */
  readonly length: Mm;
}

/** The end of a strap whose middle leaves a piece at a point and goes straight to a point of the shoulder seam. */
export function strapEndAt(middle: PiecePoint, shoulder: PiecePoint, width: Mm): StrapEnd {
  const towards = directionOf(middle, shoulder);
  return {
    inner: polar(middle, radians(towards - Math.PI / 2), width / 2),
    outer: polar(middle, radians(towards + Math.PI / 2), width / 2),
    towards,
    length: distance(middle, shoulder),
  };
}

/** The finished strap, its front end below: as wide as its ends, as long as their way over the shoulder less the take-up. */
export function draftStrap(width: Mm, front: StrapEnd, back: StrapEnd): Piece {
  const length = front.length + back.length - TAKE_UP;
  return {
    name: "strap",
    points: {
      strapBackInner: named(0, 0, "shoulder"),
      strapBackOuter: named(width, 0, "shoulder"),
      strapFrontOuter: named(width, length, "shoulder"),
      strapFrontInner: named(0, length, "shoulder"),
    },
    edges: [
      straight("strapBackInner", "strapBackOuter", "strap"),
      straight("strapBackOuter", "strapFrontOuter", "armhole"),
      straight("strapFrontOuter", "strapFrontInner", "strap"),
      straight("strapFrontInner", "strapBackInner", "neck"),
    ],
    darts: [],
    levelLines: [],
    centreOnFold: false,
  };
}
