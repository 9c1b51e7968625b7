/** Legs of a dart that are bowed at their middle: each a curve without a turn in it, both mirror images, so equally long. */
import { edgeLength, lineEdge, type EdgeCurve } from "../geometry/edgeCurve";
import { between, distance, shift, type PiecePoint } from "../geometry/point";
import { dartOf, pointOf, type DartName, type Piece } from "../pattern/piece";
import type { Mm } from "../units";

/** mm. A leg bowed by more does not sew smooth (common practice, no source: up to 6 mm). */
export const MOST_BOW: Mm = 6;

/**
 * How far legs can be bowed, mm: negative is out of the dart.
 *
 * @param mouth width of the dart's mouth, mm
 * @source a share t down the leg, the dart is t·mouth wide and each leg bowed in by 4·bow·t·(1 − t); the legs stay apart
 *         to the very end while bow < mouth / 8
 */
export const mostBow = (mouth: Mm): { readonly least: Mm; readonly most: Mm } => ({
  least: -MOST_BOW,
  most: Math.min(MOST_BOW, mouth / 8),
});

interface Leg {
  /** From the mouth end to the dart's end; piece frame. */
  readonly curve: EdgeCurve<"piece">;
  readonly length: Mm;
}

export interface Legs {
  readonly inner: Leg;
  readonly outer: Leg;
}

/**
 * The legs of a dart as they are sewn: straight, or bowed where the dart says so. Ends stay; the middle of each leg lies
 * `bow` mm square off its straight line, towards the other leg where positive.
 *
 * @source a cubic with both controls set off square by d from the thirds of its chord is a parabola, 3d/4 off at its middle
 */
export function legsOf(piece: Piece, name: DartName): Legs {
  const { inner, outer, apex, bow = 0 } = dartOf(piece, name);
  const end = pointOf(piece, apex);
  const [atInner, atOuter] = [pointOf(piece, inner), pointOf(piece, outer)];
  return { inner: bowed(atInner, end, atOuter, bow), outer: bowed(atOuter, end, atInner, bow) };
}

/** One leg, bowed towards the mouth end of the other. */
function bowed(mouth: PiecePoint, end: PiecePoint, other: PiecePoint, bow: Mm): Leg {
  const span = distance(mouth, end);
  if (bow === 0 || span === 0) return { curve: lineEdge(mouth, end), length: span };
  const [ux, uy] = [(end.x - mouth.x) / span, (end.y - mouth.y) / span];
  // Square to the leg, on the other leg's side.
  const side = Math.sign((other.x - mouth.x) * -uy + (other.y - mouth.y) * ux);
  const off = (4 / 3) * bow * side;
  const control = (share: number): PiecePoint => shift(between(mouth, end, share), -uy * off, ux * off);
  const curve: EdgeCurve<"piece"> = { a: mouth, b: end, curve: { c1: control(1 / 3), c2: control(2 / 3) } };
  return { curve, length: edgeLength(curve) };
}
