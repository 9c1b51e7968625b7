/** The figures of one dart. */
import type { PiecePoint } from "../geometry/point";
import type { Mm, Radians } from "../units";

export interface DartFigures {
  readonly apex: PiecePoint;
  /** Mouth ends: nearer the centre (or upper), and the other. */
  readonly inner: PiecePoint;
  readonly outer: PiecePoint;
  readonly legInner: Mm;
  readonly legOuter: Mm;
  /** Straight distance between the mouth ends. */
  readonly intake: Mm;
  readonly angle: Radians;
  /** Height of the sewn cone at the radius at which it is stated. */
  readonly fullness: Mm;
  /** From the apex to the bust point; negative where the end lies beyond it. null for darts that serve no bust. */
  readonly apexToBustPoint: Mm | null;
}
